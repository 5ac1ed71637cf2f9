"""Copies of parts and of the wires between them, with fresh ids, designations and labels."""

import re
from collections.abc import Iterable

import msgspec

from wiring.edits.areas import panel_at, scene_at
from wiring.edits.connect import next_wire_label
from wiring.edits.edit import EditRefused
from wiring.edits.tables import frozen, rounded_mm, with_records
from wiring.plan.designations import next_designation
from wiring.plan.names import TerminalRef
from wiring.plan.part import Part
from wiring.plan.plan import Plan
from wiring.plan.wire import Wire


def wires_between(plan: Plan, part_ids: Iterable[str]) -> tuple[Wire, ...]:
    """Return the wires whose two ends both lie on those parts."""
    chosen = frozenset(part_ids)
    return tuple(w for w in plan.wires.values() if w.start.part in chosen and w.end.part in chosen)


def with_copies(plan: Plan, parts: Iterable[Part], wires: Iterable[Wire], dx_mm: float, dy_mm: float) -> Plan:
    """Return the plan with copies of those records set down at a distance."""
    new_ids: dict[str, str] = {}
    grown = plan
    for part in parts:
        new_ids[part.id] = f"p{grown.next_number}"
        grown = with_records(
            grown, [_part_copy(grown, part, dx_mm, dy_mm)], next_number=grown.next_number + 1
        )
    for wire in wires:
        if not {wire.start.part, wire.end.part} <= new_ids.keys():
            raise EditRefused("A wire to be copied ends on a part that is not copied with it.")
        grown = with_records(
            grown,
            wires=[_wire_copy(grown, wire, new_ids, dx_mm, dy_mm)],
            next_number=grown.next_number + 1,
        )
    return grown


def _part_copy(plan: Plan, part: Part, dx_mm: float, dy_mm: float) -> Part:
    x_mm, y_mm = rounded_mm(part.x_mm + dx_mm), rounded_mm(part.y_mm + dy_mm)
    letters = re.match(r"[A-Za-z]+", part.designation)
    return msgspec.structs.replace(
        part,
        id=f"p{plan.next_number}",
        designation=next_designation(plan, letters[0] if letters else "X"),
        x_mm=x_mm,
        y_mm=y_mm,
        settings=frozen(part.settings) if part.settings else {},
        scene=scene_at(plan, x_mm, y_mm),
        panel=panel_at(plan, x_mm, y_mm),
    )


def _wire_copy(plan: Plan, wire: Wire, new_ids: dict[str, str], dx_mm: float, dy_mm: float) -> Wire:
    return msgspec.structs.replace(
        wire,
        id=f"w{plan.next_number}",
        label=next_wire_label(plan),
        start=TerminalRef(new_ids[wire.start.part], wire.start.terminal),
        end=TerminalRef(new_ids[wire.end.part], wire.end.terminal),
        bends=tuple((rounded_mm(x + dx_mm), rounded_mm(y + dy_mm)) for x, y in wire.bends),
    )
