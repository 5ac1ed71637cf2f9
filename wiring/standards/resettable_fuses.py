"""Polymer resettable fuses: how much of their hold current is left in a warm place.

A maker's sheet of a radial 99 V type, 0.55 A at 20 °C (verified). Such a fuse trips at twice what it holds
and takes seconds at five times that: far too slow to save a thin wire from a stiff short circuit.
"""

from itertools import pairwise

# °C, share of the hold current
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
