"""A length that is typed while something is drawn, and where it leads."""

import math
from contextlib import suppress

from wiring.plan.places import Point
from wiring.quantities.not_understood import NotUnderstood
from wiring.quantities.reading import read
from wiring.quantities.wording import worded

BEGINS = "0123456789.,"  # what a length begins with; until then letters are keys
BARE = {"metric": ("m", "mm"), "us": ("ft", "in")}  # what a bare number is in, a small one and a large one
STRAIGHT_SHARE = 0.06  # a direction this close to level or upright is meant to be
LARGE = 10.0  # nobody builds ten metres in one piece, nor half an inch


def typed_mm(typed: str, units: str) -> float:
    """Return the length that is typed; 0 while it cannot be read: half-typed text is no fault."""
    text = typed.strip()
    if not text:
        return 0.0
    with suppress(ValueError):
        small, large = BARE.get(units, BARE["metric"])
        text = f"{text} {small if float(text.replace(',', '.')) < LARGE else large}"
    with suppress(NotUnderstood):
        return max(read(text, "length") * 1000.0, 0.0)
    return 0.0


def towards(a: Point, b: Point, length_mm: float, *, free: bool = False) -> Point:
    """Return the place that far from a in the direction of b; level or upright if nearly so, unless free."""
    dx, dy = b[0] - a[0], b[1] - a[1]
    if not free:
        across, down = abs(dx) > STRAIGHT_SHARE * abs(dy), abs(dy) > STRAIGHT_SHARE * abs(dx)
        dx, dy = dx * across, dy * down
    share = length_mm / math.hypot(dx, dy) if (dx, dy) != (0.0, 0.0) else 0.0
    return a[0] + dx * share, a[1] + dy * share


def typed_words(typed: str, length_mm: float, units: str) -> str:
    """Say how what is typed is read."""
    read_as = f" is {worded(length_mm / 1000.0, 'length', units)}" if length_mm else ""
    return f"{typed}{read_as}"
