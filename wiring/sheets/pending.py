"""Words that stand for a place of the set until its sheets are numbered."""

from collections.abc import Sequence
from typing import Literal

from wiring.pictures.picture import Point, Words

_SIGN = "\ue000"  # of private use: no text that is printed holds it


def pending(
    marks: Sequence[str], at: Point, size_mm: float, align: Literal["left", "right", "centre"] = "left"
) -> Words:
    """Return words that become the place of the first of some marks that the set has."""
    return Words(_SIGN + _SIGN.join(marks), at, size_mm, align=align)


def marks_of(words: Words) -> tuple[str, ...]:
    """Return the marks words stand for; none for words that say what they say."""
    return tuple(words.text.split(_SIGN)[1:]) if words.text.startswith(_SIGN) else ()


def row_mark(record: str) -> str:
    """Return the name of the invisible mark of a line in a list that is about a wire or a part."""
    return f"row {record}"
