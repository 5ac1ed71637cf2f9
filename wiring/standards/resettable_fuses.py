"""Polymer resettable fuses: a radial family as its maker's sheet has it, at 23 °C (verified).

A PTC trips at twice what it holds and takes seconds at five times that: far too slow to save a thin wire
from a stiff short circuit. Its cold resistance counts in the voltage drop.
"""

from itertools import pairwise
from typing import NamedTuple


class ResettableFuse(NamedTuple):
    """One size of the family."""

    hold_a: float
    trip_a: float
    highest_v: float
    least_ohm: float
    most_ohm: float
    most_ohm_once_tripped: float
    trip_s: float  # longest, at five times the hold current
    tripped_w: float


FAMILY: tuple[ResettableFuse, ...] = (
    ResettableFuse(0.10, 0.20, 60, 2.50, 4.50, 7.50, 4.0, 0.38),
    ResettableFuse(0.25, 0.50, 60, 1.00, 1.95, 3.00, 2.5, 0.45),
    ResettableFuse(0.50, 1.00, 60, 0.41, 0.77, 1.17, 4.0, 0.75),
    ResettableFuse(0.90, 1.80, 60, 0.14, 0.31, 0.47, 7.2, 1.00),
    ResettableFuse(1.10, 2.20, 30, 0.10, 0.18, 0.27, 6.6, 0.70),
    ResettableFuse(1.85, 3.70, 30, 0.040, 0.07, 0.11, 8.7, 1.00),
    ResettableFuse(3.00, 6.00, 30, 0.020, 0.05, 0.08, 10.8, 2.00),
    ResettableFuse(5.00, 10.0, 30, 0.010, 0.03, 0.05, 14.5, 3.00),
)

# Share of the hold current at an ambient temperature in °C: a radial 99 V type, 0.55 A at 20 °C (verified).
HOLD_BY_CELSIUS = (
    (-40.0, 1.55), (-20.0, 1.36), (0.0, 1.18), (20.0, 1.0), (40.0, 0.82), (50.0, 0.73), (60.0, 0.64),
    (70.0, 0.55), (85.0, 0.40),
)  # fmt: skip


def hold_share(celsius: float) -> float:
    """Return what is left of the hold current in a place that warm; the ends of the table hold beyond it."""
    points = HOLD_BY_CELSIUS
    if celsius <= points[0][0]:
        return points[0][1]
    for (cold, more), (warm, less) in pairwise(points):
        if celsius <= warm:
            return more + (less - more) * (celsius - cold) / (warm - cold)
    return points[-1][1]
