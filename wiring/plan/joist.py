"""A cross member of the benchwork: a beam under the board that wires go through or round."""

import msgspec


class Joist(msgspec.Struct, frozen=True, kw_only=True, omit_defaults=True):
    """A straight joist along its middle line, as seen from above, in plan millimetres.

    `width_mm` is its thickness as it shows from below, `depth_mm` how far it reaches down.
    """

    start: tuple[float, float]
    end: tuple[float, float]
    width_mm: float = 20.0  # common practice, no source: planed softwood or ply of three quarters of an inch
    depth_mm: float = 70.0
