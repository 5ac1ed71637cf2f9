"""Shift parts each by a way of its own; the shared floor under aligning and spacing out."""

from collections.abc import Mapping

import msgspec

from wiring.catalogue.kind import Kind
from wiring.edits.areas import areas_after
from wiring.edits.harness_follow import with_harness_followed
from wiring.edits.square_ends import with_square_ends
from wiring.edits.tables import known_kinds, part_of, rounded_mm, with_records
from wiring.plan.names import PartId
from wiring.plan.places import Point
from wiring.plan.plan import Plan


def with_shifts(plan: Plan, shifts: Mapping[PartId, Point], kinds: Mapping[str, Kind] | None = None) -> Plan:
    """Return the plan with those parts shifted by dx, dy in mm; bends go along where both ends go alike."""
    parts = []
    for part_id, (dx, dy) in shifts.items():
        part = part_of(plan, part_id)
        there = msgspec.structs.replace(
            part, x_mm=rounded_mm(part.x_mm + dx), y_mm=rounded_mm(part.y_mm + dy)
        )
        scene, panel = areas_after(plan, plan, part, there)
        parts.append(msgspec.structs.replace(there, scene=scene, panel=panel))
    wires = []
    for wire in plan.wires.values():
        by = shifts.get(wire.start.part)
        if wire.bends and by is not None and by == shifts.get(wire.end.part):
            bends = tuple((rounded_mm(x + by[0]), rounded_mm(y + by[1])) for x, y in wire.bends)
            wires.append(msgspec.structs.replace(wire, bends=bends))
    known = known_kinds(kinds)
    shifted = with_square_ends(plan, with_records(plan, parts, wires), shifts, known)
    return with_harness_followed(plan, shifted, shifts, known)
