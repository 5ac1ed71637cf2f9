"""Where wireways can be grabbed: by a corner to move it, anywhere else to ask about it."""

import math
from itertools import pairwise
from typing import NamedTuple

from wiring.plan.places import Point
from wiring.plan.plan import Plan

REACH_PX = 6.0


class WayHit(NamedTuple):
    """A wireway, and the index of its corner or -1."""

    way: str = ""
    corner: int = -1


def corner_at(plan: Plan, at: Point, scale: float) -> WayHit:
    """Return the wireway corner at a place; empty when there is none."""
    near = [
        (math.dist(corner, at), way.id, index)
        for way in plan.wireways.values()
        for index, corner in enumerate(way.points)
    ]
    distance, way_id, index = min(near, default=(math.inf, "", -1))
    return WayHit(way_id, index) if distance <= REACH_PX / scale else WayHit()


def way_at(plan: Plan, at: Point, scale: float) -> WayHit:
    """Return the wireway that runs through a place; empty when there is none."""
    near = [
        (off_stretch(a, b, at) - way.hole_mm / 2, way.id)
        for way in plan.wireways.values()
        for a, b in pairwise(way.points)
    ]
    distance, way_id = min(near, default=(math.inf, ""))
    return WayHit(way_id) if distance <= REACH_PX / scale else WayHit()


def off_stretch(a: Point, b: Point, at: Point) -> float:
    """Return how far a place lies from the line between two points."""
    dx, dy = b[0] - a[0], b[1] - a[1]
    square = dx * dx + dy * dy
    t = 0.0 if square < 1e-12 else max(0.0, min(1.0, ((at[0] - a[0]) * dx + (at[1] - a[1]) * dy) / square))
    return math.hypot(a[0] + t * dx - at[0], a[1] + t * dy - at[1])
