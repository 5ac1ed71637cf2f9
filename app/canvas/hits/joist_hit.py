"""Where joists can be grabbed: anywhere on the bar, the selected one also by its ends."""

import math

from wiring.plan.joist import Joist
from wiring.plan.places import Point
from wiring.plan.plan import Plan

LEAST_PX = 4.0  # a bar seen from afar is still that wide to the hand
END_PX = 8.0


def joist_at(plan: Plan, at: Point, scale: float) -> int:
    """Return the index of the joist a place lies on, the last laid of several; -1 for none."""
    for index in reversed(range(len(plan.joists))):
        joist = plan.joists[index]
        if _off(joist, at) <= max(joist.width_mm / 2, LEAST_PX / scale):
            return index
    return -1


def joist_end_at(joist: Joist, at: Point, scale: float) -> str:
    """Return "start" or "end" of a joist, whichever lies at a place; "" for neither."""
    ends = {"start": math.dist(joist.start, at), "end": math.dist(joist.end, at)}
    nearest = min(ends, key=lambda end: ends[end])
    return nearest if ends[nearest] <= END_PX / scale else ""


def _off(joist: Joist, at: Point) -> float:
    """Return how far a place lies from the middle line of a joist."""
    (ax, ay), (bx, by) = joist.start, joist.end
    dx, dy = bx - ax, by - ay
    square = dx * dx + dy * dy
    share = 0.0 if square < 1e-12 else ((at[0] - ax) * dx + (at[1] - ay) * dy) / square
    share = min(max(share, 0.0), 1.0)
    return math.hypot(ax + share * dx - at[0], ay + share * dy - at[1])
