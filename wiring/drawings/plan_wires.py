"""The wires of a plan on paper: insulation colour, dark edge; those that run together fan out."""

import math
from collections import defaultdict
from collections.abc import Iterable, Mapping
from itertools import pairwise
from typing import NamedTuple

from wiring.catalogue.kind import Kind
from wiring.drawings.plan_clip import overlap_of
from wiring.drawings.plan_fit import Box, Fit, around
from wiring.drawings.plan_parts import Placed, terminal_on_paper
from wiring.drawings.wire_colour import stripe_items, wire_colour
from wiring.pictures.picture import Item, Path, Pen, Point
from wiring.plan.names import PartId, TerminalRef, WireId
from wiring.plan.places import terminal_at
from wiring.plan.plan import Plan
from wiring.plan.square_corner import square_corner
from wiring.plan.wire import Wire
from wiring.standards.wire_size import read_size

_EDGE_MM = 0.14
_THIN_MM, _THICK_MM = 0.45, 1.0


class Run(NamedTuple):
    """One wire on paper, from start to end."""

    wire: Wire
    points: tuple[Point, ...]
    width_mm: float


def wire_runs(
    plan: Plan,
    kinds: Mapping[str, Kind],
    fit: Fit,
    placed: Mapping[PartId, Placed],
    clip: Box,
    wires: Iterable[Wire] | None = None,
) -> dict[WireId, Run]:
    """Return the way of every wire that comes into the view, fanned out where wires share their way."""
    ways: dict[WireId, list[Point]] = {}
    for wire in plan.wires.values() if wires is None else wires:
        ends = [_end(plan, kinds, fit, placed, ref) for ref in (wire.start, wire.end)]
        if ends[0] is None or ends[1] is None:
            continue
        way = _squared([ends[0], *(fit.at(p) for p in wire.bends), ends[1]], plan, kinds, fit, wire)
        if overlap_of(_roomy(around(way)), clip):
            ways[wire.id] = way
    shares: dict[tuple[Point, Point], list[WireId]] = defaultdict(list)
    for wire_id, way in ways.items():
        for a, b in _legs(way):
            shares[_leg_key(a, b)].append(wire_id)
    return {
        wire_id: Run(
            plan.wires[wire_id],
            tuple(_fanned(wire_id, way, shares)),
            wire_width_mm(plan.wires[wire_id].size),
        )
        for wire_id, way in ways.items()
    }


def _roomy(box: Box) -> Box:
    return box[0] - 5.0, box[1] - 5.0, box[2] + 5.0, box[3] + 5.0


def wire_items(run: Run, points: tuple[Point, ...]) -> tuple[Item, ...]:
    """Return the dark edge, the insulation, and the stripe of a two-coloured wire, along a piece of it."""
    spec = wire_colour(run.wire.colour)
    return (
        Path(points, Pen("ink", run.width_mm + 2 * _EDGE_MM)),
        Path(points, Pen(spec.rgb, run.width_mm)),
        *stripe_items(points, spec, run.width_mm * 0.55, 1.6),
    )


def wire_width_mm(size: str) -> float:
    """Return how thick a wire is drawn; thicker for larger conductors, within what reads well."""
    try:
        area = read_size(size).area_mm2
    except ValueError:
        return _THIN_MM
    return min(max(0.42 + 0.3 * math.sqrt(area), _THIN_MM), _THICK_MM)


def _end(
    plan: Plan,
    kinds: Mapping[str, Kind],
    fit: Fit,
    placed: Mapping[PartId, Placed],
    ref: TerminalRef,
) -> Point | None:
    spot = placed.get(ref.part)
    if spot is None:
        return None
    return terminal_on_paper(fit, spot, kinds[plan.parts[ref.part].kind], ref.terminal)


def _squared(way: list[Point], plan: Plan, kinds: Mapping[str, Kind], fit: Fit, wire: Wire) -> list[Point]:
    """Return the way with its outer corners drawn along with terminals that stand off their true places."""
    if len(way) < 3:
        return way
    squared = list(way)
    was = [_true_place(plan, kinds, fit, ref) for ref in (wire.start, wire.end)]
    true_way = [was[0], *way[1:-1], was[1]]
    for end, corner, beyond in ((0, 1, 2), (-1, -2, -3)):
        (old_x, old_y), (x, y) = true_way[corner], squared[corner]
        new_x, new_y = square_corner(true_way[end], way[end], true_way[corner], true_way[beyond])
        squared[corner] = (x + new_x - old_x, y + new_y - old_y)
    return squared


def _true_place(plan: Plan, kinds: Mapping[str, Kind], fit: Fit, ref: TerminalRef) -> Point:
    part = plan.parts[ref.part]
    return fit.at(terminal_at(part, kinds[part.kind], ref.terminal))


def _legs(way: list[Point]) -> list[tuple[Point, Point]]:
    return [(a, b) for a, b in pairwise(way) if a != b]


def _leg_key(a: Point, b: Point) -> tuple[Point, Point]:
    one, two = sorted(((round(a[0], 1), round(a[1], 1)), (round(b[0], 1), round(b[1], 1))))
    return one, two


def _fanned(
    wire_id: WireId, way: list[Point], shares: Mapping[tuple[Point, Point], list[WireId]]
) -> list[Point]:
    """Return the way with its inner corners shifted; the ends stay on their terminals."""
    legs = _legs(way)
    shifts = []
    for a, b in legs:
        key = _leg_key(a, b)
        group = shares[key]
        aside = (group.index(wire_id) - (len(group) - 1) / 2) * 1.05 if len(group) > 1 else 0.0
        along = (b[0] - a[0], b[1] - a[1])
        # the side is that of the shared leg, not of the wire's own direction
        sense = 1.0 if (round(a[0], 1), round(a[1], 1)) == key[0] else -1.0
        size = math.hypot(*along)
        shifts.append((-along[1] / size * aside * sense, along[0] / size * aside * sense))
    if not any(s != (0.0, 0.0) for s in shifts):
        return way
    if len(legs) == 1:
        (a, b), (dx, dy) = legs[0], shifts[0]
        near = (a[0] + (b[0] - a[0]) * 0.12 + dx, a[1] + (b[1] - a[1]) * 0.12 + dy)
        far = (a[0] + (b[0] - a[0]) * 0.88 + dx, a[1] + (b[1] - a[1]) * 0.88 + dy)
        return [a, near, far, b]
    corners = [legs[0][0]]
    for (leg, shift), (next_leg, next_shift) in pairwise(zip(legs, shifts, strict=True)):
        corners.append(_corner(leg, shift, next_leg, next_shift))
    return [*corners, legs[-1][1]]


def _corner(
    leg: tuple[Point, Point], shift: Point, next_leg: tuple[Point, Point], next_shift: Point
) -> Point:
    """Return where two shifted legs meet; halfway between their ends when they run on almost straight."""
    corner = leg[1]
    d = (leg[1][0] - leg[0][0], leg[1][1] - leg[0][1])
    e = (next_leg[1][0] - next_leg[0][0], next_leg[1][1] - next_leg[0][1])
    cross = d[0] * e[1] - d[1] * e[0]
    if abs(cross) < 0.2 * math.hypot(*d) * math.hypot(*e):
        longer = max((shift, next_shift), key=lambda s: math.hypot(*s))
        return corner[0] + longer[0], corner[1] + longer[1]
    # corner + shift + t*d meets corner + next_shift + u*e
    dx, dy = next_shift[0] - shift[0], next_shift[1] - shift[1]
    t = (dx * e[1] - dy * e[0]) / cross
    return corner[0] + shift[0] + t * d[0], corner[1] + shift[1] + t * d[1]
