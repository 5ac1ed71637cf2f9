"""Drills in words: millimetres, and beside them the inch drill where a plan counts in feet and inches."""

import math

INCH_MM = 25.4
# Fractional twist drills come in steps of 1/64 inch up to 1 3/4 inch: ASME B94.11M, from memory. Larger holes
# are cut by other tools, in steps of 1/8 inch: common practice, no source.
_STEP, _LARGEST_MM, _LARGE_STEP = 64, 1.75 * INCH_MM, 8
_UNDER_MM = 0.1  # a drill cuts that much over its size: common practice, no source


def drill_words(hole_mm: float, *, us: bool) -> str:
    """Return the drill for a hole: ``6.5 mm``, or ``6.5 mm (17/64")`` for who has inch drills.

    The inch drill is the nearest that lets through what the hole is for, so rather the next larger.
    """
    metric = f"{hole_mm:g} mm"
    return f"{metric} ({inch_drill(hole_mm)})" if us else metric


def inch_drill(hole_mm: float) -> str:
    """Return the smallest standard inch drill that leaves the hole: ``17/64"``, ``1 1/8"``."""
    steps = _STEP if hole_mm <= _LARGEST_MM else _LARGE_STEP
    count = max(1, math.ceil((hole_mm - _UNDER_MM) / INCH_MM * steps))
    whole, rest = divmod(count, steps)
    common = math.gcd(rest, steps)
    part = f"{rest // common}/{steps // common}" if rest else ""
    return " ".join(words for words in (str(whole) if whole else "", part) if words) + '"'
