"""Put a new part into the lead of a terminal, close by: a resistor before an LED, a fuse behind a supply.

The wires of the terminal land on the new part instead, and one short wire joins it to the terminal.
"""

import math
from collections.abc import Iterable, Iterator, Mapping
from typing import NamedTuple

import msgspec

from wiring.catalogue.kind import Kind
from wiring.edits.edit import Edit, EditRefused
from wiring.edits.laying import Laying, body_box
from wiring.edits.square_way import Box
from wiring.edits.tables import counted, known_kinds, part_of, ref_words, rounded_mm
from wiring.plan.lengths import wire_path
from wiring.plan.names import TerminalRef
from wiring.plan.part import Part
from wiring.plan.places import Point, terminal_at
from wiring.plan.plan import Plan
from wiring.plan.square_corner import square_corner
from wiring.plan.wire import Wire

GAP_MM = 5.0  # from the new part's terminal to the one whose lead it is put into
STUB_MM = 4.0  # what at least is left of the wire it stands on
ROOM_MM = 1.5  # kept round its body
ASIDE_MM = (0.0, -10.0, 10.0, -18.0, 18.0, -26.0, 26.0, -34.0, 34.0)
TURNS_DEG = (0.0, 90.0, -90.0, 180.0)  # from the way the terminal points
FARTHEST_MM, STEP_MM = 120.0, 5.0  # along the wire
SQUARE_MM, OFF_MM = 0.01, 4.0


class Spot(NamedTuple):
    """Where the new part may stand; its x axis, turned so, points at the terminal or away from it."""

    x_mm: float
    y_mm: float
    turn_deg: float


def put_into_lead(
    refs: Iterable[TerminalRef],
    kind: Kind,
    settings: Mapping[str, float],
    at: str,
    away: str,
    *,
    kinds: Mapping[str, Kind] | None = None,
) -> Edit:
    """Put a part into the lead of each terminal: its terminal `at` meets that one, `away` takes the wires.

    It stands on the wire where there is room, so that nothing else moves; else beside the terminal, and the
    wires are laid anew, but for those in a wireway. Refused when a terminal has no wire.
    """
    wanted = tuple(dict.fromkeys(refs))

    def apply(plan: Plan) -> Plan:
        known = {**known_kinds(kinds), kind.key: kind}
        wires = {ref: wires_at(plan, ref) for ref in wanted}
        lifted = [wire.id for some in wires.values() for wire in some]
        laying = Laying(plan, known, dict.fromkeys(ref.part for ref in wanted), lifted)
        now: dict[str, Wire] = {}  # a wire may lead from one of the terminals to another
        for ref in wanted:
            _put_in(laying, ref, kind, settings, (at, away), [now.get(w.id, w) for w in wires[ref]], now)
        laying.wires.extend(now.values())
        return laying.done()

    return Edit(f"Put in {counted(len(wanted), kind.title.split(',')[0].lower())}", apply)


def wires_at(plan: Plan, ref: TerminalRef) -> list[Wire]:
    """Return the wires of a terminal; EditRefused when it has none."""
    part_of(plan, ref.part)
    found = [wire for wire in plan.wires.values() if ref in (wire.start, wire.end)]
    if not found:
        raise EditRefused(
            f"{ref_words(plan, ref)} has no wire any more, so nothing can be put into its lead."
        )
    return found


def _put_in(
    laying: Laying,
    ref: TerminalRef,
    kind: Kind,
    settings: Mapping[str, float],
    names: tuple[str, str],
    wires: list[Wire],
    now: dict[str, Wire],
) -> None:
    like = laying.plan.parts[ref.part]
    on_wire = list(_on_wire(laying, ref, kind, wires[0])) if len(wires) == 1 else []
    spot = best_spot(laying, kind, [*on_wire, *_beside(laying, ref, kind)])
    turn = spot.turn_deg + (180.0 if kind.terminal(names[0]).x_mm < 0 else 0.0)
    made = laying.part(kind, (spot.x_mm, spot.y_mm), turn, like, dict(settings))
    if like.group and lies_within(laying.plan, like.group, ref, wires):
        laying.parts[-1] = msgspec.structs.replace(made, group=like.group)
    stays = spot in on_wire
    for wire in wires:
        now[wire.id] = moved_to(laying, wire, ref, TerminalRef(made.id, names[1]), keeps_way=stays)
    meets = TerminalRef(made.id, names[0])
    laying.wire(*((ref, meets) if wires[0].start == ref else (meets, ref)), wires[0].colour)
    lead = msgspec.structs.replace(laying.wires[-1], size=wires[0].size, solid=wires[0].solid)
    laying.wires[-1] = msgspec.structs.replace(lead, bends=()) if stays else lead


def lies_within(plan: Plan, group: str, ref: TerminalRef, wires: list[Wire]) -> bool:
    """Whether the other ends of a terminal's wires belong to the same thing as its part."""
    others = [plan.parts.get(r.part) for w in wires for r in (w.start, w.end) if r != ref]
    return all(other is not None and other.group == group for other in others)


def moved_to(laying: Laying, wire: Wire, old: TerminalRef, new: TerminalRef, *, keeps_way: bool) -> Wire:
    """Return a wire that lands on the new part; what was measured is nearly its length still."""
    start, end = (new if r == old else r for r in (wire.start, wire.end))
    bends = wire.bends
    if not (keeps_way or wire.along):
        here, there = laying.at(start), laying.at(end)
        way = _drawn_along(laying, wire, laying.at(old), laying.at(new), at_start=start == new)
        if way is None:
            way = laying.way(here, there)
        else:
            laying.lay((here, *way, there))
        bends = tuple((rounded_mm(x), rounded_mm(y)) for x, y in way)
    return msgspec.structs.replace(wire, start=start, end=end, bends=bends, built=False)


def _drawn_along(
    laying: Laying, wire: Wire, was: Point, now: Point, *, at_start: bool
) -> tuple[Point, ...] | None:
    """Return the bends of a square wire with its last corner drawn along; None where bodies are there."""
    if not wire.bends:
        return None
    far = laying.at(wire.end if at_start else wire.start)
    way = (*wire.bends, far) if at_start else (*wire.bends[::-1], far)
    corner = square_corner(was, now, way[0], way[1])
    legs = ((now, corner), (corner, way[1]))
    if any(min(abs(a[0] - b[0]), abs(a[1] - b[1])) > SQUARE_MM for a, b in legs):
        return None
    if not all(laying.is_free(_along(a, b)) for a, b in legs if math.dist(a, b) > 2 * OFF_MM):
        return None
    bends = (corner, *way[1:-1])
    return bends if at_start else bends[::-1]


def _along(a: Point, b: Point) -> Box:
    """Return the room of a stretch, but for its ends, which may lie on terminals."""
    span = math.dist(a, b)
    dx, dy = ((v - u) / span * OFF_MM for u, v in zip(a, b, strict=True))
    xs, ys = (a[0] + dx, b[0] - dx), (a[1] + dy, b[1] - dy)
    return min(xs) - 1.0, min(ys) - 1.0, max(xs) + 1.0, max(ys) + 1.0


def best_spot(laying: Laying, kind: Kind, spots: list[Spot]) -> Spot:
    """Return the first place with nothing in it, else the first without a body, else the first of all."""
    boxes = {spot: room_of(kind, spot) for spot in spots}
    free = [spot for spot in spots if laying.is_free(boxes[spot])]
    return next((spot for spot in free if laying.is_clear(boxes[spot])), (free or spots)[0])


def _on_wire(laying: Laying, ref: TerminalRef, kind: Kind, wire: Wire) -> Iterator[Spot]:
    """Walk the places on the last stretch of a wire, from its terminal on."""
    path = wire_path(laying.plan, laying.kinds, wire)
    if len(path) < 2 or wire.along:
        return
    end, before = path[:2] if wire.start == ref else path[:-3:-1]
    span, reach = math.dist(end, before), reach_of(kind)
    if span < 1.0:
        return
    across, down = (end[0] - before[0]) / span, (end[1] - before[1]) / span  # towards the terminal
    turn = math.degrees(math.atan2(down, across))
    far = GAP_MM + reach
    while far <= min(span - reach - STUB_MM, FARTHEST_MM):
        yield Spot(end[0] - across * far, end[1] - down * far, turn)
        far += STEP_MM


def _beside(laying: Laying, ref: TerminalRef, kind: Kind) -> Iterator[Spot]:
    """Walk the places beside a terminal, those out from its part first."""
    part = laying.plan.parts[ref.part]
    x_mm, y_mm = laying.at(ref)
    out = math.degrees(math.atan2(y_mm - part.y_mm, x_mm - part.x_mm))
    out = 90.0 * round(out / 90.0)  # square with the plan
    far = GAP_MM + reach_of(kind)
    for turn in TURNS_DEG:
        angle = math.radians(out + turn)
        cos, sin = round(math.cos(angle), 9), round(math.sin(angle), 9)
        for aside in ASIDE_MM:
            yield Spot(x_mm + cos * far - sin * aside, y_mm + sin * far + cos * aside, out + turn + 180.0)


def reach_of(kind: Kind) -> float:
    """Return how far a part of a kind reaches to each side of its middle."""
    return max(max(abs(t.x_mm) for t in kind.terminals), kind.width_mm / 2)


def room_of(kind: Kind, spot: Spot) -> Box:
    """Return the room a part takes there, terminals too."""
    part = Part(
        id="p0", kind=kind.key, designation="X", x_mm=spot.x_mm, y_mm=spot.y_mm, turn_deg=spot.turn_deg
    )
    ends = [terminal_at(part, kind, t.name) for t in kind.terminals]
    left, top, right, bottom = body_box(part, kind)
    return (
        min(left, *(x for x, _ in ends)) - ROOM_MM,
        min(top, *(y for _, y in ends)) - ROOM_MM,
        max(right, *(x for x, _ in ends)) + ROOM_MM,
        max(bottom, *(y for _, y in ends)) + ROOM_MM,
    )
