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
    again: bool = False  # where a page begins with what goes on from the row before, this is said again


def column_widths(
    columns: Sequence[Column],
    texts: Sequence[Sequence[str]],
    leads: Sequence[float],
    width: float,
    size_mm: float,
) -> list[float]:
    """Return the widths for what each column says, in mm; `leads` is what stands before its words.

    A column too narrow for its longest word takes from the one that has most to spare; one of numbers, which
    stands to the right, then also where a number and its unit would come apart.
    """
    whole = sum(c.share for c in columns)
    widths = [width * c.share / whole for c in columns]
    needs = [0.0] * len(columns)
    for apart in (True, False):
        for i, (column, said, lead) in enumerate(zip(columns, texts, leads, strict=True)):
            if apart or column.align == "right":
                needs[i] = _longest_mm(column, said, size_mm, apart=apart) + lead + 2 * PAD_MM + _AIR_MM
        _widen(widths, needs)
        needs = [min(need, wide) for need, wide in zip(needs, widths, strict=True)]
    return widths


def _widen(widths: list[float], needs: Sequence[float]) -> None:
    """Give each column what it needs, as far as another has it to spare."""
    for i, need in enumerate(needs):
        spare = [w - n for w, n in zip(widths, needs, strict=True)]
        giver = max(range(len(needs)), key=spare.__getitem__)
        if 0.0 < need - widths[i] <= spare[giver]:
            widths[giver] -= need - widths[i]
            widths[i] = need


def _longest_mm(column: Column, texts: Sequence[str], size_mm: float, *, apart: bool) -> float:
    """Return the longest word of a column, or where not told apart its longest text."""
    words = sorted({word for text in set(texts) for word in (text.split() if apart else [text])}, key=len)
    words = words[-_MEASURED:]
    words = [word for word in words if len(word) >= len(words[-1]) - _SHORTER]
    title = [width_mm(word, size_mm, "semibold") for word in column.title.split()]
    return max((*title, *(width_mm(word, size_mm, column.weight) for word in words)), default=0.0)
