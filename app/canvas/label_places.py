"""Finds places for many labels at once: beside their parts, off other parts, wires and labels."""

import numpy as np
from numpy.typing import NDArray

from app.canvas.geometry import Box
from app.canvas.label_room import GAP_PX, LabelRoom
from app.canvas.table import Floats


def label_places(parts: Floats, sizes: Floats, obstacles: Floats) -> list[Box | None]:
    """Return a place for the label of each part, None where there is none.

    `parts` and `obstacles` have the columns left, top, right, bottom; `sizes` has width and height. All
    labels that can stand below their part do; the others stand above, to the right or to the left.
    """
    places: list[Box | None] = [None] * len(parts)
    waiting = np.arange(len(parts))
    room = LabelRoom()
    for option in _options(parts, sizes):
        free = _free(option[waiting], obstacles).tolist()
        for i, may in zip(waiting.tolist(), free, strict=True):
            place = Box(*option[i].tolist()) if may else None
            if place is not None and room.is_free(place):
                room.take(place)
                places[i] = place
        waiting = np.array([i for i in waiting.tolist() if places[i] is None], dtype=np.intp)
    return places


def _options(parts: Floats, sizes: Floats) -> tuple[Floats, ...]:
    left, top, right, bottom = parts.T
    width, height = sizes.T
    x, y = (left + right - width) / 2, (top + bottom - height) / 2
    corners = (
        (x, bottom + GAP_PX),
        (x, top - GAP_PX - height),
        (right + GAP_PX, y),
        (left - GAP_PX - width, y),
    )
    return tuple(np.column_stack((u, v, u + width, v + height)) for u, v in corners)


def _free(boxes: Floats, obstacles: Floats) -> NDArray[np.bool_]:
    """Return for each box whether it overlaps no obstacle."""
    overlap = boxes[:, 0, None] < obstacles[None, :, 2]
    overlap &= boxes[:, 2, None] > obstacles[None, :, 0]
    overlap &= boxes[:, 1, None] < obstacles[None, :, 3]
    overlap &= boxes[:, 3, None] > obstacles[None, :, 1]
    return np.asarray(~overlap.any(axis=1))
