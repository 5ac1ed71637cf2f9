"""Words that stand for a place of the set until its sheets are numbered."""

from collections.abc import Sequence
from typing import Literal

from wiring.pictures.picture import Point, Words

# of private use: no text that is printed holds them
_SIGN, _SHEET_SIGN, _BEFORE_SIGN = "\ue000", "\ue003", "\ue004"


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


def sheet_words(before: str, mark: str, at: Point, size_mm: float) -> Words:
    """Return words that become some of their own and the number of the sheet a mark stands on, if it does."""
    return Words(_SHEET_SIGN + mark + _BEFORE_SIGN + before, at, size_mm)


def sheet_mark_of(words: Words) -> str:
    """Return the mark whose sheet's number words stand for; empty for other words."""
    return words.text[1:].split(_BEFORE_SIGN)[0] if words.text.startswith(_SHEET_SIGN) else ""


def numbered(words: Words, number: int) -> Words:
    """Return such words with the number of the sheet."""
    return words._replace(text=f"{words.text.partition(_BEFORE_SIGN)[2]}{number}")


def row_mark(record: str) -> str:
    """Return the name of the invisible mark of a line in a list that is about a wire or a part."""
    return f"row {record}"
