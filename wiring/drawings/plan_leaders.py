"""Labels that find no place beside what they name: set where there is room, a thin line leads there."""

import math
from collections.abc import Iterator, Sequence
from itertools import pairwise
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from wiring.drawings.plan_cells import Cells, any_within, sums_within
from wiring.drawings.plan_fit import Box
from wiring.drawings.plan_labels import MOST_CROSSED
from wiring.drawings.plan_room import COARSE_MM, FINE_MM, Room
from wiring.pictures.metrics import GROUND_PAD_EM, ascent_mm, descent_mm, width_mm
from wiring.pictures.picture import NO_PEN, Disc, Item, Path, Pen, Point, Words

_LEADER = Pen("quiet", 0.15)
_DOT_MM = 0.35
_NEAREST_MM = 2.0  # of a leader
_REACHES_MM = (22.0, 40.0, 110.0)  # how far round the first spot a place is looked for
_EVERY_MM, _DEEPEST_MM = 4.5, 24.0  # points of a wire that are tried, and how far in from its end
_ALONG_WEIGHT = 0.7
_CROSSED_MM = 0.8  # what one crossed cell counts, as length of a leader
# how far a leader may run over what is taken where it must: the least that gives a place
_COVERED_MM = (6.0, 14.0, 30.0, 110.0)
_STRIDE = 4  # fine cells from one place that is tried to the next
_WAYS = 40  # directions that are tried from one spot
_AT_ONCE = 60  # leaders looked at together, the cheapest first

Spot = tuple[float, Point]  # how far in from the end of a wire, and where


class _Place(NamedTuple):
    """A place for a label: its box, and the two ends of its leader."""

    box: Box
    near: Point
    at: Point


class _Free(NamedTuple):
    """All places where a label of one size can stand: their middles, and what they cross; what is taken."""

    x: NDArray[np.float64]
    y: NDArray[np.float64]
    cost: NDArray[np.float64]
    taken: Cells
    corner: Point


class _Leaders(NamedTuple):
    """The cheapest place in each direction from each spot, cheapest first, and the leaders there."""

    cost: NDArray[np.float64]
    x: NDArray[np.float64]  # middle of the label
    y: NDArray[np.float64]
    at_x: NDArray[np.float64]
    at_y: NDArray[np.float64]
    over: NDArray[np.float64]  # from there to the label
    down: NDArray[np.float64]


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
        leaders = _leaders(free, spots, wide, high)
        number = _best(free, leaders, only_clear=reach == _REACHES_MM[0])
        if number is not None:
            x, y, at_x, at_y, over, down = (float(column[number]) for column in leaders[1:])
            box = (x - wide / 2, y - high / 2, x + wide / 2, y + high / 2)
            return _Place(box, (at_x + over, at_y + down), (at_x, at_y))
    return None


def _free(room: Room, about: Point, reach_mm: float, wide: float, high: float) -> _Free:
    tables = room.tables(about, reach_mm)
    left, top = tables.corner
    across, down = math.ceil(wide / FINE_MM) + 1, math.ceil(high / FINE_MM) + 1
    rows, columns = np.nonzero(any_within(tables.taken, down, across, _STRIDE) == 0)
    counts = sums_within(tables.drawn, math.ceil(high / COARSE_MM) + 1, math.ceil(wide / COARSE_MM) + 1)
    crossed = counts[
        np.minimum(rows * _STRIDE // 2, counts.shape[0] - 1),
        np.minimum(columns * _STRIDE // 2, counts.shape[1] - 1),
    ]
    kept = crossed <= MOST_CROSSED
    across_mm = left + (columns[kept] * _STRIDE + across / 2) * FINE_MM
    down_mm = top + (rows[kept] * _STRIDE + down / 2) * FINE_MM
    return _Free(across_mm, down_mm, crossed[kept] * _CROSSED_MM, tables.taken, tables.corner)


def _leaders(free: _Free, spots: Sequence[Spot], wide: float, high: float) -> _Leaders:
    """Return what is worth looking at of all leaders from all spots to all places."""
    from_end = np.array([along for along, _ in spots])
    at = np.array([place for _, place in spots])
    across, aside = free.x - at[:, :1], free.y - at[:, 1:]
    over = across - np.maximum(np.minimum(across, wide / 2), -wide / 2)
    down = aside - np.maximum(np.minimum(aside, high / 2), -high / 2)
    reach = np.hypot(over, down)
    kept = np.flatnonzero(reach >= _NEAREST_MM)
    over, down = over.ravel()[kept], down.ravel()[kept]
    spot, place = np.divmod(kept, max(len(free.x), 1))
    cost = reach.ravel()[kept] + free.cost[place] + from_end[spot] * _ALONG_WEIGHT
    turn = ((np.arctan2(down, over) + math.pi) * (_WAYS / (2 * math.pi))).astype(int)
    best = _cheapest_of_each(spot * (_WAYS + 1) + turn, len(spots) * (_WAYS + 1), cost)
    spot, place = spot[best], place[best]
    return _Leaders(
        cost[best], free.x[place], free.y[place], at[spot, 0], at[spot, 1], over[best], down[best]
    )


def _cheapest_of_each(group: NDArray[np.intp], groups: int, cost: NDArray[np.float64]) -> NDArray[np.intp]:
    """Return the cheapest of every group, cheapest first; dearer ones lie behind the same things."""
    order = cost.argsort()
    first = np.full(groups, -1)
    first[group[order][::-1]] = np.arange(len(order) - 1, -1, -1)  # written last: the cheapest of its group
    best: NDArray[np.intp] = order[np.sort(first[first >= 0])]
    return best


def _best(free: _Free, leaders: _Leaders, *, only_clear: bool) -> int | None:
    """Return the cheapest leader of those that run least over what is taken, or over nothing at all."""
    covered: list[NDArray[np.float64]] = []
    for first in range(0, len(leaders.cost), _AT_ONCE):
        covered.append(_covered(free, *(column[first : first + _AT_ONCE] for column in leaders[3:])))
        clear = np.flatnonzero(covered[-1] == 0.0)
        if len(clear):
            return first + int(clear[0])
    if only_clear:
        return None
    far = np.concatenate(covered) if covered else np.empty(0)
    for most in _COVERED_MM:
        within = np.flatnonzero(far <= most)
        if len(within):
            return int(within[0])
    return None


def _covered(
    free: _Free,
    at_x: NDArray[np.float64],
    at_y: NDArray[np.float64],
    over: NDArray[np.float64],
    down: NDArray[np.float64],
) -> NDArray[np.float64]:
    """Return how far from its spot each leader runs before it crosses nothing taken any more."""
    long = np.hypot(over, down)
    steps = max(1, int(float(long.max()) / FINE_MM))
    share = np.arange(steps + 1) / steps
    high, wide = free.taken.shape
    left, top = free.corner
    # a row is a leader; whoever stands at the edge of the paper looks at the cells there
    rows = (((at_y - top) / FINE_MM)[:, None] + (down / FINE_MM)[:, None] * share).astype(int)
    columns = (((at_x - left) / FINE_MM)[:, None] + (over / FINE_MM)[:, None] * share).astype(int)
    np.minimum(np.maximum(rows, 0, out=rows), high - 1, out=rows)
    np.minimum(np.maximum(columns, 0, out=columns), wide - 1, out=columns)
    taken = free.taken[rows, columns]
    last: NDArray[np.intp] = steps + 1 - taken[:, ::-1].argmax(axis=1)
    return np.where(taken.any(axis=1), last / steps, 0.0) * long


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
