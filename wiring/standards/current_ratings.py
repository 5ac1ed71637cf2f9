"""Rated currents that switches, diodes and the like are made for: the R10 row of IEC 60059.

From memory of IEC 60059: 1 1.25 1.6 2 2.5 3.15 4 5 6.3 8 A and these times powers of ten.
"""

import math

R10 = (1.0, 1.25, 1.6, 2.0, 2.5, 3.15, 4.0, 5.0, 6.3, 8.0)
_SAME = 1e-9


def next_rating_up(current_a: float) -> float:
    """Return the smallest rated current that is not below; ValueError unless positive and finite."""
    if not (math.isfinite(current_a) and 1e-9 < current_a < 1e9):
        raise ValueError(f"nothing is made for {current_a} A")
    decade = math.floor(math.log10(current_a))
    rows = [round(r * 10.0**e, 12 - e) for e in (decade, decade + 1) for r in R10]
    return next(r for r in rows if r >= current_a * (1 - _SAME))
