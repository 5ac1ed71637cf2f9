"""Puts words beside what they name so that none covers another: greedy, nearest free place first."""

import math
from collections.abc import Iterator, Sequence
from functools import lru_cache
from itertools import pairwise
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from wiring.drawings.plan_fit import Box
from wiring.pictures.metrics import GROUND_PAD_EM, ascent_mm, descent_mm, width_mm
from wiring.pictures.picture import Item, Path, Pen, Point, Words

FINE_MM, COARSE_MM = (
    0.4,
    0.8,
)  # cells, two of the one on each side of the other, that taken boxes and drawn lines are marked in
_LED_MM = 3.0  # farther off, a leader tells what the words belong to
MOST_CROSSED = 10  # cells of lines under a label: about two wires across; more would be hidden
_LEADER = Pen("quiet", 0.15)
_WAYS = tuple(
    (math.cos(math.radians(a)), math.sin(math.radians(a)))
    for a in (-90, 0, 180, 90, -45, -135, 45, 135, -22, -158, 22, 158, -67, -113, 67, 113)
)


class Tables(NamedTuple):
    """Cells round a point: those taken, those that lines are drawn in, and their upper left corner."""

    taken: NDArray[np.uint8]
    drawn: NDArray[np.uint8]
    corner: Point


class Room:
    """The paper that is taken: boxes words must not touch, and lines they had better not lie on."""

    def __init__(self, limits: Box) -> None:
        self._limits = limits
        wide, high = limits[2] - limits[0], limits[3] - limits[1]
        # a row of bytes is looked through faster than a slice of an array where labels are this small
        columns, rows = _cells(wide, COARSE_MM), _cells(high, COARSE_MM)
        self._taken = [bytearray(2 * columns) for _ in range(2 * rows)]
        self._drawn = [bytearray(columns) for _ in range(rows)]

    def take(self, box: Box) -> None:
        """Mark a box as taken, with every cell it touches."""
        x, y = self._limits[0], self._limits[1]
        left, top = max(int((box[0] - x) // FINE_MM), 0), max(int((box[1] - y) // FINE_MM), 0)
        right = min(math.ceil((box[2] - x) / FINE_MM), len(self._taken[0]))
        bottom = max(math.ceil((box[3] - y) / FINE_MM), 0)
        if right > left:
            marks = b"\1" * (right - left)
            for row in self._taken[top:bottom]:
                row[left:right] = marks

    def draw(self, points: Sequence[Point]) -> None:
        """Mark a line as drawn."""
        x0, y0 = self._limits[0], self._limits[1]
        high, wide = len(self._drawn), len(self._drawn[0])
        for (x, y), (u, v) in pairwise(points):
            column, to_column = int((x - x0) // COARSE_MM), int((u - x0) // COARSE_MM)
            row, to_row = int((y - y0) // COARSE_MM), int((v - y0) // COARSE_MM)
            if row == to_row:
                left, right = max(min(column, to_column), 0), min(max(column, to_column), wide - 1)
                if 0 <= row < high and left <= right:
                    self._drawn[row][left : right + 1] = b"\1" * (right - left + 1)
            elif column == to_column:
                if 0 <= column < wide:
                    for line in self._drawn[max(min(row, to_row), 0) : max(max(row, to_row) + 1, 0)]:
                        line[column] = 1
            else:
                self._draw_slanted((x - x0, y - y0), (u - x0, v - y0))

    def _draw_slanted(self, a: Point, b: Point) -> None:
        high, wide = len(self._drawn), len(self._drawn[0])
        steps = max(1, int(math.hypot(b[0] - a[0], b[1] - a[1]) / (COARSE_MM / 2)))
        over, down = (b[0] - a[0]) / steps, (b[1] - a[1]) / steps
        for step in range(steps + 1):
            row, column = int((a[1] + down * step) // COARSE_MM), int((a[0] + over * step) // COARSE_MM)
            if 0 <= row < high and 0 <= column < wide:
                self._drawn[row][column] = 1

    def free(self, box: Box) -> bool:
        """Return whether a box lies within the limits and touches nothing taken, to half a cell."""
        x, y, right_most, lowest = self._limits
        if box[0] < x or box[1] < y or box[2] > right_most or box[3] > lowest:
            return False
        # cells it covers half, at least one; written out, as this runs for every place that is tried
        left, top = int((box[0] - x) / FINE_MM + 0.5), int((box[1] - y) / FINE_MM + 0.5)
        right, bottom = int((box[2] - x) / FINE_MM + 0.5), int((box[3] - y) / FINE_MM + 0.5)
        right, bottom = (right if right > left else left + 1), (bottom if bottom > top else top + 1)
        for row in self._taken[top:bottom]:  # noqa: SIM110 - a generator costs more than the search itself
            if row.find(1, left, right) >= 0:
                return False
        return True

    def tables(self, about: Point, reach_mm: float) -> Tables:
        """Return the cells round a point that are taken, and those that lines are drawn in, row by row."""
        x, y = self._limits[0], self._limits[1]
        left, right = _span(about[0] - x, reach_mm, len(self._drawn[0]))
        top, bottom = _span(about[1] - y, reach_mm, len(self._drawn))
        fine = [row[2 * left : 2 * right] for row in self._taken[2 * top : 2 * bottom]]
        coarse = [row[left:right] for row in self._drawn[top:bottom]]
        return Tables(
            np.frombuffer(b"".join(fine), np.uint8).reshape(len(fine), -1),
            np.frombuffer(b"".join(coarse), np.uint8).reshape(len(coarse), -1),
            (x + left * COARSE_MM, y + top * COARSE_MM),
        )

    def clear(self, a: Point, b: Point) -> bool:
        """Return whether a line runs over nothing taken."""
        steps = max(1, int(math.hypot(b[0] - a[0], b[1] - a[1]) / FINE_MM))
        x, y = (a[0] - self._limits[0]) / FINE_MM, (a[1] - self._limits[1]) / FINE_MM
        over, down = (b[0] - a[0]) / steps / FINE_MM, (b[1] - a[1]) / steps / FINE_MM
        taken, high, wide = self._taken, len(self._taken), len(self._taken[0])
        for _ in range(steps + 1):
            if 0 <= y < high and 0 <= x < wide and taken[int(y)][int(x)]:
                return False
            x += over
            y += down
        return True

    def take_line(self, a: Point, b: Point) -> None:
        """Mark the cells of a line as taken."""
        steps = max(1, int(math.hypot(b[0] - a[0], b[1] - a[1]) / (FINE_MM * 0.7)))
        for step in range(steps + 1):
            column = int((a[0] + (b[0] - a[0]) * step / steps - self._limits[0]) / FINE_MM)
            row = int((a[1] + (b[1] - a[1]) * step / steps - self._limits[1]) / FINE_MM)
            if 0 <= row < len(self._taken) and 0 <= column < len(self._taken[0]):
                self._taken[row][column] = 1

    def crossed(self, box: Box) -> int:
        """Return how many cells of drawn lines lie in a box, of all it touches."""
        x, y = self._limits[0], self._limits[1]
        left, top = max(int((box[0] - x) / COARSE_MM), 0), max(int((box[1] - y) / COARSE_MM), 0)
        right = max(int((box[2] - x) / COARSE_MM + 1.0), left + 1)
        bottom = max(int((box[3] - y) / COARSE_MM + 1.0), top + 1)
        found = 0
        for row in self._drawn[top:bottom]:
            found += row.count(1, left, right)
        return found


def _span(middle_mm: float, reach_mm: float, cells: int) -> tuple[int, int]:
    """Return the coarse cells within reach of a point, at least one."""
    first = min(max(int((middle_mm - reach_mm) / COARSE_MM), 0), cells - 1)
    return first, max(min(int((middle_mm + reach_mm) / COARSE_MM) + 1, cells), first + 1)


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
    over_all: bool = False,
) -> tuple[Item, ...]:
    """Return the words, and a leader when they stand off, beside a box; nothing when no place is free.

    The leader runs over no sign and no other words, unless it may run `over_all`.
    """
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
        if crossed > MOST_CROSSED:
            continue
        cost = reach * 0.35 + crossed * 0.8
        if best is not None and cost >= best[0]:
            continue
        if crossed and not room.free(_padded(box, size_mm)):
            continue  # the ground under these words would hide others
        leader = _leader(about, box) if reach >= _LED_MM else ()
        if not leader or over_all or room.clear(*leader):
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
    if reach < _LED_MM:
        return (words,)
    near = _nearest(box, ((about[0] + about[2]) / 2, (about[1] + about[3]) / 2))
    leader = (near, _nearest(about, near))
    room.draw(leader)
    room.take_line(*leader)
    return Path(leader, _LEADER), words


def _padded(box: Box, size_mm: float) -> Box:
    pad = GROUND_PAD_EM * size_mm
    return box[0] - pad, box[1] - pad, box[2] + pad, box[3] + pad


def _leader(about: Box, box: Box) -> tuple[Point, Point]:
    """Return the stretch of a leader that must be clear: all but its ends."""
    near = _nearest(box, ((about[0] + about[2]) / 2, (about[1] + about[3]) / 2))
    end = _nearest(about, near)
    long = max(math.dist(near, end), 1e-9)
    share = max(0.0, 1.0 - 1.0 / long)
    return near, (near[0] + (end[0] - near[0]) * share, near[1] + (end[1] - near[1]) * share)


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
