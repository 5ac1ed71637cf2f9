"""Which of many boxes overlap others of many, found by the cells they lie in."""

import numpy as np
from numpy.typing import NDArray

from app.canvas.table import Floats

CELL_PX = 24.0
FEW_PAIRS = 50_000  # so many are compared one by one in less time than it takes to sort them into cells
Places = NDArray[np.int64]


class NearBoxes:
    """Boxes with the columns left, top, right, bottom, sorted by the cells they reach into."""

    def __init__(self, boxes: Floats) -> None:
        self._boxes = boxes
        self._left, self._top, self._right, self._bottom = np.ascontiguousarray(boxes.T)
        self._sorted: tuple[Places, Places] | None = None  # whose box and in which cell, when asked for

    def overlaps(self, boxes: Floats) -> tuple[Places, Places]:
        """Return every pair of another box and one of these that overlap, as two rows of indices."""
        if len(boxes) * len(self._left) <= FEW_PAIRS:
            return self._among_all(boxes)
        mine, cells = self._by_cell()
        other, cell = _cells(boxes)
        first = np.searchsorted(cells, cell, "left")
        count = np.searchsorted(cells, cell, "right") - first
        other = np.repeat(other, count)
        near = mine[np.arange(len(other)) + np.repeat(first - (np.cumsum(count) - count), count)]
        left, top, right, bottom = np.ascontiguousarray(boxes.T)
        for one, two in ((left, self._right), (top, self._bottom)):  # few are left after the first look
            hit = np.flatnonzero(one[other] < two[near])
            other, near = other[hit], near[hit]
        for one, two in ((right, self._left), (bottom, self._top)):
            hit = np.flatnonzero(one[other] > two[near])
            other, near = other[hit], near[hit]
        return other, near

    def _among_all(self, boxes: Floats) -> tuple[Places, Places]:
        left, top, right, bottom = boxes.T[:, :, None]
        hit = (left < self._right) & (right > self._left) & (top < self._bottom) & (bottom > self._top)
        other, near = np.nonzero(hit)
        return other, near

    def _by_cell(self) -> tuple[Places, Places]:
        if self._sorted is None:
            box, cell = _cells(self._boxes)
            order = np.argsort(cell, kind="stable")
            self._sorted = box[order], cell[order]
        return self._sorted

    def overlapped(self, boxes: Floats) -> NDArray[np.bool_]:
        """Return for each of other boxes whether it overlaps any of these."""
        found = np.zeros(len(boxes), np.bool_)
        found[self.overlaps(boxes)[0]] = True
        return found


def _cells(boxes: Floats) -> tuple[Places, Places]:
    """Return the cells of all boxes one after the other: whose box, and a number for the cell."""
    spans = np.floor(boxes / CELL_PX).astype(np.int64)
    wide, high = spans[:, 2] - spans[:, 0] + 1, spans[:, 3] - spans[:, 1] + 1
    count = wide * high
    box = np.repeat(np.arange(len(boxes)), count)
    step = np.arange(len(box)) - np.repeat(np.cumsum(count) - count, count)
    down, across = np.divmod(step, wide[box])
    return box, ((spans[box, 0] + across) << 24) + spans[box, 1] + down
