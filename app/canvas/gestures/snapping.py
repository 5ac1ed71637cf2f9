"""Places pulled onto the grid, or into line with what stands there already."""

from typing import NamedTuple

import numpy as np

from app.canvas.table import Floats
from wiring.plan.places import Point

ALIGN_PX = 5.0  # how near to the middle line of another part a part must be to be drawn into it
NEAR_MM = 1200.0  # lines with what stands farther away than this are of no interest


class Snapped(NamedTuple):
    """A place after snapping, and the lines that explain it."""

    at: Point
    guides: tuple[tuple[Point, Point], ...] = ()


def on_grid(at: Point, grid_mm: float) -> Point:
    """Return the nearest point of the grid."""
    return round(at[0] / grid_mm) * grid_mm, round(at[1] / grid_mm) * grid_mm


def snapped(at: Point, others: Floats, grid_mm: float, scale: float) -> Snapped:
    """Return the place in line with the nearest of `others` (columns x, y) each way, else on the grid."""
    grid = on_grid(at, grid_mm)
    if not len(others):
        return Snapped(grid)
    reach = ALIGN_PX / scale
    in_x, in_y = _in_line(at, others, 0, reach), _in_line(at, others, 1, reach)
    place = (in_x[0] if in_x else grid[0], in_y[1] if in_y else grid[1])
    guides = tuple((other, place) for other in (in_x, in_y) if other is not None)
    return Snapped(place, guides)


def _in_line(at: Point, others: Floats, axis: int, reach: float) -> Point | None:
    off = np.abs(others[:, axis] - at[axis])
    away = np.abs(others[:, 1 - axis] - at[1 - axis])
    fits = np.flatnonzero((off <= reach) & (away <= NEAR_MM))
    if not len(fits):
        return None
    best = fits[np.lexsort((away[fits], np.round(off[fits], 3)))[0]]
    return float(others[best, 0]), float(others[best, 1])
