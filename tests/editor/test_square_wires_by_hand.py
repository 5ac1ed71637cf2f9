from itertools import pairwise

from PySide6.QtCore import Qt
from support.gesture_runs import LAMP
from support.surfaces import Desk, desk

from wiring.edits.set_wire import set_wire
from wiring.plan.places import Point, terminal_at

__all__ = ["desk"]


def way_of(desk: Desk, wire_id: str) -> list[Point]:
    wire, kinds = desk.plan.wires[wire_id], desk.session.kinds
    parts = desk.plan.parts
    start, end = (
        terminal_at(parts[ref.part], kinds[parts[ref.part].kind], ref.terminal)
        for ref in (wire.start, wire.end)
    )
    return [start, *wire.bends, end]


def test_a_lamp_that_is_dragged_and_nudged_keeps_its_square_wire_square(desk):
    wire_id = next(w.id for w in desk.plan.wires.values() if LAMP in (w.start.part, w.end.part))
    (ax, _), *_, (_, by) = way_of(desk, wire_id)
    desk.session.do(set_wire([wire_id], bends=((ax, by),)))
    before = desk.plan.wires[wire_id].bends
    desk.drag((500, 100), (560, 170))
    desk.key(Qt.Key.Key_Right)
    assert desk.plan.wires[wire_id].bends != before
    way = way_of(desk, wire_id)
    assert all(min(abs(a - c), abs(b - d)) < 0.01 for (a, b), (c, d) in pairwise(way)), way
    desk.session.undo()  # the nudge
    desk.session.undo()
    assert desk.plan.wires[wire_id].bends == before
