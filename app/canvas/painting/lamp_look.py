"""How the light of a lamp shows on the screen: the shade of its sign, size and strength of its halo.

All are told apart in steps, so that few pixmaps are kept, and lamps whose light has changed by less than can
be seen need not be painted again.
"""

from typing import NamedTuple

from wiring.catalogue.kind import Kind
from wiring.drawings.signs.halo import reach
from wiring.standards.lightness import lightness

SHADE_STEP = 5.0  # of lightness, by which signs differ
STEP_PX = 2.0  # by which radii differ
STRENGTHS = 10
MOST_PX = 420.0  # radius of a halo on the screen
LEAST_PX, LEAST_SPAN_PX = 9.0, 13.0  # the least one grows with the lightness too: seen from afar, lit is lit
FAR = 0.5  # pixels per millimetre; from farther away lamps stand close, and their light must not run together
REACH_MM = 40.0  # no lamp shines farther beside its sign on the plan
DARK_BELOW = 1.0  # lightness


class LampLook(NamedTuple):
    """The shade of the sign as a lightness; radius and strength of the halo, both 0 for none."""

    shade: float
    radius_px: float
    strength: float  # from 0 to 1


def lamp_look(kind: Kind, light: float, scale: float) -> LampLook:
    """Return how a lamp of that light, relative to its rated one, looks at a scale."""
    bright = lightness(light)
    shade = shade_of(bright)
    if bright < DARK_BELOW:
        return LampLook(shade, 0.0, 0.0)
    share = min(bright, 100.0) / 100.0
    least = LEAST_PX + LEAST_SPAN_PX * min(scale / FAR, 1.0) * share
    radius = min(max(reach(kind, bright) * scale, least), MOST_PX)
    return LampLook(shade, round(radius / STEP_PX) * STEP_PX, round(share * STRENGTHS) / STRENGTHS)


def shade_of(bright: float) -> float:
    """Return the lightness a sign is painted with."""
    return round(bright / SHADE_STEP) * SHADE_STEP


def farthest_px(scale: float) -> float:
    """Return how far the light of any lamp shows beside its sign, in pixels."""
    return max(min(REACH_MM * scale, MOST_PX), LEAST_PX + LEAST_SPAN_PX * min(scale / FAR, 1.0)) + STEP_PX
