"""The light round a lit lamp: soft discs whose reach follows how bright it looks."""

from wiring.catalogue.kind import Kind
from wiring.drawings.signs.hand import box, dot
from wiring.drawings.signs.lens_colours import lens_colour
from wiring.drawings.signs.strip import strip_span
from wiring.pictures.picture import NO_PEN, Item
from wiring.plan.part import Part

_RINGS = ((1.0, 0.10), (0.78, 0.12), (0.58, 0.16), (0.40, 0.22))  # share of the reach, opacity
_PALE = {"#f4f4ee", "#f6d9a0"}  # these would not show on paper; they glow in the theme's own light


def halo(kind: Kind, lightness: float | None, part: Part | None = None) -> tuple[Item, ...]:
    """Return the discs of a part's light about its centre; nothing when it is dark or no lamp.

    A strip shines along its whole band, for which its part is needed.
    """
    if lightness is None or lightness < 1.0:
        return ()
    colour = lens_colour(kind)
    if colour in _PALE:
        colour = "lit"
    reach_mm = reach(kind, lightness)
    share = min(lightness, 100.0) / 100.0
    strength = 0.35 + 0.65 * share
    if kind.sign == "strip":
        left, right = strip_span(kind, part)
        middle = ((left + right) / 2, 0.0)
        return tuple(
            box(
                middle,
                right - left + 2 * reach_mm * r,
                2 * reach_mm * r,
                corner_mm=reach_mm * r,
                pen=NO_PEN,
                fill=colour,
                opacity=opacity * strength,
            )
            for r, opacity in _RINGS
        )
    return tuple(
        dot((0.0, 0.0), reach_mm * r, pen=NO_PEN, fill=colour, opacity=opacity * strength)
        for r, opacity in _RINGS
    )


def reach(kind: Kind, lightness: float) -> float:
    """Return how far a part's light is drawn from its centre, mm."""
    own = max(min(kind.width_mm, kind.height_mm) / 2, 2.0)
    return own + (6.0 + own * 0.8) * min(max(lightness, 0.0), 120.0) / 100.0
