"""Two parts wired terminal by terminal in one step."""

import pytest
from support.editing import KINDS, done

from wiring.edits.connect import connect
from wiring.edits.connect_each import connect_each
from wiring.edits.edit import EditRefused
from wiring.edits.place_part import place
from wiring.plan.names import TerminalRef
from wiring.plan.plan import Plan
from wiring.plan.soundness import unsound


def pair(first, second, turn=0.0) -> Plan:
    return done(Plan(), place(KINDS[first], 0, 0), place(KINDS[second], 0, 200, turn))


def joined(plan) -> list:
    return [(w.start.terminal, w.end.terminal) for w in plan.wires.values()]


def test_strips_are_joined_number_by_number_each_in_its_colour():
    plan = connect_each("p1", "p2", kinds=KINDS).apply(pair("terminal-strip-4", "terminal-strip-8"))
    assert joined(plan) == [("1", "1"), ("2", "2"), ("3", "3"), ("4", "4")]
    assert [w.colour for w in plan.wires.values()] == ["RD", "BK", "GN", "YE"]
    assert unsound(plan, KINDS) == ()


def test_a_strip_turned_round_is_joined_without_crossing():
    plan = connect_each("p1", "p2", kinds=KINDS).apply(pair("terminal-strip-4", "terminal-strip-4", 180))
    assert joined(plan) == [("1", "4"), ("2", "3"), ("3", "2"), ("4", "1")]


def test_a_plug_is_joined_on_the_side_that_faces():
    plan = done(Plan(), place(KINDS["plug-4"], 0, 0), place(KINDS["terminal-strip-4"], 200, 0, 90))
    plan = connect_each("p1", "p2", kinds=KINDS).apply(plan)
    assert [start for start, _ in joined(plan)] == ["1b", "2b", "3b", "4b"]


def test_what_is_wired_already_is_passed_over():
    plan = pair("terminal-strip-4", "terminal-strip-4")
    plan = connect(TerminalRef("p1", "1"), TerminalRef("p2", "2")).apply(plan)
    plan = connect_each("p1", "p2", kinds=KINDS).apply(plan)
    assert joined(plan)[1:] == [("2", "1"), ("3", "3"), ("4", "4")]
    with pytest.raises(EditRefused, match="no free terminal"):
        connect_each("p1", "p2", kinds=KINDS).apply(plan)
    with pytest.raises(EditRefused, match="Select two parts"):
        connect_each("p1", "p1", kinds=KINDS).apply(plan)
