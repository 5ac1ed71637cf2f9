"""Routing with a wireway selected takes what belongs in it and leaves the rest of the plan alone."""

import pytest
from support.gesture_runs import KINDS

from wiring.edits.connect import connect
from wiring.edits.lay_along import lay_along
from wiring.edits.place_part import place
from wiring.edits.wireways import add_wireway
from wiring.plan.names import TerminalRef
from wiring.plan.plan import Plan

HIGH, LOW = 200.0, 600.0  # of two beams; lamps stand by the ends of each


@pytest.fixture
def beams(hands):
    """Two beams, by each two lamps with a wire; the wire by the lower one was bent by hand off its beam."""
    plan = Plan()
    for y in (HIGH - 40, LOW - 40):
        for x in (100, 600):
            plan = place(KINDS["lamp-12v"], x, y).apply(plan)
    for a, b in (("p1", "p2"), ("p3", "p4")):
        plan = connect(TerminalRef(a, "1"), TerminalRef(b, "1")).apply(plan)
    for y, name in ((HIGH, "Upper beam"), (LOW, "Lower beam")):
        plan = add_wireway([(60, y), (640, y)], name).apply(plan)
    hands.editor.session.open(plan, None)
    hands.view.show_all()
    return hands


def ways(hands):
    plan = hands.editor.session.plan
    return {plan.wires[w].label: [plan.wireways[y].name for y in plan.wires[w].along] for w in plan.wires}


def test_only_wires_near_it_are_led_along_it_and_the_step_counts_them(beams):
    session = beams.editor.session
    beams.click(350, HIGH)
    (way,) = (y.id for y in session.plan.wireways.values() if y.name == "Upper beam")
    assert beams.editor.selection.ground == way
    beams.act("route")
    assert ways(beams) == {"W1": ["Upper beam"], "W2": []}
    assert session.undo_label == "Route wire along wireways"
    before = session.plan
    beams.act("route")
    assert session.plan is before
    assert beams.editor.notices.last.text.startswith("No other wire runs better along “Upper beam”")


def test_what_runs_in_another_comes_over_only_where_that_takes_less_wire(beams):
    session = beams.editor.session
    _, lower = session.plan.wireways
    far, own = (w.id for w in session.plan.wires.values())
    session.do(lay_along({far: (((60, LOW), (640, LOW)), (lower,))}))  # a long way round
    session.do(lay_along({own: (((100, LOW), (600, LOW)), (lower,))}))
    beams.click(350, HIGH)
    beams.act("route")
    assert ways(beams) == {"W1": ["Upper beam"], "W2": ["Lower beam"]}


def test_with_nothing_selected_every_wire_is_led(beams):
    beams.act("route")
    assert ways(beams) == {"W1": ["Upper beam"], "W2": ["Lower beam"]}
    assert beams.editor.session.undo_label == "Route 2 wires along wireways"


def test_its_own_menu_does_the_same(beams):
    beams.menu(350, LOW, "Route wires along it")
    assert ways(beams) == {"W1": [], "W2": ["Lower beam"]}
