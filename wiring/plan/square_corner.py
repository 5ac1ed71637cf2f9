"""Where the corner of a square wire goes when the end before it is moved."""

from wiring.plan.places import Point

LEVEL_MM = 0.002  # places are kept to a thousandth; within two of them they are level


def square_corner(was: Point, now: Point, corner: Point, beyond: Point) -> Point:
    """Return where the corner goes when the end before it goes from `was` to `now` and both legs stay square.

    Only a corner between a level and an upright leg goes along; any other stays, lest the leg beyond slant.
    """
    if _level(was[1], corner[1]) and _level(corner[0], beyond[0]):
        return corner[0], now[1]
    if _level(was[0], corner[0]) and _level(corner[1], beyond[1]):
        return now[0], corner[1]
    return corner


def _level(a: float, b: float) -> bool:
    return abs(a - b) <= LEVEL_MM
