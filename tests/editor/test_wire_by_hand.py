"""Wires and wireways by keys and clicks alone: pulled, fed, routed, laid anew, split, swapped, measured."""

import pytest
from PySide6.QtWidgets import QToolButton
from support.editing import KINDS, done
from support.editors import field
from support.hands import Hands
from support.surfaces import SHIFT

from wiring.edits.place_part import place
from wiring.edits.place_row import place_row
from wiring.plan.lengths import cut_length_m
from wiring.plan.plan import Plan

WAY = ((40, 250), (900, 250))


def bare_plan() -> Plan:
    """Return a supply, a switch, a strip and four bare LEDs, none of them wired."""
    return done(
        Plan(),
        place(KINDS["supply-regulated"], 100, 450),
        place(KINDS["toggle-on-off"], 350, 450),
        place(KINDS["terminal-strip-4"], 700, 450),
        place_row(KINDS["led-warm-white-bare"], (200, 120), (800, 120), count=4),
    )


@pytest.fixture
def hands(editor):
    editor.session.open(bare_plan(), None)
    hands = Hands(editor)
    hands.view.show_all()
    hands.view.setFocus()
    hands.act("farther")
    yield hands
    hands.let_go()


def plan_of(hands) -> Plan:
    return hands.editor.session.plan


def the_wire(hands):
    (wire,) = plan_of(hands).wires.values()
    return wire


def pull(hands, *spots):
    hands.act("wire")
    for spot in spots:
        hands.click(*spot)
    hands.key("Esc")
    hands.key("Esc")


def select_all_but_the_strip(hands):
    hands.drag((10, 60), (560, 560))
    hands.drag((560, 60), (950, 200), keys=SHIFT)


def test_a_wire_is_pulled_over_a_bend_split_at_a_strip_and_its_ends_swapped(hands):
    pull(hands, hands.at("G1", "+"), (200, 300), hands.at("S1", "13"))
    wire = the_wire(hands)
    assert any(abs(x - 200) <= 5 and abs(y - 300) <= 5 for x, y in wire.bends)
    hands.menu(200, 302, "Swap its ends")
    assert (the_wire(hands).start, the_wire(hands).end) == (wire.end, wire.start)
    hands.menu(200, 302, "Split", "-X1")
    ends = [ref.part for w in plan_of(hands).wires.values() for ref in (w.start, w.end)]
    strip = next(p.id for p in plan_of(hands).parts.values() if p.designation == "X1")
    assert len(plan_of(hands).wires) == 2 and ends.count(strip) == 2
    for label in ("Split wire", "Swap wire ends", "Draw wire"):
        assert hands.editor.session.undo_label == label
        hands.act("undo")
    assert not plan_of(hands).wires


@pytest.mark.parametrize(
    ("way", "resistors", "wires"), [("", 4, 1 + 4 + 4 + 4), ("LEDs in series", 2, 1 + 2 + 2 + 2 + 2)]
)
def test_lamps_are_fed_over_a_switch_in_one_step(hands, way, resistors, wires):
    before = plan_of(hands)
    select_all_but_the_strip(hands)
    hands.act("feed")
    if way:
        button = next(b for b in hands.view.choices.findChildren(QToolButton) if b.text() == way)
        hands.click_widget(button)
    hands.key("Return")
    plan = plan_of(hands)
    assert sum(p.kind == "resistor" for p in plan.parts.values()) == resistors
    assert len(plan.wires) == wires
    assert {"RD", "BK"} <= {w.colour[:2] for w in plan.wires.values()}
    figures = hands.editor.solving.answer.situation.figures.parts
    assert all(figures[p].light > 0.3 for p in plan.parts if plan.parts[p].kind == "led-warm-white-bare")
    hands.act("undo")
    assert plan_of(hands) is before


def test_wires_follow_a_wireway_drawn_by_hand_and_are_laid_anew_without_it(hands):
    pull(hands, hands.at("G1", "+"), hands.at("E4", "A"))
    hands.act("wireway")
    for x, y in WAY:
        hands.click(x, y)
    hands.key("Return")
    (way,) = plan_of(hands).wireways.values()
    assert [(round(x, -1), round(y, -1)) for x, y in way.points] == list(WAY)
    hands.act("route")
    assert the_wire(hands).along == (way.id,)
    routed = the_wire(hands).bends
    assert [abs(y - 250) < 1 for _, y in routed].count(True) >= 2
    hands.click(60, way.points[0][1])
    hands.key("Down")
    assert the_wire(hands).bends != routed  # they go where the wireway goes
    hands.click((routed[0][0] + routed[-1][0]) / 2, way.points[0][1] + 10)
    hands.act("select_all")
    hands.act("lay_anew")
    assert the_wire(hands).along == ()
    hands.act("undo")
    assert the_wire(hands).along == (way.id,)


def test_holes_and_drops_are_typed_in_the_menu_of_a_wireway_and_lengthen_what_runs_in_it(hands):
    pull(hands, hands.at("G1", "+"), hands.at("E4", "A"))
    hands.act("wireway")
    for x, y in WAY:
        hands.click(x, y)
    hands.key("Return")
    hands.act("route")
    (way,) = plan_of(hands).wireways.values()
    before_m = cut_length_m(plan_of(hands), KINDS, the_wire(hands))
    told = []
    hands.view.pointed.connect(lambda hit: told.append(hands.view.words(hit) if hit else ""))
    for entry, words in (("Narrowest hole", "1 in"), ("Drop to the terminals", "30 cm")):
        hands.menu(60, way.points[0][1], entry)
        hands.key("Ctrl+A")
        hands.words(words)
        hands.key("Return")
    new = plan_of(hands).wireways[way.id]
    assert (new.hole_mm, new.drop_mm) == (25.4, 300)
    longer_m = cut_length_m(plan_of(hands), KINDS, the_wire(hands)) - before_m
    assert longer_m == pytest.approx(2 * (300 - way.drop_mm) / 1000)  # down to it and up again
    hands.move(60, way.points[0][1] + 20)
    hands.move(60, way.points[0][1])
    assert any("1 wire" in words and "25.4 mm" in words for words in told), told


def test_a_measured_length_wins_over_the_drawn_one_until_it_is_emptied(hands):
    pull(hands, hands.at("G1", "+"), hands.at("S1", "13"))
    drawn_m = cut_length_m(plan_of(hands), KINDS, the_wire(hands))
    hands.editor.selection.select([the_wire(hands).id])
    hands.click_field("Length")
    hands.words("1.75 m")
    hands.key("Return")
    assert cut_length_m(plan_of(hands), KINDS, the_wire(hands)) == 1.75
    hands.drag(hands.at("S1"), (500, 400))
    assert cut_length_m(plan_of(hands), KINDS, the_wire(hands)) == 1.75
    hands.act("undo")
    hands.editor.selection.select([the_wire(hands).id])
    hands.click_field("Length")
    hands.key("Ctrl+A")
    hands.key("Backspace")
    hands.key("Return")
    assert cut_length_m(plan_of(hands), KINDS, the_wire(hands)) == pytest.approx(drawn_m)


def test_wires_take_the_colours_chosen_for_their_circuit_those_fed_later_too(hands):
    pull(hands, hands.at("G1", "+"), hands.at("S1", "13"))
    hands.key("Esc")
    hands.pick("Feed of -G1", "orange")
    hands.click_widget(field(hands.editor, "recolour"))
    assert the_wire(hands).colour == "OG"
    hands.view.setFocus()
    select_all_but_the_strip(hands)
    hands.act("feed")
    hands.key("Return")
    colours = {w.colour for w in plan_of(hands).wires.values()}
    assert "OG" in colours and not any(c.startswith("RD") for c in colours)
