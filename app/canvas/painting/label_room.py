"""Keeps labels from running over each other and over the parts they belong to."""

from app.canvas.geometry import Box

CELL_PX = 64.0
GAP_PX = 2.0


class LabelRoom:
    """Rectangles already taken, in pixels, looked up by the cells they lie in."""

    def __init__(self) -> None:
        self._cells: dict[tuple[int, int], list[Box]] = {}

    def take(self, box: Box) -> None:
        """Mark a rectangle as taken."""
        for cell in _cells(box):
            self._cells.setdefault(cell, []).append(box)

    def is_free(self, box: Box) -> bool:
        """Return whether a rectangle overlaps nothing taken."""
        return not any(_overlap(box, other) for cell in _cells(box) for other in self._cells.get(cell, ()))

    def takes(self, box: Box) -> bool:
        """Mark a rectangle as taken unless it overlaps what is taken already; say whether."""
        cells = _cells(box)
        there = self._cells
        left, top, right, bottom = box
        for cell in cells:
            for other in there.get(cell, ()):
                if left < other[2] and other[0] < right and top < other[3] and other[1] < bottom:
                    return False
        for cell in cells:
            there.setdefault(cell, []).append(box)
        return True

    def find(self, about: Box, width: float, height: float) -> Box | None:
        """Take and return the first free place below, above, right or left of a box; None if none is."""
        middle_x, middle_y = (about.left + about.right) / 2, (about.top + about.bottom) / 2
        corners = (
            (middle_x - width / 2, about.bottom + GAP_PX),
            (middle_x - width / 2, about.top - GAP_PX - height),
            (about.right + GAP_PX, middle_y - height / 2),
            (about.left - GAP_PX - width, middle_y - height / 2),
        )
        for left, top in corners:
            place = Box(left, top, left + width, top + height)
            if self.takes(place):
                return place
        return None


def _cells(box: Box) -> list[tuple[int, int]]:
    left, right = int(box.left // CELL_PX), int(box.right // CELL_PX)
    top, bottom = int(box.top // CELL_PX), int(box.bottom // CELL_PX)
    return [(x, y) for x in range(left, right + 1) for y in range(top, bottom + 1)]


def _overlap(a: Box, b: Box) -> bool:
    return a.left < b.right and b.left < a.right and a.top < b.bottom and b.top < a.bottom
