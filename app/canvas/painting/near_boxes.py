"""Which of many boxes overlap others of many, found by the cells they lie in."""

import numpy as np
from numpy.typing import NDArray

from app.canvas.table import Floats

CELL_PX = 24.0
Places = NDArray[np.int64]


class NearBoxes:
    """Boxes with the columns left, top, right, bottom, sorted by the cells they reach into."""

    def __init__(self, boxes: Floats) -> None:
        self._left, self._top, self._right, self._bottom = np.ascontiguousarray(boxes.T)
        box, cell = _cells(boxes)
        order = np.argsort(cell, kind="stable")
        self._box, self._cell = box[order], cell[order]

    def overlaps(self, boxes: Floats) -> tuple[Places, Places]:
        """Return every pair of another box and one of these that overlap, as two rows of indices."""
        other, cell = _cells(boxes)
        first = np.searchsorted(self._cell, cell, "left")
        count = np.searchsorted(self._cell, cell, "right") - first
        other = np.repeat(other, count)
        near = self._box[np.arange(len(other)) + np.repeat(first - (np.cumsum(count) - count), count)]
        left, top, right, bottom = np.ascontiguousarray(boxes.T)
        for one, two in ((left, self._right), (top, self._bottom)):  # few are left after the first look
            hit = np.flatnonzero(one[other] < two[near])
            other, near = other[hit], near[hit]
        for one, two in ((right, self._left), (bottom, self._top)):
            hit = np.flatnonzero(one[other] > two[near])
            other, near = other[hit], near[hit]
        return other, near

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
