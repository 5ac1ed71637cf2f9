"""Preferred values of IEC 60063, verified against reprints.

E24 is not the rounded geometric row: 27 30 33 36 39 43 47 and 82 differ. E96 is, without exception.
"""

import math

E6 = (10, 15, 22, 33, 47, 68)
E12 = (10, 12, 15, 18, 22, 27, 33, 39, 47, 56, 68, 82)
E24 = (
    10, 11, 12, 13, 15, 16, 18, 20, 22, 24, 27, 30, 33, 36, 39, 43, 47, 51, 56, 62, 68, 75, 82, 91,
)  # fmt: skip
E96 = tuple(round(100 * 10 ** (i / 96)) for i in range(96))

SERIES: dict[str, tuple[int, ...]] = {"E6": E6, "E12": E12, "E24": E24, "E96": E96}
_SAME = 1e-9  # a computed 470.0000001 Ω is 470 Ω


def next_up(ohms: float, series: str = "E24") -> float:
    """Return the smallest value of the series that is not below; ValueError unless positive and finite."""
    return _around(ohms, series)[1]


def next_down(ohms: float, series: str = "E24") -> float:
    """Return the largest value of the series that is not above; ValueError unless positive and finite."""
    return _around(ohms, series)[0]


def nearest(ohms: float, series: str = "E24") -> float:
    """Return the value of the series that is nearest by ratio; ValueError unless positive and finite."""
    below, above = _around(ohms, series)
    return below if ohms / below <= above / ohms else above


def next_e24_up(ohms: float) -> float:
    """Return the smallest E24 value that is not below; ValueError unless positive and finite."""
    return next_up(ohms, "E24")


def is_preferred(ohms: float, series: str = "E24") -> bool:
    """Whether a value is one of the series."""
    below, above = _around(ohms, series)
    return below == above


def _around(ohms: float, series: str) -> tuple[float, float]:
    if not (math.isfinite(ohms) and 1e-12 < ohms < 1e15):
        raise ValueError(f"{ohms} is no resistance that could be bought")
    digits = SERIES[series]
    decade = math.floor(math.log10(ohms)) - (1 if digits[0] == 10 else 2)
    values = [_scaled(d, e) for e in (decade - 1, decade, decade + 1) for d in digits]
    below = max(v for v in values if v <= ohms * (1 + _SAME))
    above = min(v for v in values if v >= ohms * (1 - _SAME))
    return below, above


def _scaled(digits: int, exponent: int) -> float:
    return float(digits * 10**exponent) if exponent >= 0 else digits / 10**-exponent
