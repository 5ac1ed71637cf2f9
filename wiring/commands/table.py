"""Tables and paragraphs for a terminal: aligned, and never wider than it is."""

import shutil
import textwrap
import unicodedata
from collections.abc import Sequence
from typing import NamedTuple

GAP = "  "
NARROWEST, WIDEST = 40, 110
LEAST_WORDS = 10  # columns left for running text, however narrow the terminal


class Column(NamedTuple):
    """One column: its heading, figures to the right or words to the left, and whether words may wrap."""

    title: str
    right: bool = False
    wraps: bool = False


def page_width() -> int:
    """Return how many columns the terminal has; 80 when the output goes elsewhere."""
    return min(max(shutil.get_terminal_size((80, 24)).columns, NARROWEST), WIDEST)


def table(columns: Sequence[Column], rows: Sequence[Sequence[str]], width: int | None = None) -> str:
    """Return the rows under their headings; columns that are empty in every row are left out."""
    kept = [i for i, _ in enumerate(columns) if any(row[i] for row in rows)]
    columns = [columns[i] for i in kept]
    cells = [[row[i] for i in kept] for row in rows]
    widths = _widths(columns, cells, page_width() if width is None else width)
    lines = [_line(columns, [c.title for c in columns], widths)]
    lines.append(GAP.join("─" * w for w in widths))
    for row in cells:
        wrapped = [
            textwrap.wrap(cell, w) if column.wraps and shown_width(cell) > w else [cell]
            for column, cell, w in zip(columns, row, widths, strict=True)
        ]
        for i in range(max(map(len, wrapped), default=0)):
            lines.append(_line(columns, [part[i] if i < len(part) else "" for part in wrapped], widths))
    return "\n".join(lines)


def _widths(columns: Sequence[Column], rows: Sequence[Sequence[str]], page: int) -> list[int]:
    widths = [
        max(shown_width(column.title), *(shown_width(row[i]) for row in rows), 1)
        for i, column in enumerate(columns)
    ]
    while sum(widths) + len(GAP) * (len(widths) - 1) > page:
        wrapping = [i for i, c in enumerate(columns) if c.wraps and widths[i] > LEAST_WORDS]
        if not wrapping:
            break
        widths[max(wrapping, key=lambda i: widths[i])] -= 1
    return widths


def _line(columns: Sequence[Column], cells: Sequence[str], widths: Sequence[int]) -> str:
    padded = []
    for column, cell, width in zip(columns, cells, widths, strict=True):
        space = " " * (width - shown_width(cell))
        padded.append(space + cell if column.right else cell + space)
    return GAP.join(padded).rstrip()


def shown_width(text: str) -> int:
    """Return how many columns a text takes; some scripts take two a sign, accents of their own none."""
    return sum(
        0 if unicodedata.combining(c) else 2 if unicodedata.east_asian_width(c) in "WF" else 1 for c in text
    )


def paragraph(text: str, indent: str = "", first: str | None = None) -> str:
    """Return running text broken to the terminal's width."""
    return textwrap.fill(
        text,
        page_width(),
        initial_indent=indent if first is None else first,
        subsequent_indent=indent,
        break_long_words=False,
        break_on_hyphens=False,
    )
