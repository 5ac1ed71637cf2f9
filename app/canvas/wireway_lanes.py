"""Lanes in wireways: a wire keeps one lane all along a wireway, whichever way it runs through it."""

import math
from collections.abc import Sequence
from itertools import pairwise
from typing import NamedTuple

from wiring.plan.names import WirewayId
from wiring.plan.places import Point
from wiring.plan.plan import Plan
from wiring.plan.wire import Wire

SAME_MM = 0.6
IN_WAY_MM = 1.8  # from the middle of one wire to the next; closer than outside, as in a real bundle
WIDEST_MM = 14.0  # a bundle of many is drawn no wider: its wires lie on top of each other as well


class Leg(NamedTuple):
    """The wireway a straight piece of a wire lies in, "" for none, and +1 when it runs as that was drawn."""

    way: WirewayId = ""
    side: int = 0


def legs_in_wireways(plan: Plan, wire: Wire, raw: Sequence[Point]) -> tuple[Leg, ...]:
    """Return a Leg for every straight piece of a wire; empty when none lies in a wireway."""
    ways = [plan.wireways[i] for i in wire.along if i in plan.wireways]
    if not ways:
        return ()
    stretches = [(way.id, a, b) for way in ways for a, b in pairwise(way.points) if a != b]
    return tuple(_leg(a, b, stretches) for a, b in pairwise(raw))


def fanned_legs(path: Sequence[Point], offsets: Sequence[float | None]) -> tuple[Point, ...]:
    """Return the path with every leg shifted to its right by its offset; None leaves a leg to its corners.

    A corner goes where the two shifted legs meet, so that neighbours keep their distance round corners.
    """
    inner = []
    for i in range(1, len(path) - 1):
        wanted = [
            (_normal(path[k], path[k + 1]), by)
            for k, by in ((i - 1, offsets[i - 1]), (i, offsets[i]))
            if by is not None
        ]
        dx, dy = _shift(wanted)
        inner.append((path[i][0] + dx, path[i][1] + dy))
    return (path[0], *inner, path[-1])


def _shift(wanted: list[tuple[Point, float]]) -> Point:
    if not wanted:
        return 0.0, 0.0
    (ax, ay), a = wanted[0]
    if len(wanted) == 2:
        (bx, by), b = wanted[1]
        cross = ax * by - ay * bx
        if abs(cross) > 0.2:  # a real corner: the one point that is right for both legs
            return (a * by - b * ay) / cross, (b * ax - a * bx) / cross
    return ax * a, ay * a


def _leg(a: Point, b: Point, stretches: Sequence[tuple[WirewayId, Point, Point]]) -> Leg:
    if math.dist(a, b) < 1e-6:
        return Leg()
    for way, c, d in stretches:
        if _off(c, d, a) <= SAME_MM and _off(c, d, b) <= SAME_MM:
            along = (b[0] - a[0]) * (d[0] - c[0]) + (b[1] - a[1]) * (d[1] - c[1])
            return Leg(way, 1 if along >= 0 else -1)
    return Leg()


def _off(a: Point, b: Point, at: Point) -> float:
    """Return how far a place lies from a stretch."""
    dx, dy = b[0] - a[0], b[1] - a[1]
    share = ((at[0] - a[0]) * dx + (at[1] - a[1]) * dy) / (dx * dx + dy * dy)
    share = min(max(share, 0.0), 1.0)
    return math.hypot(a[0] + share * dx - at[0], a[1] + share * dy - at[1])


def _normal(a: Point, b: Point) -> Point:
    length = math.dist(a, b)
    return (0.0, 0.0) if length < 1e-9 else (-(b[1] - a[1]) / length, (b[0] - a[0]) / length)
