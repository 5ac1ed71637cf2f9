"""Keeps the square ends of wires square while their parts are moved."""

from collections.abc import Collection, Mapping

import msgspec

from wiring.catalogue.kind import Kind
from wiring.edits.tables import rounded_mm, with_records
from wiring.plan.names import PartId, TerminalRef
from wiring.plan.places import Point, terminal_at
from wiring.plan.plan import Plan
from wiring.plan.square_corner import square_corner
from wiring.plan.wire import Wire


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
    for ref, index, (was, corner, beyond) in ((wire.start, 0, way[:3]), (wire.end, -1, way[:-4:-1])):
        now = _place(new, ref, kinds)
        if ref.part not in moved or was is None or now is None or corner is None or beyond is None:
            continue
        goal = square_corner(was, now, corner, beyond)
        # a corner both ends share goes across with one of them and down with the other
        bends[index] = (
            rounded_mm(bends[index][0] + goal[0] - corner[0]),
            rounded_mm(bends[index][1] + goal[1] - corner[1]),
        )
    return tuple(bends)


def _place(plan: Plan, ref: TerminalRef, kinds: Mapping[str, Kind]) -> Point | None:
    part = plan.parts.get(ref.part)
    kind = kinds.get(part.kind) if part is not None else None
    return terminal_at(part, kind, ref.terminal) if part is not None and kind is not None else None
