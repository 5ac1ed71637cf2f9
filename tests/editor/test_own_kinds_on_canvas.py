"""Hands on the plan go by the kinds of the session, the builder's own among them, not by the built-in."""

import msgspec
import pytest
from support.gesture_runs import KINDS, at, run, terminal

from app.canvas.geometry import Geometry
from app.canvas.gestures.place_set import place_set
from app.canvas.gestures.pointer import Around, Do
from app.canvas.gestures.pull_wire import pull_wire
from app.canvas.gestures.reconnect import drag_end
from wiring.edits.connect import connect
from wiring.edits.edit import EditRefused
from wiring.edits.fragment import copied, paste
from wiring.edits.place_part import place
from wiring.edits.set_value import set_setting
from wiring.plan.names import TerminalRef
from wiring.plan.plan import Plan

LAMP = KINDS["lamp-12v"]
RENAMED = tuple(
    msgspec.structs.replace(t, name=n) for t, n in zip(LAMP.terminals, ("red", "black"), strict=True)
)
OWN = {**KINDS, "lamp-12v": msgspec.structs.replace(LAMP, terminals=RENAMED)}


@pytest.fixture
def here():
    plan = Plan()
    for x in (100, 400, 700):
        plan = place(OWN["lamp-12v"], x, 100).apply(plan)
    return Around(plan, OWN, Geometry(plan, OWN))


def test_a_wire_lands_on_terminals_that_only_the_builders_kind_has(here):
    a, b = terminal(here, "p1", "black"), terminal(here, "p2", "red")
    act, _ = run(pull_wire(here), at(here, "press", *a, landing=True), at(here, "move", *b, landing=True),
                 at(here, "release", *b, landing=True))  # fmt: skip
    assert isinstance(act, Do)
    (wire,) = act.edit.apply(here.plan).wires.values()
    assert (wire.start, wire.end) == (TerminalRef("p1", "black"), TerminalRef("p2", "red"))


def test_the_end_of_a_wire_is_laid_there_too(here):
    plan = connect(TerminalRef("p1", "black"), TerminalRef("p2", "red"), kinds=OWN).apply(here.plan)
    there = Around(plan, OWN, Geometry(plan, OWN), selected=frozenset({"w4"}))
    place_ = terminal(there, "p3", "red")
    act, _ = run(drag_end(there, "w4", "end"), at(there, "move", *place_, landing=True),
                 at(there, "release", *place_, landing=True))  # fmt: skip
    assert act.edit.apply(plan).wires["w4"].end == TerminalRef("p3", "red")


def test_what_is_pasted_is_held_against_the_kinds_of_the_session(here):
    wired = connect(TerminalRef("p1", "black"), TerminalRef("p2", "red"), kinds=OWN).apply(here.plan)
    text = copied(wired, ["p1", "p2"])
    assert len(paste(text, kinds=OWN).apply(Plan()).wires) == 1
    with pytest.raises(EditRefused, match="terminal black"):
        paste(text, kinds=KINDS).apply(Plan())
    act, _ = run(place_set(here, "Pair", text), at(here, "press", 900, 300))
    assert len(act.edit.apply(here.plan).parts) == 5


def test_a_setting_that_is_out_of_bounds_cannot_be_pasted():
    plan = set_setting(["p1"], "rated_v", 12.0, kinds=KINDS).apply(place(LAMP, 0, 0).apply(Plan()))
    text = copied(plan, ["p1"]).replace('"rated_v":12.0', '"rated_v":-5.0')
    with pytest.raises(EditRefused, match="at least"):
        paste(text, kinds=KINDS).apply(Plan())
