"""The paper of a plan view in cells: what words must not touch, and what they had better not lie on."""

import math
from collections.abc import Sequence
from itertools import pairwise
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from wiring.drawings.plan_fit import Box
from wiring.pictures.picture import Point

FINE_MM, COARSE_MM = 0.4, 0.8  # cells that taken boxes and drawn lines are marked in; one holds two by two


class Tables(NamedTuple):
    """Cells round a point: those taken, those lines are drawn in, and their upper left corner."""

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
        # most boxes that are not free are taken in their middle as well: one look instead of several
        if self._taken[min((top + bottom) // 2, len(self._taken) - 1)].find(1, left, right) >= 0:
            return False
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
