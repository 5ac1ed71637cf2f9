"""Cut a wire in two and put a part, or a terminal of a standing part, between the pieces."""

import math
from collections.abc import Mapping
from itertools import pairwise

import msgspec

from wiring.catalogue.kind import Kind
from wiring.edits.connect import next_wire_label, refuse_poor_ends
from wiring.edits.edit import Edit, EditRefused
from wiring.edits.groups import taken_in
from wiring.edits.place_part import place
from wiring.edits.tables import known_kinds, part_of, wire_of, with_records
from wiring.plan.names import TerminalRef
from wiring.plan.part import Part
from wiring.plan.places import Point, terminal_at
from wiring.plan.plan import Plan
from wiring.plan.wire import Wire


def insert_in_wire(
    wire_id: str,
    kind: Kind,
    x_mm: float,
    y_mm: float,
    turn_deg: float = 0.0,
    *,
    near: str = "",
    far: str = "",
    kinds: Mapping[str, Kind] | None = None,
) -> Edit:
    """Put a new part into a wire: the wire's start leads to its terminal `near`, `far` to the wire's end.

    Without names the first two terminals of the kind are taken. In a wire within one thing it belongs to it.
    """

    def apply(plan: Plan) -> Plan:
        wire_of(plan, wire_id)
        names = _two_terminals(kind, near, far)
        new = f"p{plan.next_number}"
        grown = taken_in(place(kind, x_mm, y_mm, turn_deg).apply(plan), new, [wire_id])
        known = {**known_kinds(kinds), kind.key: kind}
        return _split(grown, wire_id, new, names, known)

    return Edit(f"Put {kind.title} into wire", apply)


def split_wire(
    wire_id: str, part_id: str, near: str = "", far: str = "", *, kinds: Mapping[str, Kind] | None = None
) -> Edit:
    """Lead a wire over a standing part: start to `near`, `far` to end; the two may be one terminal."""

    def apply(plan: Plan) -> Plan:
        known = known_kinds(kinds)
        kind = known.get(part_of(plan, part_id).kind)
        names = _two_terminals(kind, near, far) if kind else (near, far)
        return _split(plan, wire_id, part_id, names, known)

    return Edit("Split wire", apply)


def _two_terminals(kind: Kind, near: str, far: str) -> tuple[str, str]:
    if near and far:
        return near, far
    if len(kind.terminals) < 2:
        raise EditRefused(f"A {kind.title} has only one terminal, so a wire cannot lead through it.")
    return near or kind.terminals[0].name, far or kind.terminals[1].name


def _split(plan: Plan, wire_id: str, part_id: str, names: tuple[str, str], kinds: Mapping[str, Kind]) -> Plan:
    old, part = wire_of(plan, wire_id), part_of(plan, part_id)
    if part_id in (old.start.part, old.end.part):
        raise EditRefused(f"Wire -{old.label} already ends on -{part.designation}; choose another part.")
    at = _nearest_stretch(plan, old, part, kinds)
    # What was measured and made is the whole; neither piece has that length or is in place yet.
    near = msgspec.structs.replace(
        old, end=TerminalRef(part_id, names[0]), bends=old.bends[:at], length_m=None, along=(), built=False
    )
    far = msgspec.structs.replace(
        old,
        id=f"w{plan.next_number}",
        label=next_wire_label(plan),
        start=TerminalRef(part_id, names[1]),
        bends=old.bends[at:],
        length_m=None,
        along=(),
        built=False,
    )
    refuse_poor_ends(plan, near)
    refuse_poor_ends(plan, far)
    return with_records(plan, wires=[near, far], kinds=kinds, next_number=plan.next_number + 1)


def _nearest_stretch(plan: Plan, wire: Wire, part: Part, kinds: Mapping[str, Kind]) -> int:
    """Return how many bends come before the part: those of the wire's stretch that passes it closest."""
    corners = [_end(plan, wire.start, kinds), *wire.bends, _end(plan, wire.end, kinds)]
    here = part.x_mm, part.y_mm
    distances = [_distance(here, a, b) for a, b in pairwise(corners)]
    return distances.index(min(distances))


def _end(plan: Plan, ref: TerminalRef, kinds: Mapping[str, Kind]) -> Point:
    part = plan.parts[ref.part]
    kind = kinds.get(part.kind)
    return terminal_at(part, kind, ref.terminal) if kind else (part.x_mm, part.y_mm)


def _distance(point: Point, a: Point, b: Point) -> float:
    span_x, span_y = b[0] - a[0], b[1] - a[1]
    squared = span_x**2 + span_y**2
    along = ((point[0] - a[0]) * span_x + (point[1] - a[1]) * span_y) / squared if squared else 0.0
    along = min(max(along, 0.0), 1.0)
    return math.hypot(point[0] - a[0] - along * span_x, point[1] - a[1] - along * span_y)
