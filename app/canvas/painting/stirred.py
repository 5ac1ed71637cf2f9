"""The region of the plan in which something lies otherwise than before."""

from collections.abc import Iterable, Sequence

import numpy as np

from app.canvas.table import Floats


class Stirred:
    """Gathers boxes of what was put, moved or taken away, once somebody has seen the plan as it was."""

    def __init__(self) -> None:
        self.watches = False
        self._boxes: list[Sequence[float]] = []

    def add(self, boxes: Iterable[Sequence[float]]) -> None:
        """Take in more boxes: left, top, right, bottom."""
        self._boxes.extend(boxes)

    def taken(self) -> Floats:
        """Return the boxes, one a row, and begin anew."""
        boxes, self._boxes = self._boxes, []
        return np.array(boxes, dtype=np.float64).reshape(-1, 4)
