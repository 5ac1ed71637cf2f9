"""How wide the columns of a table are: their shares, but no word is broken where another column has room."""

from collections.abc import Sequence
from typing import Literal, NamedTuple

from wiring.pictures.metrics import width_mm

PAD_MM = 1.4
_SHORTER = 3  # letters: a word that has so many fewer than the longest of its column is not the widest
_MEASURED = 300  # words of a column at most
_AIR_MM = 0.1  # so that rounding breaks no word


class Column(NamedTuple):
    """One column: its heading, its share of the width, and how its cells stand."""

    title: str
    share: float
    align: Literal["left", "right", "centre"] = "left"
    weight: Literal["regular", "semibold", "bold", "italic"] = "regular"
    again: bool = False  # where a long row goes on as another, this is said again


def column_widths(
    columns: Sequence[Column],
    texts: Sequence[Sequence[str]],
    leads: Sequence[float],
    width: float,
    size_mm: float,
) -> list[float]:
    """Return the widths for what each column says, in mm; `leads` is what stands before its words.

    A column too narrow for its longest word takes from the one that has most to spare.
    """
    whole = sum(c.share for c in columns)
    widths = [width * c.share / whole for c in columns]
    needs = [
        _longest_mm(c, said, size_mm) + lead + 2 * PAD_MM + _AIR_MM
        for c, said, lead in zip(columns, texts, leads, strict=True)
    ]
    for i, need in enumerate(needs):
        spare = [w - n for w, n in zip(widths, needs, strict=True)]
        giver = max(range(len(columns)), key=spare.__getitem__)
        if 0.0 < need - widths[i] <= spare[giver]:
            widths[giver] -= need - widths[i]
            widths[i] = need
    return widths


def _longest_mm(column: Column, texts: Sequence[str], size_mm: float) -> float:
    words = sorted({word for text in set(texts) for word in text.split()}, key=len)[-_MEASURED:]
    words = [word for word in words if len(word) >= len(words[-1]) - _SHORTER]
    title = [width_mm(word, size_mm, "semibold") for word in column.title.split()]
    return max((*title, *(width_mm(word, size_mm, column.weight) for word in words)), default=0.0)
