"""Preferred resistances: the E24 series of IEC 60063, verified against reprints.

E24 is not the rounded geometric row: 27 30 33 36 39 43 47 and 82 differ.
"""

import math

E24 = (
    10, 11, 12, 13, 15, 16, 18, 20, 22, 24, 27, 30, 33, 36, 39, 43, 47, 51, 56, 62, 68, 75, 82, 91,
)  # fmt: skip

_SAME = 1e-9  # a computed 470.0000001 Ω is 470 Ω


def next_e24_up(ohms: float) -> float:
    """Return the smallest E24 value that is not below; ValueError unless positive and finite."""
    if not (math.isfinite(ohms) and 1e-12 < ohms < 1e15):
        raise ValueError(f"{ohms} is no resistance that could be bought")
    decade = math.floor(math.log10(ohms)) - 1
    values = (_scaled(digits, exponent) for exponent in (decade, decade + 1) for digits in E24)
    return next(value for value in values if value >= ohms * (1 - _SAME))


def _scaled(digits: int, exponent: int) -> float:
    return float(digits * 10**exponent) if exponent >= 0 else digits / 10**-exponent
