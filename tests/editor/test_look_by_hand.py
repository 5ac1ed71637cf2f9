"""What is looked at, by keys and clicks alone: one wireway, live lamps, a copy in another plan, undo."""

import pytest
from PySide6.QtWidgets import QApplication
from support.editors import open_demo, part_id
from support.hands import Hands

from wiring.plan.positions import in_use


@pytest.fixture
def hands(editor):
    hands = Hands(editor)
    open_demo(editor)
    hands.view.show_all()
    hands.view.setFocus()
    yield hands
    hands.let_go()


def plan_of(hands):
    return hands.editor.session.plan


def test_the_menu_shows_one_colour_supply_or_scene_and_everything_again(hands):
    plan = open_demo(hands.editor, "siding")
    scene = next(iter(plan.scenes.values()))
    supply = next(p for p in plan.parts.values() if p.designation.startswith("G"))
    for words, lit in (
        ("Red", {w.id for w in plan.wires.values() if w.colour == "RD"}),
        (f"What -{supply.designation} feeds", {supply.id}),
        (scene.name, {p.id for p in plan.parts.values() if p.scene == scene.id}),
    ):
        hands.menu_bar("View", "Show only", words)
        assert lit and lit <= hands.view.sight().lit
        assert hands.view.sight().lit < plan.parts.keys() | plan.wires.keys()
    hands.menu_bar("View", "Show only", "Everything")
    assert hands.view.sight().lit is None


def test_only_the_wires_of_one_wireway_are_shown(hands):
    hands.act("wireway")
    for spot in ((100, 330), (900, 330)):
        hands.click(*spot)
    hands.key("Return")
    hands.key("Esc")
    hands.act("route")
    (way,) = plan_of(hands).wireways.values()
    inside = {w.id for w in plan_of(hands).wires.values() if way.id in w.along}
    assert inside
    hands.menu_bar("View", "Show only", f"Wires in {way.name}")
    assert hands.view.sight().lit & plan_of(hands).wires.keys() == inside


def test_a_click_on_the_switch_puts_lamps_out_and_lights_them_at_once(hands, qtbot):
    lamp, plan = part_id(hands.editor, "E1"), plan_of(hands)
    switch = next(p for p in plan.parts.values() if p.kind.startswith("toggle"))

    def light():
        return hands.editor.solving.answer.situation.figures.parts[lamp].light or 0.0

    lit = light()
    assert lit > 0.5
    hands.editor.selection.select([switch.id])
    hands.view.bring_into_sight([switch.id])
    hands.click(switch.x_mm, switch.y_mm)
    if hands.editor.session.positions == in_use(plan, hands.editor.session.kinds):
        hands.click(switch.x_mm, switch.y_mm)  # small on the screen, it is thrown by the second click
    assert light() == 0
    dark = halo(hands, lamp)
    hands.key("T")
    assert light() == pytest.approx(lit) and plan_of(hands) is plan
    qtbot.waitUntil(lambda: halo(hands, lamp) > dark, timeout=2000)


def halo(hands, part_id_):
    """How much yellow there is about a part."""
    part, image = plan_of(hands).parts[part_id_], hands.view.grab().toImage()
    at = hands.view.px(part.x_mm, part.y_mm)
    colours = [
        image.pixelColor(at.x() + dx, at.y() + dy) for dx in range(-16, 17, 2) for dy in range(-16, 17, 2)
    ]
    return sum(c.red() - c.blue() for c in colours)


def test_a_copy_goes_to_another_plan_as_text(hands):
    hands.act("select_all")
    hands.key("Ctrl+C")
    text, before = QApplication.clipboard().text(), plan_of(hands)
    assert text.startswith("{") and "underboard fragment" in text
    hands.act("new")
    assert not plan_of(hands).parts
    hands.view.setFocus()
    hands.key("Ctrl+V")
    after = plan_of(hands)
    assert sorted(p.kind for p in after.parts.values()) == sorted(p.kind for p in before.parts.values())
    assert len(after.wires) == len(before.wires)
    assert hands.editor.selection.ids >= after.parts.keys()


def test_sixty_steps_are_undone_one_by_one_each_by_its_name(hands):
    hands.act("new")
    first = plan_of(hands)
    hands.place("warm white", (300, 300))
    hands.key("Esc")
    plans = [first, plan_of(hands)]
    for step in range(59):
        hands.act(("turn", "duplicate")[step % 20 == 19])
        plans.append(plan_of(hands))
    for plan in reversed(plans[:-1]):
        words = hands.window.acts["undo"].text().replace("&", "")
        assert words.lower().startswith(("undo turn", "undo duplicate", "undo place")), words
        hands.act("undo")
        assert plan_of(hands) is plan
    assert plan_of(hands) is first


def test_what_is_found_by_its_label_leads_to_its_circuit_and_back_to_the_plan(hands):
    lamp = part_id(hands.editor, "E3")
    hands.act("find_part")
    hands.words("quay lamp 3")
    hands.key("Return")
    hands.key("Esc")
    assert not hands.view.search.isVisible() and hands.editor.selection.ids == {lamp}
    hands.act("circuit")
    circuit = hands.window.circuit_page
    assert circuit.isVisible() and not hands.view.isVisible()
    hands.act("plan")
    assert hands.view.isVisible() and hands.editor.selection.ids == {lamp}
    part = plan_of(hands).parts[lamp]
    assert hands.in_sight(part.x_mm, part.y_mm)
