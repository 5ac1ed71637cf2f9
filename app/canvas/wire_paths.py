"""The points a wire runs through, with wires that share a way fanned out evenly beside each other."""

import itertools
import math
from collections.abc import Mapping, Sequence

from wiring.catalogue.kind import Kind
from wiring.plan.places import Point, terminal_at
from wiring.plan.plan import Plan
from wiring.plan.wire import Wire

LANE_MM = 2.4  # from the middle of one wire to the middle of the next
LEAD_MM = 8.0  # how far from its terminal a straight wire reaches its lane


def raw_path(plan: Plan, kinds: Mapping[str, Kind], wire: Wire) -> tuple[Point, ...]:
    """Return start, bends and end in plan millimetres; empty when an end has no place."""
    ends: list[Point] = []
    for ref in (wire.start, wire.end):
        part = plan.parts.get(ref.part)
        kind = kinds.get(part.kind) if part is not None else None
        if part is None:
            return ()
        try:
            ends.append(terminal_at(part, kind, ref.terminal) if kind else (part.x_mm, part.y_mm))
        except KeyError:
            ends.append((part.x_mm, part.y_mm))
    return (ends[0], *wire.bends, ends[1])


def fanned(path: Sequence[Point], lanes: Sequence[float]) -> tuple[Point, ...]:
    """Return the path with each of its ways shifted sideways into its lane."""
    if len(path) < 2 or not any(lanes):
        return tuple(path)
    if len(path) == 2:
        return _bowed(path[0], path[1], lanes[0] * LANE_MM)
    inner = []
    for i, by in enumerate(lanes, start=1):
        nx, ny = _corner_normal(path[i - 1], path[i], path[i + 1])
        inner.append((path[i][0] + nx * by * LANE_MM, path[i][1] + ny * by * LANE_MM))
    return (path[0], *inner, path[-1])


def _bowed(a: Point, b: Point, by_mm: float) -> tuple[Point, ...]:
    length = math.dist(a, b)
    if length < 1e-6:
        return (a, b)
    ux, uy = (b[0] - a[0]) / length, (b[1] - a[1]) / length
    nx, ny = _normal(a, b)
    lead = min(LEAD_MM, length / 4)
    return (
        a,
        (a[0] + ux * lead + nx * by_mm, a[1] + uy * lead + ny * by_mm),
        (b[0] - ux * lead + nx * by_mm, b[1] - uy * lead + ny * by_mm),
        b,
    )


def _normal(a: Point, b: Point) -> Point:
    """Return the unit normal of a line, the same one whichever way the line is walked."""
    dx, dy = b[0] - a[0], b[1] - a[1]
    length = math.hypot(dx, dy)
    if length < 1e-9:
        return (0.0, 0.0)
    if dx < -1e-9 or (abs(dx) <= 1e-9 and dy < 0):
        dx, dy = -dx, -dy
    return (-dy / length, dx / length)


def _corner_normal(before: Point, corner: Point, after: Point) -> Point:
    """Return the direction in which a corner moves so that both its legs keep their distance."""
    a, b = _walk_normal(before, corner), _walk_normal(corner, after)
    x, y = a[0] + b[0], a[1] + b[1]
    square = x * x + y * y
    if square < 0.4:  # a hairpin: no sideways direction serves both legs
        return _normal(before, after)
    # (a + b) * 2 / |a + b|^2 is one away from both legs; the sign makes it the same walked backwards
    sign = 1.0 if x < -1e-9 or (abs(x) <= 1e-9 and y > 0) else -1.0
    return (sign * 2 * x / square, sign * 2 * y / square)


def _walk_normal(a: Point, b: Point) -> Point:
    length = math.dist(a, b)
    if length < 1e-9:
        return (0.0, 0.0)
    return (-(b[1] - a[1]) / length, (b[0] - a[0]) / length)


def along(path: Sequence[Point], distance: float, length: float = 0.0) -> Point | None:
    """Return the point so far along a polyline; None when its `length`, told or not, is not twice as long."""
    if (length or sum(map(math.dist, path, path[1:]))) < 2 * distance:
        return None
    for a, b in itertools.pairwise(path):
        leg = math.dist(a, b)
        if distance <= leg and leg > 0:
            share = distance / leg
            return a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share
        distance -= leg
    return None
