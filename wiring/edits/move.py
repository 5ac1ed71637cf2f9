"""Shift parts; wires between two of them keep their shape, wires to others follow with one end."""

from collections.abc import Iterable, Mapping

import msgspec

from wiring.catalogue.kind import Kind
from wiring.edits.areas import areas_after
from wiring.edits.edit import Edit
from wiring.edits.harness_follow import with_harness_followed
from wiring.edits.square_ends import with_square_ends
from wiring.edits.tables import counted, known_kinds, part_of, rounded_mm, with_records
from wiring.plan.part import Part
from wiring.plan.places import Point
from wiring.plan.plan import Plan


def move(ids: Iterable[str], dx_mm: float, dy_mm: float, *, kinds: Mapping[str, Kind] | None = None) -> Edit:
    """Shift those parts, and the bends of those wires and of the wires between those parts.

    The harness of a panel follows its plug and its parts.
    """
    wanted = tuple(dict.fromkeys(ids))

    def shifted(x_mm: float, y_mm: float) -> Point:
        return rounded_mm(x_mm + dx_mm), rounded_mm(y_mm + dy_mm)

    def apply(plan: Plan) -> Plan:
        parts = {i: part_of(plan, i) for i in wanted if i not in plan.wires}
        chosen = frozenset(wanted)
        bent = [
            w
            for w in plan.wires.values()
            if w.bends and ((w.start.part in parts and w.end.part in parts) or w.id in chosen)
        ]
        wires = [msgspec.structs.replace(w, bends=tuple(shifted(*bend) for bend in w.bends)) for w in bent]
        there = [_shifted(plan, p, *shifted(p.x_mm, p.y_mm)) for p in parts.values()]
        known = known_kinds(kinds)
        moved = with_square_ends(plan, with_records(plan, there, wires), parts, known)
        return with_harness_followed(plan, moved, parts, known)

    return Edit(f"Move {counted(len(wanted), 'item')}" if len(wanted) != 1 else "Move", apply)


def _shifted(plan: Plan, part: Part, x_mm: float, y_mm: float) -> Part:
    there = msgspec.structs.replace(part, x_mm=x_mm, y_mm=y_mm)
    scene, panel = areas_after(plan, plan, part, there)
    return msgspec.structs.replace(there, scene=scene, panel=panel)
