"""Which part or wire of a drawing is meant: under the pointer, or next in a direction from another."""

import math
from collections.abc import Sequence
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from wiring.drawings.circuit_places import Place

REACH_MM = 4.0  # from a click to the box of what is meant
ASIDE_WEIGHT = 2.5  # how much worse it is to lie aside of a direction than farther along it
LEAST_ALONG_MM = 0.5  # what lies no farther that way stands beside, not onward
MOST_ASIDE = 2.0  # times as far aside as along: what lies flatter belongs to the other direction
ROW_WEIGHT = 2.0  # reading goes row by row, so a place farther down comes later than one farther right


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
        if along > LEAST_ALONG_MM and MOST_ASIDE * along >= aside and far < best:
            best, found = far, number
    return found


def first(places: Sequence["Place"]) -> int | None:
    """Return the place a walk starts at: the upper left one."""

    def late(number: int) -> float:
        x_mm, y_mm = places[number].middle
        return x_mm + ROW_WEIGHT * y_mm

    return min(range(len(places)), key=late, default=None)
