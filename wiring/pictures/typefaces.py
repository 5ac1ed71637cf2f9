"""The four cuts of the typeface all pictures are set in, and what they know about each letter."""

import unicodedata
from collections.abc import Mapping
from functools import lru_cache
from importlib.resources import files
from typing import Any, NamedTuple

FAMILY = "Lato"
FILES: Mapping[str, str] = {
    "regular": "Lato-Regular.ttf",
    "semibold": "Lato-Semibold.ttf",
    "bold": "Lato-Bold.ttf",
    "italic": "Lato-Italic.ttf",
}
BOX_EM = 0.6  # width kept for a sign the typeface lacks; it is printed as an empty box
_SELECTORS = frozenset(map(chr, range(0xFE00, 0xFE10)))  # say how the sign before looks, and are none
_LIKE = {"\u2011": "-"}  # signs the typeface lacks that look like one it has
_DROPPED = {"Cc", "Cf", "Cn", "Co"}  # control, format, unassigned, private: no shape of their own


class Typeface(NamedTuple):
    """One cut: lengths in em, advances by code point."""

    name: str  # the name it is registered under for PDF
    ascent_em: float
    descent_em: float  # below the baseline, positive
    cap_em: float
    advances_em: Mapping[int, float]
    font: Any  # the reportlab font, subset and embedded on writing


@lru_cache(maxsize=8)
def typeface(weight: str = "regular") -> Typeface:
    """Return the cut for a weight of :class:`wiring.pictures.picture.Words`; KeyError for any other."""
    from reportlab.pdfbase import pdfmetrics
    from reportlab.pdfbase.ttfonts import TTFont

    path = files("wiring.pictures") / "fonts" / FILES[weight]
    name = f"{FAMILY}-{weight}"
    with path.open("rb") as stream:
        font = TTFont(name, stream)
    pdfmetrics.registerFont(font)
    face = font.face
    advances = {code: face.charWidths[code] / 1000 for code in face.charToGlyph if code in face.charWidths}
    return Typeface(name, face.ascent / 1000, -face.descent / 1000, face.capHeight / 1000, advances, font)


def printable(text: str) -> str:
    """Return the text on one line with nothing in it that has no shape: safe for XML, PDF and measuring."""
    if text.isascii() and text.isprintable():
        return text
    kept: list[str] = []
    for sign in unicodedata.normalize("NFC", text):
        category = unicodedata.category(sign)
        if sign in "\n\r\t\v\f\x85\u2028\u2029":
            kept.append(" ")
        elif category == "Cs":
            kept.append("\ufffd")
        elif category not in _DROPPED and sign not in _SELECTORS:
            kept.append(_LIKE.get(sign, sign))
    return "".join(kept)


@lru_cache(maxsize=32768)
def runs(text: str, weight: str = "regular") -> tuple[str, ...]:
    """Return the text cut into runs the typeface has; an empty string stands for each sign it lacks."""
    if text.isascii() and text.isprintable():  # every cut has these
        return (text,) if text else ()
    advances = typeface(weight).advances_em
    found: list[str] = []
    run = ""
    for sign in printable(text):
        if ord(sign) in advances:
            run += sign
        elif not unicodedata.combining(sign):
            if run:
                found.append(run)
            found.append("")
            run = ""
    if run:
        found.append(run)
    return tuple(found)
