"""The colour a wire is drawn in, and its stripe; letters that say nothing are drawn as bare paper."""

from wiring.pictures.picture import Path, Pen, Point
from wiring.standards.colours import WireColour, colour

_TOLD = 0.25  # of the way from black to white: two colours so far apart are told apart in a print in grey
_LUMA = (0.299, 0.587, 0.114)  # what red, green and blue count in grey (ITU-R BT.601, section 2.5.1)
_TICK = 0.2  # of a dash, white beyond its end


def wire_colour(letters: str) -> WireColour:
    """Return the colour of the letters, or white named "unknown" for letters that name no wire colour."""
    try:
        return colour(letters)
    except KeyError:
        return WireColour(letters, "unknown", "#ffffff")


def stripe_items(
    points: tuple[Point, ...], wire: WireColour, width_mm: float, dash_mm: float
) -> tuple[Path, ...]:
    """Return the dashes of a wire's second colour along it; none for a wire of one colour.

    Where a print in grey shows both alike, each dash ends in a white tick, so that two colours are seen.
    """
    if not wire.stripe_rgb:
        return ()
    stripe = Path(points, Pen(wire.stripe_rgb, width_mm, (dash_mm, dash_mm)))
    if abs(_grey(wire.rgb) - _grey(wire.stripe_rgb)) >= _TOLD:
        return (stripe,)
    tick = dash_mm * _TICK
    return Path(points, Pen("#ffffff", width_mm, (dash_mm + tick, dash_mm - tick))), stripe


def _grey(rgb: str) -> float:
    return sum(share * int(rgb[i : i + 2], 16) / 255 for share, i in zip(_LUMA, (1, 3, 5), strict=True))
