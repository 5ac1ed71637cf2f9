"""Which part or wire of a drawing is meant: under the pointer, or next in a direction from another."""

import math
from collections.abc import Sequence
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from wiring.drawings.circuit_places import Place

REACH_MM = 4.0  # from a click to the box of what is meant
ASIDE_WEIGHT = 2.5  # how much worse it is to lie aside of a direction than farther along it


def meant(places: Sequence["Place"], x_mm: float, y_mm: float, reach_mm: float = REACH_MM) -> int | None:
    """Return which place a point means: the smallest that holds it, else the nearest within reach."""
    best: tuple[float, float] | None = None
    found = None
    for number, place in enumerate(places):
        left, top, right, bottom = place.box
        away = math.hypot(max(left - x_mm, x_mm - right, 0.0), max(top - y_mm, y_mm - bottom, 0.0))
        rank = (away, (right - left) * (bottom - top))
        if away <= reach_mm and (best is None or rank < best):
            best, found = rank, number
    return found


def onward(places: Sequence["Place"], here: int, way: tuple[int, int]) -> int | None:
    """Return the nearest place in a direction, one of (±1, 0) and (0, ±1); None at the edge."""
    x, y = places[here].middle
    best, found = math.inf, None
    for number, place in enumerate(places):
        across, down = place.middle[0] - x, place.middle[1] - y
        along = across * way[0] + down * way[1]
        aside = abs(across * way[1]) + abs(down * way[0])
        far = along + ASIDE_WEIGHT * aside
        if along > 0.5 and along >= 0.5 * aside and far < best:
            best, found = far, number
    return found


def first(places: Sequence["Place"]) -> int | None:
    """Return the place a walk starts at: the upper left one."""
    return min(range(len(places)), key=lambda n: places[n].middle[0] + 2 * places[n].middle[1], default=None)
