"""Looking at one scene, supply, colour or wireway alone."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from support.editors import open_demo, part_id
from support.gesture_runs import KINDS

from app.canvas.focus import Focus, choices, seen

Key = Qt.Key


@pytest.fixture
def editor(editor):
    open_demo(editor, "siding")
    return editor


def only(editor, words):
    menu = editor.window.submenus["only"]
    menu.aboutToShow.emit()
    return next(action for action in menu.actions() if action.text() == words)


def ink(editor, designation) -> int:
    """How much a part stands out of its ground."""
    view, part = editor.window.plan_view, editor.session.plan.parts[part_id(editor, designation)]
    image, at = view.grab().toImage(), view.px(part.x_mm, part.y_mm)
    ground = image.pixelColor(30, 30).lightness()
    return sum(
        abs(image.pixelColor(at.x() + dx, at.y() + dy).lightness() - ground)
        for dx in range(-9, 10)
        for dy in range(-9, 10)
    )


def test_the_menu_offers_scenes_supplies_and_colours_of_the_plan(editor):
    plan = editor.session.plan
    sorts = [focus.sort for focus in choices(plan, KINDS)]
    assert sorts.count("scene") == len(plan.scenes)
    assert sorts.count("supply") >= 1
    assert sorts.count("colour") == len({w.colour for w in plan.wires.values()})


def test_a_colour_dims_everything_else_and_everything_comes_back(editor):
    plan, view = editor.session.plan, editor.window.plan_view
    colour = next(f for f in choices(plan, KINDS) if f.sort == "colour")
    only(editor, colour.words).trigger()
    lit = view.sight().lit
    assert {w.id for w in plan.wires.values() if w.colour == colour.key} == lit & plan.wires.keys()
    dimmed = next(p.designation for p in plan.parts.values() if p.id not in lit and not p.panel)
    faint = ink(editor, dimmed)
    assert only(editor, colour.words).isChecked()
    only(editor, "Everything").trigger()
    assert view.focus is None and ink(editor, dimmed) > 1.5 * faint


def test_one_key_looks_at_the_selection_and_back(editor):
    view, plan = editor.window.plan_view, editor.session.plan
    part = next(iter(plan.parts))
    editor.selection.select([part])
    view.setFocus()
    QTest.keyClick(view, Key.Key_O)
    assert part in view.sight().lit
    assert view.sight().focus_words.startswith(f"-{plan.parts[part].designation}")
    QTest.keyClick(view, Key.Key_O)
    assert view.sight().lit is None
    some = list(plan.parts)[:2]
    editor.selection.select(some)
    QTest.keyClick(view, Key.Key_O)
    assert view.sight().focus_words == "2 parts" and view.sight().lit & plan.parts.keys() == set(some)


def test_a_single_lamp_is_shown_with_the_way_to_it_and_back(editor):
    view, plan = editor.window.plan_view, editor.session.plan
    lamp = next(p.id for p in plan.parts.values() if KINDS[p.kind].behaviour in ("led", "stall_motor"))
    editor.selection.select([lamp])
    view.setFocus()
    QTest.keyClick(view, Key.Key_O)
    lit = view.sight().lit
    assert lamp in lit and "feed" in {KINDS[plan.parts[i].kind].purpose for i in lit & plan.parts.keys()}
    assert lit & plan.wires.keys() and len(lit) < (len(plan.parts) + len(plan.wires)) / 2
    assert view.sight().focus_words == f"-{plan.parts[lamp].designation} and the way to it"


def test_a_scene_has_its_parts_and_every_wire_that_leads_to_them(editor):
    plan = editor.session.plan
    scene = next(iter(plan.scenes))
    lit = seen(plan, Focus("scene", scene, "scene"), None)
    assert {p.id for p in plan.parts.values() if p.scene == scene} == lit & plan.parts.keys()
    assert all(
        (w.id in lit) == bool({w.start.part, w.end.part} & lit & plan.parts.keys())
        for w in plan.wires.values()
    )


def test_a_supply_has_the_circuit_it_feeds(editor):
    plan, figures = editor.session.plan, editor.solving.answer.situation.figures
    focus = next(f for f in choices(plan, KINDS) if f.sort == "supply")
    lit = seen(plan, focus, figures)
    assert focus.key in lit and len(lit & plan.parts.keys()) > 3


def test_another_plan_is_looked_at_whole(editor):
    view = editor.window.plan_view
    editor.selection.select([next(iter(editor.session.plan.parts))])
    view.toggle_focus()
    open_demo(editor, "quay")
    assert view.focus is None and view.sight().lit is None
