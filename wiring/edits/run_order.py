"""The order in which a run goes from place to place: short, and without needless doubling back."""

import math
from collections.abc import Sequence
from itertools import pairwise

from wiring.plan.places import Point

MOST_TO_MEND = 120  # beyond this many places the first guess stands
ROUNDS = 30


def run_order(places: Sequence[Point], start: Point | None = None) -> list[int]:
    """Return the indices of the places in the order of a short open way through all of them.

    The way is the better of nearest-neighbour ways from each far end, straightened by uncrossing; of its two
    ends the one nearer to `start` comes first. Equal ways are settled by index, so the answer never varies.
    """
    if len(places) < 3:
        order = list(range(len(places)))
    else:
        ways = [_mended(places, _nearest(places, first)) for first in _far_ends(places)]
        order = min(ways, key=lambda way: round(_length(places, way), 6))
    if start is not None and order:
        there, back = math.dist(start, places[order[0]]), math.dist(start, places[order[-1]])
        if back < there - 1e-9:
            order.reverse()
    return order


def _far_ends(places: Sequence[Point]) -> list[int]:
    middle = sum(p[0] for p in places) / len(places), sum(p[1] for p in places) / len(places)
    first = max(range(len(places)), key=lambda i: (round(math.dist(places[i], middle), 6), -i))
    other = max(range(len(places)), key=lambda i: (round(math.dist(places[i], places[first]), 6), -i))
    return [first, other]


def _nearest(places: Sequence[Point], first: int) -> list[int]:
    left, way = set(range(len(places))) - {first}, [first]
    while left:
        here = places[way[-1]]
        following = min(left, key=lambda i: (round(math.dist(here, places[i]), 6), i))
        left.remove(following)
        way.append(following)
    return way


def _mended(places: Sequence[Point], way: list[int]) -> list[int]:
    if len(way) > MOST_TO_MEND:
        return way
    for _ in range(ROUNDS):
        better = _uncrossed(places, way)
        if better is None:
            return way
        way = better
    return way


def _uncrossed(places: Sequence[Point], way: list[int]) -> list[int] | None:
    """Return the way with one stretch of it walked backwards, if that makes it shorter."""

    def leg(i: int, j: int) -> float:
        inside = 0 <= i < len(way) and 0 <= j < len(way)
        return math.dist(places[way[i]], places[way[j]]) if inside else 0.0

    for i in range(len(way) - 1):
        for j in range(i + 1, len(way)):
            if leg(i - 1, j) + leg(i, j + 1) < leg(i - 1, i) + leg(j, j + 1) - 1e-6:
                return [*way[:i], *reversed(way[i : j + 1]), *way[j + 1 :]]
    return None


def _length(places: Sequence[Point], way: Sequence[int]) -> float:
    return sum(math.dist(places[a], places[b]) for a, b in pairwise(way))
