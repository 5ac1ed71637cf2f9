"""Words that stand for a place of the set until its sheets are numbered."""

from collections.abc import Sequence
from typing import Literal

from wiring.pictures.picture import Point, Words

_SIGN, _SHEET_SIGN = "\ue000", "\ue003"  # of private use: no text that is printed holds them


def pending(
    marks: Sequence[str], at: Point, size_mm: float, align: Literal["left", "right", "centre"] = "left"
) -> Words:
    """Return words that become the place of the first of some marks that the set has."""
    return Words(_SIGN + _SIGN.join(marks), at, size_mm, align=align)


def marks_of(words: Words) -> tuple[str, ...]:
    """Return the marks words stand for; none for words that say what they say."""
    return tuple(words.text.split(_SIGN)[1:]) if words.text.startswith(_SIGN) else ()


def sheet_number(mark: str, at: Point, size_mm: float) -> Words:
    """Return words, about a middle, that become the number of the sheet a mark stands on."""
    return Words(_SHEET_SIGN + mark, at, size_mm, "ink", "bold", "centre", "middle", ground="paper")


def sheet_mark_of(words: Words) -> str:
    """Return the mark whose sheet's number words stand for; empty for other words."""
    return words.text[1:] if words.text.startswith(_SHEET_SIGN) else ""


def row_mark(record: str) -> str:
    """Return the name of the invisible mark of a line in a list that is about a wire or a part."""
    return f"row {record}"
