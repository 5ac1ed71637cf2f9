"""Keeps the square ends of wires square while their parts are moved."""

from collections.abc import Collection, Mapping

import msgspec

from wiring.catalogue.kind import Kind
from wiring.edits.tables import rounded_mm, with_records
from wiring.plan.names import PartId, TerminalRef
from wiring.plan.places import Point, terminal_at
from wiring.plan.plan import Plan
from wiring.plan.wire import Wire

LEVEL_MM = 0.002  # places are kept to a thousandth; within two of them they are level


def with_square_ends(old: Plan, new: Plan, moved: Collection[PartId], kinds: Mapping[str, Kind]) -> Plan:
    """Return the new plan with corners drawn along with the ends of wires that stood square.

    Only a corner between two square stretches goes along, so that no other stretch is put aslant. Wires whose
    bends were shifted already, and those in wireways, stay as they are.
    """
    wires = []
    for wire in new.wires.values():
        if not wire.bends or wire.along or not (wire.start.part in moved or wire.end.part in moved):
            continue
        if wire.bends == old.wires[wire.id].bends:
            bends = _bends(old, new, wire, moved, kinds)
            if bends != wire.bends:
                wires.append(msgspec.structs.replace(wire, bends=bends))
    return with_records(new, wires=wires) if wires else new


def _bends(
    old: Plan, new: Plan, wire: Wire, moved: Collection[PartId], kinds: Mapping[str, Kind]
) -> tuple[Point, ...]:
    start, end = _place(old, wire.start, kinds), _place(old, wire.end, kinds)
    way = (start, *wire.bends, end)
    bends = list(wire.bends)
    for ref, index, (was, corner, beyond) in (
        (wire.start, 0, way[:3]),
        (wire.end, -1, way[:-4:-1]),
    ):
        now = _place(new, ref, kinds)
        if ref.part not in moved or was is None or now is None or corner is None or beyond is None:
            continue
        x_mm, y_mm = bends[index]
        if _level(was[1], corner[1]) and _level(corner[0], beyond[0]):
            bends[index] = x_mm, rounded_mm(now[1])
        elif _level(was[0], corner[0]) and _level(corner[1], beyond[1]):
            bends[index] = rounded_mm(now[0]), y_mm
    return tuple(bends)


def _place(plan: Plan, ref: TerminalRef, kinds: Mapping[str, Kind]) -> Point | None:
    part = plan.parts.get(ref.part)
    kind = kinds.get(part.kind) if part is not None else None
    return terminal_at(part, kind, ref.terminal) if part is not None and kind is not None else None


def _level(a: float, b: float) -> bool:
    return abs(a - b) <= LEVEL_MM
