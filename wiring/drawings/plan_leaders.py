"""Labels that find no place beside what they name: set where there is room, a thin line leads there."""

import math
from collections.abc import Iterator, Sequence
from itertools import pairwise
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from wiring.drawings.plan_fit import Box
from wiring.drawings.plan_labels import MOST_CROSSED
from wiring.drawings.plan_room import COARSE_MM, FINE_MM, Room
from wiring.pictures.metrics import GROUND_PAD_EM, ascent_mm, descent_mm, width_mm
from wiring.pictures.picture import NO_PEN, Disc, Item, Path, Pen, Point, Words

_LEADER = Pen("quiet", 0.15)
_DOT_MM = 0.35
_NEAREST_MM = 2.0  # of a leader
_REACHES_MM = (32.0, 110.0)  # how far round the first spot a place is looked for
_EVERY_MM, _DEEPEST_MM = 4.5, 24.0  # points of a wire that are tried, and how far in from its end
_ALONG_WEIGHT = 0.7
_CROSSED_MM = 0.8  # what one crossed cell counts, as length of a leader
# how far a leader may run over what is taken: the least that gives a place
_COVERED_MM = (0.0, 6.0, 14.0, 30.0, 110.0)
_STRIDE = 3  # fine cells from one place that is tried to the next
_WAYS = 40  # directions that are tried from one spot

Spot = tuple[float, Point]  # how far in from the end of a wire, and where


class _Place(NamedTuple):
    """A place for a label: what it costs, its box, and the two ends of its leader."""

    cost: float
    box: Box
    near: Point
    at: Point


class _Free(NamedTuple):
    """All places where a label of one size can stand: their middles, and what they cross."""

    x: NDArray[np.float64]
    y: NDArray[np.float64]
    cost: NDArray[np.float64]


def led_label(
    room: Room,
    text: str,
    spots: Sequence[Spot],
    size_mm: float,
    colour: str = "quiet",
    *,
    semibold: bool = False,
) -> tuple[Item, ...]:
    """Return words at the nearest free place and a line from there to one of some spots.

    The line runs over no sign and no words, if that can be had, and nothing placed later lies on it. Nothing
    is returned when there is no place.
    """
    weight = "semibold" if semibold else "regular"
    pad = GROUND_PAD_EM * size_mm
    wide = width_mm(text, size_mm, weight) + 2 * pad
    up, down = ascent_mm(size_mm, weight) * 0.92 + pad, descent_mm(size_mm, weight) + pad
    best = _found(room, spots, wide, up + down)
    if best is None:
        return ()
    room.take(best.box)
    room.take_line(best.at, best.near)
    ground = "paper" if room.crossed(best.box) else ""
    middle = ((best.box[0] + best.box[2]) / 2, best.box[1] + up)
    words = Words(
        text, middle, size_mm, colour, "semibold" if semibold else "regular", "centre", ground=ground
    )
    return Path((best.near, best.at), _LEADER), Disc(best.at, _DOT_MM, _DOT_MM, NO_PEN, "quiet"), words


def spots_along(wire: Sequence[Point]) -> list[Spot]:
    """Return points of a wire from its end inward, to its middle at most."""
    return list(_walk(wire))


def spots_round(box: Box) -> list[Spot]:
    """Return points on the edge of a sign, just outside of it."""
    left, top, right, bottom = box[0] - 0.5, box[1] - 0.5, box[2] + 0.5, box[3] + 0.5
    x, y = (left + right) / 2, (top + bottom) / 2
    corners = ((left, top), (right, top), (left, bottom), (right, bottom))
    return [(0.0, at) for at in ((x, top), (x, bottom), (left, y), (right, y), *corners)]


def _found(room: Room, spots: Sequence[Spot], wide: float, high: float) -> _Place | None:
    for reach in _REACHES_MM:
        free = _free(room, spots[0][1], reach, wide, high)
        tried: dict[Point, list[_Place]] = {}  # how far a leader may run over things changes none of them
        for covered in _COVERED_MM if len(free.x) else ():
            place = _best(room, free, spots, wide, high, covered, tried)
            if place is not None:
                return place
    return None


def _free(room: Room, about: Point, reach_mm: float, wide: float, high: float) -> _Free:
    tables = room.tables(about, reach_mm)
    left, top = tables.corner
    across, down = math.ceil(wide / FINE_MM) + 1, math.ceil(high / FINE_MM) + 1
    rows, columns = np.nonzero(_sums(tables.taken, down, across)[::_STRIDE, ::_STRIDE] == 0)
    counts = _sums(tables.drawn, math.ceil(high / COARSE_MM) + 1, math.ceil(wide / COARSE_MM) + 1)
    crossed = counts[
        np.minimum(rows * _STRIDE // 2, counts.shape[0] - 1),
        np.minimum(columns * _STRIDE // 2, counts.shape[1] - 1),
    ]
    kept = crossed <= MOST_CROSSED
    x, y = left + (columns * _STRIDE + across / 2) * FINE_MM, top + (rows * _STRIDE + down / 2) * FINE_MM
    return _Free(x[kept], y[kept], crossed[kept] * _CROSSED_MM)


def _sums(cells: NDArray[np.uint8], down: int, across: int) -> NDArray[np.int32]:
    """Return how many cells are marked in every window of a size."""
    table = np.zeros((cells.shape[0] + 1, cells.shape[1] + 1), np.int32)
    np.cumsum(np.cumsum(cells, axis=0, dtype=np.int32), axis=1, out=table[1:, 1:])
    if down > cells.shape[0] or across > cells.shape[1]:
        return np.ones((1, 1), np.int32)
    return table[down:, across:] - table[:-down, across:] - table[down:, :-across] + table[:-down, :-across]


def _best(
    room: Room,
    free: _Free,
    spots: Sequence[Spot],
    wide: float,
    high: float,
    covered_mm: float,
    tried: dict[Point, list[_Place]],
) -> _Place | None:
    """Return the cheapest place; a leader may run over what is taken for so far from its spot."""
    best: _Place | None = None
    for along, at in spots:
        if best is not None and along * _ALONG_WEIGHT + _NEAREST_MM > best.cost:
            break
        if covered_mm == 0.0 and not room.clear(at, at):
            continue
        if at not in tried:
            tried[at] = _places(free, along, at, wide, high)
        for place in tried[at]:
            if not place.cost < (best.cost if best else math.inf):
                break
            near = place.near
            share = min(covered_mm / max(math.dist(at, near), 1e-9), 1.0)
            start = (at[0] + (near[0] - at[0]) * share, at[1] + (near[1] - at[1]) * share)
            if room.clear(start, near):
                best = place
                break
    return best


def _places(free: _Free, along: float, at: Point, wide: float, high: float) -> list[_Place]:
    """Return the cheapest place in each direction from a spot, cheapest first."""
    across, aside = free.x - at[0], free.y - at[1]
    over = np.copysign(np.maximum(np.abs(across) - wide / 2, 0.0), across)
    down = np.copysign(np.maximum(np.abs(aside) - high / 2, 0.0), aside)
    reach = np.hypot(over, down)
    cost = np.where(reach < _NEAREST_MM, np.inf, reach + free.cost + along * _ALONG_WEIGHT)
    found = []
    for number in _nearest_each_way(over, down, cost):
        x, y, price = float(free.x[number]), float(free.y[number]), float(cost[number])
        if price == math.inf:
            break
        box = (x - wide / 2, y - high / 2, x + wide / 2, y + high / 2)
        near = min(max(at[0], box[0]), box[2]), min(max(at[1], box[1]), box[3])
        found.append(_Place(price, box, near, at))
    return found


def _nearest_each_way(
    over: NDArray[np.float64], down: NDArray[np.float64], cost: NDArray[np.float64]
) -> NDArray[np.intp]:
    """Return the cheapest place in each direction, cheapest first; farther ones lie behind the same."""
    order = np.argsort(cost)
    ways = ((np.arctan2(down, over) + math.pi) * (_WAYS / (2 * math.pi))).astype(int)
    first = np.full(_WAYS + 1, -1)
    first[ways[order][::-1]] = np.arange(len(order) - 1, -1, -1)  # written last: the cheapest of each way
    nearest: NDArray[np.intp] = order[np.sort(first[first >= 0])]
    return nearest


def _walk(wire: Sequence[Point]) -> Iterator[Spot]:
    whole = sum(math.dist(a, b) for a, b in pairwise(wire))
    gone = 0.0
    for a, b in pairwise(wire):
        long = math.dist(a, b)
        steps = max(1, math.ceil(long / _EVERY_MM))
        for step in range(steps):
            share = (step + 0.5) / steps
            along = gone + long * share
            if along > min(whole / 2, _DEEPEST_MM) and gone + step:
                return
            yield along, (a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share)
        gone += long
