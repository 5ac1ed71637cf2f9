"""Where what is in the hand comes down: on a panel's spacing, in line with parts, on a line, on the grid."""

from itertools import pairwise
from typing import NamedTuple

import numpy as np

from app.canvas.gestures.panel_snap import snapped_on_panel
from app.canvas.gestures.pointer import Around
from app.canvas.gestures.snapping import ALIGN_PX, Snapped, snapped
from app.canvas.table import Floats
from wiring.plan.names import PartId
from wiring.plan.places import Point
from wiring.plan.plan import Plan


class Marks(NamedTuple):
    """What places are pulled to: middles of parts (columns x, y), and lines (columns x, y, x, y)."""

    middles: Floats
    lines: Floats


def marks_of(around: Around, moved: frozenset[PartId] = frozenset()) -> Marks:
    """Return the marks of everything but what moves."""
    keys = around.geometry.parts.keys()
    rows = [around.geometry.parts.get(k)[4:6] for k in keys if k not in moved]
    return Marks(np.array(rows) if rows else np.empty((0, 2)), ground_lines(around.plan))


def ground_lines(plan: Plan) -> Floats:
    """Return each straight piece of the board's edge, of tracks and of wireways."""
    edge = (*plan.board, plan.board[0]) if plan.board else ()
    lines = (edge, *plan.tracks, *(way.points for way in plan.wireways.values()))
    rows = [(*a, *b) for line in lines for a, b in pairwise(line)]
    return np.array(rows, dtype=np.float64) if rows else np.empty((0, 4))


def spot_at(around: Around, at: Point, marks: Marks, *, free: bool) -> Snapped:
    """Return where a place comes to lie; `free` leaves it where it is."""
    if free:
        return Snapped(at)
    on_panel = snapped_on_panel(around, at)
    if on_panel is not None:
        return on_panel
    found = snapped(at, marks.middles, around.grid_mm, around.scale)
    if len(found.guides) == 2:
        return found
    return snapped_on_line(at, marks.lines, around.scale) or found


def snapped_on_line(at: Point, lines: Floats, scale: float) -> Snapped | None:
    """Return the nearest place on the nearest line; None where none is near enough."""
    if not len(lines):
        return None
    starts, ways = lines[:, :2], lines[:, 2:] - lines[:, :2]
    squares = np.maximum((ways * ways).sum(axis=1), 1e-9)  # two corners of a line may lie on one place
    shares = np.clip(((np.array(at) - starts) * ways).sum(axis=1) / squares, 0.0, 1.0)
    feet = starts + ways * shares[:, None]
    away = np.hypot(feet[:, 0] - at[0], feet[:, 1] - at[1])
    best = int(away.argmin())
    if away[best] > ALIGN_PX / scale:
        return None
    x1, y1, x2, y2 = lines[best].tolist()
    return Snapped((round(float(feet[best, 0]), 3), round(float(feet[best, 1]), 3)), (((x1, y1), (x2, y2)),))
