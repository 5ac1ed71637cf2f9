"""Wire colours: the letters of IEC 60757, verified against the translation of its 1983 text.

Letters of two colours on one wire follow each other in the order of the standard's table. Green and yellow
together are kept for the protective conductor of the mains, so no low-voltage wire is offered in GNYE. The
shades are our own, chosen to be told apart on paper and on the screen; the letters always stand beside
them.
"""

from collections.abc import Mapping
from types import MappingProxyType
from typing import NamedTuple


class WireColour(NamedTuple):
    """A colour of insulation; the stripe is empty on a wire of one colour."""

    letters: str
    name: str
    rgb: str  # "#rrggbb"
    stripe_rgb: str = ""


# In the order of the standard's table, which two-colour combinations follow.
_SINGLE = (
    WireColour("BK", "black", "#26282b"),
    WireColour("BN", "brown", "#7a4a26"),
    WireColour("RD", "red", "#c8281e"),
    WireColour("OG", "orange", "#ee7d11"),
    WireColour("YE", "yellow", "#f4cf1c"),
    WireColour("GN", "green", "#2b8a3e"),
    WireColour("BU", "blue", "#2360b0"),
    WireColour("VT", "violet", "#7b3f9d"),
    WireColour("GY", "grey", "#8d9399"),
    WireColour("WH", "white", "#fbfaf7"),
    WireColour("PK", "pink", "#f09ab4"),
    WireColour("TQ", "turquoise", "#2fb4b0"),
)
_BY_LETTERS = {c.letters: c for c in _SINGLE}
_ORDER = {c.letters: i for i, c in enumerate(_SINGLE)}
RESERVED = "GNYE"

_PAIRS = (
    "BKRD", "BKWH", "BKYE", "BKBU", "BKGN", "BNWH", "RDWH", "RDYE", "RDBU", "RDGN", "OGWH", "YEWH", "GNWH",
    "BUWH", "YEBU", "VTWH", "GYWH", "GYPK", "BNYE", "BNGN", "GNGY",
)  # fmt: skip


def _pair(letters: str) -> WireColour:
    first, second = _BY_LETTERS[letters[:2]], _BY_LETTERS[letters[2:]]
    # The letters do not say which of the two is the ground, so GNWH and WHGN are drawn alike.
    return WireColour(letters, f"{first.name} and {second.name}", first.rgb, second.rgb)


COLOURS: Mapping[str, WireColour] = MappingProxyType(
    _BY_LETTERS | {letters: _pair(letters) for letters in _PAIRS}
)


def colour(letters: str) -> WireColour:
    """Return the colour of one or two pairs of letters, in either order and case.

    KeyError for what is no colour of a wire, and for the reserved green-and-yellow.
    """
    key = letters.strip().upper()
    if key in COLOURS:
        return COLOURS[key]
    halves = sorted({key[:2], key[2:]}, key=lambda half: _ORDER.get(half, 99))
    if len(key) != 4 or len(halves) != 2 or not all(half in _ORDER for half in halves):
        raise KeyError(letters)
    ordered = "".join(halves)
    if set(halves) == {"GN", "YE"}:
        raise KeyError(letters)
    return COLOURS.get(ordered) or _pair(ordered)
