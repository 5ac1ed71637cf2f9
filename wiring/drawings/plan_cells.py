"""Looks at every place a label can have at once: which are free, and how many lines they cross."""

import numpy as np
from numpy.typing import NDArray

Cells = NDArray[np.uint8]


def any_within(cells: Cells, down: int, across: int, stride: int = 1) -> Cells:
    """Return, for every window of a size, whether a cell in it is marked; one marked where none fits.

    With a stride, for every so many'th window down and across.
    """
    if down > cells.shape[0] or across > cells.shape[1]:
        return np.ones((1, 1), np.uint8)
    found = cells
    span = 1
    while span < down:  # a window is two that overlap, so few steps give one of any size
        step = min(span, down - span)
        found = found[:-step] | found[step:]
        span += step
    found = found[::stride]
    span = 1
    while span < across:
        step = min(span, across - span)
        found = found[:, :-step] | found[:, step:]
        span += step
    return found[:, ::stride]


def sums_within(cells: Cells, down: int, across: int) -> NDArray[np.int32]:
    """Return how many cells are marked in every window of a size; one that is full where none fits."""
    if down > cells.shape[0] or across > cells.shape[1]:
        return np.full((1, 1), down * across, np.int32)
    table = np.zeros((cells.shape[0] + 1, cells.shape[1] + 1), np.int32)
    np.cumsum(cells, axis=1, dtype=np.int32, out=table[1:, 1:])
    np.cumsum(table[1:, 1:], axis=0, out=table[1:, 1:])
    below, above = table[down:], table[:-down]
    return below[:, across:] - above[:, across:] - below[:, :-across] + above[:, :-across]
