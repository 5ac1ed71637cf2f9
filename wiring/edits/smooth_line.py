"""A smooth line through a few points, and places at equal distances along it."""

import math
from collections.abc import Sequence
from itertools import pairwise

from wiring.plan.places import Point

PIECES = 24  # straight pieces between two points; finer than anybody sees


def smooth_line(points: Sequence[Point]) -> tuple[Point, ...]:
    """Return a line through all points without corners: the spline of Catmull and Rom; two stay straight."""
    if len(points) < 3:
        return tuple(points)
    first, last = points[0], points[-1]
    # Points mirrored beyond both ends, so that the line begins and ends the way it runs there.
    before = 2 * first[0] - points[1][0], 2 * first[1] - points[1][1]
    after = 2 * last[0] - points[-2][0], 2 * last[1] - points[-2][1]
    whole = (before, *points, after)
    line = [first]
    for a, b, c, d in zip(whole, whole[1:], whole[2:], whole[3:], strict=False):
        line += [_between(a, b, c, d, step / PIECES) for step in range(1, PIECES + 1)]
    return tuple(line)


def length_mm(line: Sequence[Point]) -> float:
    """Return how long a line is."""
    return sum(math.dist(a, b) for a, b in pairwise(line))


def along_line(line: Sequence[Point], distance: float) -> Point:
    """Return the place so far along a line; its end when it is shorter."""
    for a, b in pairwise(line):
        length = math.dist(a, b)
        if distance <= length and length > 0:
            share = distance / length
            return a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share
        distance -= length
    return line[-1]


def _between(a: Point, b: Point, c: Point, d: Point, t: float) -> Point:
    def one(p: float, q: float, r: float, s: float) -> float:
        return 0.5 * (
            2 * q + (r - p) * t + (2 * p - 5 * q + 4 * r - s) * t**2 + (3 * q - p - 3 * r + s) * t**3
        )

    return one(a[0], b[0], c[0], d[0]), one(a[1], b[1], c[1], d[1])
