"""Finds places for many labels at once: beside their parts, off other parts, wires and labels."""

import numpy as np
from numpy.typing import NDArray

from app.canvas.geometry import Box
from app.canvas.painting.label_room import GAP_PX
from app.canvas.painting.near_boxes import NearBoxes
from app.canvas.table import Floats


def label_places(parts: Floats, sizes: Floats, obstacles: Floats) -> list[Box | None]:
    """Return a place for the label of each part, None where there is none.

    `parts` and `obstacles` have the columns left, top, right, bottom; `sizes` has width and height. All
    labels that can stand below their part do; the others stand above, to the right or to the left.
    """
    places: list[Box | None] = [None] * len(parts)
    waiting = np.arange(len(parts))
    near, taken = NearBoxes(obstacles), np.empty((0, 4))
    for option in _options(parts, sizes):
        free = ~near.overlapped(option[waiting])
        if len(taken):
            free &= ~NearBoxes(taken).overlapped(option[waiting])
        chosen = waiting[free][_first_come(option[waiting[free]])]
        for i, row in zip(chosen.tolist(), option[chosen].tolist(), strict=True):
            places[i] = Box(*row)
        taken = np.vstack((taken, option[chosen]))
        waiting = np.setdiff1d(waiting, chosen, assume_unique=True)
        if not len(waiting):
            break
    return places


def _first_come(boxes: Floats) -> NDArray[np.bool_]:
    """Return which boxes may stand when each in turn is put down unless it overlaps one put down before."""
    stands = np.ones(len(boxes), np.bool_)
    later, earlier = NearBoxes(boxes).overlaps(boxes)
    clash = later > earlier
    later, earlier = later[clash], earlier[clash]
    for i in np.argsort(later, kind="stable").tolist():
        if stands[earlier[i]]:
            stands[later[i]] = False
    return stands


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
