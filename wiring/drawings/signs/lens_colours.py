"""What colour the lens of a light has, by the words of its kind's key."""

from wiring.catalogue.kind import Kind
from wiring.pictures.picture import Colour

_LENSES: tuple[tuple[str, Colour], ...] = (
    ("warm-white", "#f6d9a0"),
    ("red", "#d0473c"),
    ("yellow", "#e8b83a"),
    ("green", "#4f9d5b"),
    ("blue", "#4a7fc1"),
    ("white", "#f4f4ee"),
)


def lens_colour(kind: Kind) -> Colour:
    """Return the colour of the light a kind gives; lamps without a colour word shine warm."""
    return next((colour for word, colour in _LENSES if word in kind.key), "#f6d9a0")
