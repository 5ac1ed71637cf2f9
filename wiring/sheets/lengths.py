"""Lengths to cut, rounded up to what a person measures off: whole centimetres, or whole inches."""

import math

_INCH_M = 0.0254


def step_m(units: str) -> float:
    """Return the step lengths are rounded up to, in metres."""
    return _INCH_M if units == "us" else 0.01


def rounded_up_m(length_m: float, units: str) -> float:
    """Return a length rounded up to a whole step; what is a whole step already stays."""
    step = step_m(units)
    return math.ceil(length_m / step - 1e-6) * step


def length_words(length_m: float, units: str) -> str:
    """Return a rounded length as it is read off a tape: ``1.24 m``, ``7 ft 10 in``."""
    if units != "us":
        return f"{length_m:.2f} m"
    inches = round(length_m / _INCH_M)
    feet, rest = divmod(inches, 12)
    if not feet:
        return f"{rest} in"
    return f"{feet} ft {rest} in" if rest else f"{feet} ft"
