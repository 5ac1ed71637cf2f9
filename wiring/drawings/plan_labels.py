"""Puts words beside what they name so that none covers another: greedy, nearest free place first."""

import math
from collections.abc import Iterator, Sequence
from functools import lru_cache
from itertools import pairwise

import numpy as np

from wiring.drawings.plan_fit import Box
from wiring.pictures.metrics import ascent_mm, descent_mm, width_mm
from wiring.pictures.picture import Item, Path, Pen, Point, Words

_FINE_MM, _COARSE_MM = 0.4, 0.8  # cells that taken boxes and drawn lines are marked in
_MOST_CROSSED = 10  # cells of lines under a label: about two wires across; more would be hidden
_LEADER = Pen("quiet", 0.15)
_WAYS = tuple(
    (math.cos(math.radians(a)), math.sin(math.radians(a)))
    for a in (-90, 0, 180, 90, -45, -135, 45, 135, -22, -158, 22, 158, -67, -113, 67, 113)
)


class Room:
    """The paper that is taken: boxes words must not touch, and lines they had better not lie on."""

    def __init__(self, limits: Box) -> None:
        self._limits = limits
        wide, high = limits[2] - limits[0], limits[3] - limits[1]
        self._taken = np.zeros((_cells(high, _FINE_MM), _cells(wide, _FINE_MM)), dtype=bool)
        self._drawn = np.zeros((_cells(high, _COARSE_MM), _cells(wide, _COARSE_MM)), dtype=bool)

    def take(self, box: Box) -> None:
        """Mark a box as taken, with every cell it touches."""
        left, top, right, bottom = self._from_corner(box)
        rows = slice(max(int(top // _FINE_MM), 0), max(math.ceil(bottom / _FINE_MM), 0))
        columns = slice(max(int(left // _FINE_MM), 0), max(math.ceil(right / _FINE_MM), 0))
        self._taken[rows, columns] = True

    def draw(self, points: Sequence[Point]) -> None:
        """Mark a line as drawn."""
        for (x, y), (u, v) in pairwise(points):
            steps = max(1, int(math.hypot(u - x, v - y) / (_COARSE_MM / 2)))
            share = np.arange(steps + 1) / steps
            columns = ((x + (u - x) * share - self._limits[0]) // _COARSE_MM).astype(int)
            rows = ((y + (v - y) * share - self._limits[1]) // _COARSE_MM).astype(int)
            high, wide = self._drawn.shape
            inside = (rows >= 0) & (rows < high) & (columns >= 0) & (columns < wide)
            self._drawn[rows[inside], columns[inside]] = True

    def free(self, box: Box) -> bool:
        """Return whether a box lies within the limits and touches nothing taken, to half a cell."""
        left, top, right, bottom = self._limits
        if box[0] < left or box[1] < top or box[2] > right or box[3] > bottom:
            return False
        return not self._taken[self._part(box, _FINE_MM, 0.5)].any()

    def crossed(self, box: Box) -> int:
        """Return how many cells of drawn lines lie in a box."""
        return int(np.count_nonzero(self._drawn[self._part(box, _COARSE_MM, 0.0)]))

    def _from_corner(self, box: Box) -> Box:
        x, y = self._limits[0], self._limits[1]
        return box[0] - x, box[1] - y, box[2] - x, box[3] - y

    def _part(self, box: Box, cell: float, inwards: float) -> tuple[slice, slice]:
        """Return the cells of a box; `inwards` 0 takes every one it touches, 0.5 those it covers half."""
        # not below 0 and at least one cell; written out, as this runs for every place that is tried
        x, y = self._limits[0], self._limits[1]
        left, top = int((box[0] - x) / cell + inwards), int((box[1] - y) / cell + inwards)
        right, bottom = int((box[2] - x) / cell + 1.0 - inwards), int((box[3] - y) / cell + 1.0 - inwards)
        left, top = (left if left > 0 else 0), (top if top > 0 else 0)
        return slice(top, bottom if bottom > top else top + 1), slice(
            left, right if right > left else left + 1
        )


def _cells(length: float, cell: float) -> int:
    return max(1, math.ceil(length / cell))


def labelled(
    room: Room,
    text: str,
    about: Box,
    size_mm: float,
    *,
    reaches_mm: tuple[float, ...] = (0.5, 2.5, 5.0, 9.0),
    colour: str = "ink",
    semibold: bool = False,
) -> tuple[Item, ...]:
    """Return the words, and a leader when they stand off, beside a box; nothing when no place is free."""
    weight = "semibold" if semibold else "regular"
    wide = width_mm(text, size_mm, weight) + 0.3
    up, down = ascent_mm(size_mm, weight) * 0.92, descent_mm(size_mm, weight)
    best: tuple[float, Box, float] | None = None
    for reach, box in _candidates(about, wide, up + down, reaches_mm):
        if best is not None and reach * 0.35 >= best[0]:
            break
        if not room.free(box):
            continue
        crossed = room.crossed(box)
        if crossed > _MOST_CROSSED:
            continue
        cost = reach * 0.35 + crossed * 0.8
        if best is None or cost < best[0]:
            best = (cost, box, reach)
    if best is None:
        return ()
    _, box, reach = best
    room.take(box)
    words = Words(
        text,
        ((box[0] + box[2]) / 2, box[1] + up),
        size_mm,
        colour,
        "semibold" if semibold else "regular",
        "centre",
        ground="paper" if room.crossed(box) else "",
    )
    if reach < 3.0:
        return (words,)
    near = _nearest(box, ((about[0] + about[2]) / 2, (about[1] + about[3]) / 2))
    leader = (near, _nearest(about, near))
    room.draw(leader)
    return Path(leader, _LEADER), words


def _candidates(
    about: Box, wide: float, high: float, reaches: tuple[float, ...]
) -> Iterator[tuple[float, Box]]:
    x, y = (about[0] + about[2]) / 2, (about[1] + about[3]) / 2
    size = round(about[2] - about[0], 3), round(about[3] - about[1], 3)
    for reach, left, top in _offsets(*size, wide, high, reaches):
        yield reach, (x + left, y + top, x + left + wide, y + top + high)


@lru_cache(maxsize=4096)
def _offsets(
    about_w: float, about_h: float, wide: float, high: float, reaches: tuple[float, ...]
) -> tuple[tuple[float, float, float], ...]:
    """Return reach and upper left corner of every place round a box's middle; many labels share them."""
    return tuple(
        (
            reach,
            _push(cos, about_w / 2 + wide / 2 + reach) - wide / 2,
            _push(sin, about_h / 2 + high / 2 + reach) - high / 2,
        )
        for reach in reaches
        for cos, sin in _WAYS
    )


def _push(part: float, far: float) -> float:
    # a slanted way stands off as far as a straight one on its leading side, so corners touch nothing
    return part * far if abs(part) < 0.5 else math.copysign(far, part)


def _nearest(box: Box, to: Point) -> Point:
    return min(max(to[0], box[0]), box[2]), min(max(to[1], box[1]), box[3])
