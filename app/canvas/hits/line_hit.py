"""Where tracks and the board's outline can be grabbed: to select anywhere, the selected one by corners."""

import math
from itertools import pairwise

from app.canvas.hits.way_hit import off_stretch
from app.ground_keys import BOARD, TRACK, line_points
from wiring.plan.places import Point
from wiring.plan.plan import Line, Plan

REACH_PX, CORNER_PX = 5.0, 8.0
BED_MM = 28.0


def line_corner_at(plan: Plan, ground: str, at: Point, scale: float) -> int:
    """Return the index of the corner of the selected line at a place; -1 for none."""
    near = [(math.dist(corner, at), i) for i, corner in enumerate(line_points(plan, ground))]
    away, index = min(near, default=(math.inf, -1))
    return index if away <= CORNER_PX / scale else -1


def line_at(plan: Plan, at: Point, scale: float) -> str:
    """Return how a selection names the track or board's edge at a place; "" for none."""
    for index in reversed(range(len(plan.tracks))):
        if stretch_at(plan.tracks[index], at)[1] <= max(BED_MM / 2, REACH_PX / scale):
            return f"{TRACK}{index}"
    closed = (*plan.board, *plan.board[:1])
    return BOARD if len(closed) > 1 and stretch_at(closed, at)[1] <= REACH_PX / scale else ""


def stretch_at(line: Line, at: Point) -> tuple[int, float]:
    """Return the index of the stretch of a line that lies nearest to a place, and how far off it is."""
    near = [(off_stretch(a, b, at), i) for i, (a, b) in enumerate(pairwise(line))]
    away, index = min(near, default=(math.inf, -1))
    return index, away
