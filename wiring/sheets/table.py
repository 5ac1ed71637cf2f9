"""Tables: cells that wrap, bands of rows, a header every page repeats; no text is ever cut."""

from collections.abc import Sequence
from itertools import accumulate, pairwise
from typing import Literal, NamedTuple

from wiring.drawings.wire_colour import stripe_items, wire_colour
from wiring.findings.finding import Rank
from wiring.pictures.metrics import LINE_EM, cap_mm, wrapped
from wiring.pictures.picture import NO_PEN, Anchor, Disc, Item, Link, Path, Pen, Words
from wiring.sheets.blocks import LIST_MM, Block
from wiring.sheets.column_widths import PAD_MM, column_widths
from wiring.sheets.column_widths import Column as Column
from wiring.sheets.pending import pending, row_mark
from wiring.sheets.resistor_picture import resistor_picture

_RULE = Pen("faint", 0.2)
_HEAD_RULE = Pen("ink", 0.5)
_MOST_LINES = 12  # a longer cell goes on in a row of its own, so that a row always fits a page
_SWATCH_MM = 7.5
_WHOLE_MM = 45.0  # a table no higher is not parted


class Cell(NamedTuple):
    """More than plain text in a cell."""

    text: str = ""
    weight: Literal["", "regular", "semibold", "bold", "italic"] = ""
    swatch: str = ""  # wire colour letters, shown as a piece of the wire before the text
    tick: bool = False  # an empty box for the pencil
    target: str = ""  # anchor the cell leads to
    rank: Rank | None = None  # the flag of a finding
    indent: float = 0.0  # mm left free before the text
    bands: tuple[str, ...] = ()  # a resistor's colours, drawn before the text
    see: tuple[str, ...] = ()  # marks; the place of the first the set has is written here, as 27/B4
    about: str = (
        ""  # wire, part or sort of parts the line is about: where its mark stands once it has changed
    )
    ticked: bool = False  # the box is ticked already


Row = Sequence[str | Cell]


def table(
    columns: Sequence[Column],
    rows: Sequence[Row],
    width: float,
    *,
    size_mm: float = LIST_MM,
    gap_mm: float = 2.5,
    edges: Sequence[float] | None = None,
) -> tuple[Block, ...]:
    """Return one block a row; columns share the width; the last block leaves a gap after the table.

    `edges` is for tables that stand one above the other, as `column_edges` gives them.
    """
    edges = column_edges(columns, rows, width, size_mm) if edges is None else edges
    header, header_mm = _header(columns, edges, size_mm)
    blocks: list[Block] = []
    above = [""] * len(columns)  # what each column said last
    for number, row in enumerate(rows):
        cells = [c if isinstance(c, Cell) else Cell(c) for c in row]
        first: list[tuple[str, ...]] = []
        parts = _parts(columns, cells, edges, size_mm)
        for i, part in enumerate(parts):
            joined: tuple[Item, ...] = ()
            if i:  # the box, swatch and flag stand on the first of the parts only
                cells = [
                    c if k.again else Cell(c.text, c.weight, indent=_lead(c))
                    for k, c in zip(columns, cells, strict=True)
                ]
                said = [f if k.again else p for k, f, p in zip(columns, first, part, strict=True)]
            else:
                above = [c.text or a for c, a in zip(cells, above, strict=True)]
                first = said = [
                    (a,) if k.again and not c.text and a else p
                    for k, c, a, p in zip(columns, cells, above, part, strict=True)
                ]
            banded, ruled = number % 2 == 1, i == len(parts) - 1
            if said != part:  # right below what it goes on from nothing is said again
                plain = [Cell(c.text, c.weight, indent=_lead(c)) for c in cells] if i else cells
                once = [
                    () if k.again and (i or not c.text) else p
                    for k, c, p in zip(columns, cells, part, strict=True)
                ]
                joined = _row(columns, plain, once, edges, size_mm, banded=banded, ruled=ruled)[1]
            height, items = _row(columns, cells, said, edges, size_mm, banded=banded, ruled=ruled)
            blocks.append(Block(height, items, header=header, header_mm=header_mm, joined=joined))
    if blocks:
        # neither the first nor the last row stands alone on a page; a short table stays whole
        short = sum(b.height_mm for b in blocks) <= _WHOLE_MM
        for i in range(len(blocks) - 1) if short else {0, len(blocks) - 2}:
            if 0 <= i < len(blocks) - 1:
                blocks[i] = blocks[i]._replace(keep_next=True)
        blocks.append(Block(gap_mm, ()))
    return tuple(blocks)


def column_edges(
    columns: Sequence[Column], rows: Sequence[Row], width: float, size_mm: float = LIST_MM
) -> Sequence[float]:
    """Return where the columns of a table begin and end, or of several, given the rows of all of them."""
    texts: list[list[str]] = [[] for _ in columns]
    leads = [0.0] * len(columns)
    for row in rows:
        for i, cell in enumerate(row):
            if isinstance(cell, Cell):
                leads[i] = max(leads[i], _lead(cell))
                texts[i].append(cell.text)
            else:
                texts[i].append(cell)
    return [0.0, *accumulate(column_widths(columns, texts, leads, width, size_mm))]


def _header(columns: Sequence[Column], edges: Sequence[float], size: float) -> tuple[tuple[Item, ...], float]:
    titles = [
        wrapped(c.title, max(b - a - 2 * PAD_MM, 4.0), size, "semibold")
        for c, (a, b) in zip(columns, pairwise(edges), strict=True)
    ]
    step = size * LINE_EM
    height = step * max(len(t) for t in titles) + 1.8
    items: list[Item] = []
    for column, lines, (a, b) in zip(columns, titles, pairwise(edges), strict=True):
        for i, line in enumerate(lines):
            y = height - 1.5 - step * (len(lines) - 1 - i)
            items.append(Words(line, (_x(column, a, b), y), size, weight="semibold", align=column.align))
    items.append(Path(((edges[0], height), (edges[-1], height)), _HEAD_RULE))
    return tuple(items), height


def _parts(
    columns: Sequence[Column], cells: Sequence[Cell], edges: Sequence[float], size: float
) -> list[list[tuple[str, ...]]]:
    """Return the wrapped lines of each cell; more than one list when a cell is too long for one row."""
    lines = []
    for column, cell, (a, b) in zip(columns, cells, pairwise(edges), strict=True):
        room = b - a - 2 * PAD_MM - _lead(cell)
        lines.append(wrapped(cell.text, max(room, 4.0), size, cell.weight or column.weight))
    parts = max(1, -(-max(len(x) for x in lines) // _MOST_LINES))
    return [[x[i * _MOST_LINES : (i + 1) * _MOST_LINES] for x in lines] for i in range(parts)]


def _row(
    columns: Sequence[Column],
    cells: Sequence[Cell],
    lines: Sequence[tuple[str, ...]],
    edges: Sequence[float],
    size: float,
    *,
    banded: bool,
    ruled: bool = True,
) -> tuple[float, tuple[Item, ...]]:
    step = size * LINE_EM
    height = step * max(1, *(len(x) for x in lines)) + 2.0
    items: list[Item] = []
    if banded:
        corners = ((edges[0], 0.0), (edges[-1], 0.0), (edges[-1], height), (edges[0], height))
        items.append(Path(corners, NO_PEN, "raised", closed=True))
    if ruled:
        items.append(Path(((edges[0], height), (edges[-1], height)), _RULE))
    first = 1.0 + (step + cap_mm(size)) / 2
    for column, cell, texts, (a, b) in zip(columns, cells, lines, pairwise(edges), strict=True):
        x = _x(column, a, b) + (_lead(cell) if column.align == "left" else 0.0)
        weight = cell.weight or column.weight
        for i, text in enumerate(texts):
            items.append(Words(text, (x, first + i * step), size, weight=weight, align=column.align))
        middle = first - cap_mm(size) / 2
        items += _marks(cell, a, b, middle)
        if cell.see:
            items.append(pending(cell.see, (x, first), size, column.align))
        if cell.target:
            items.append(Link(a, 0.0, b - a, height, cell.target))
    return height, tuple(items)


def _marks(cell: Cell, left: float, right: float, middle: float) -> tuple[Item, ...]:
    items: list[Item] = []
    if cell.tick:
        x, half = (left + right) / 2, 1.7
        box = (
            (x - half, middle - half),
            (x + half, middle - half),
            (x + half, middle + half),
            (x - half, middle + half),
        )
        items.append(Path(box, Pen("ink", 0.35), "paper", closed=True))
    if cell.ticked:
        x = (left + right) / 2
        stroke = ((x - 1.1, middle - 0.1), (x - 0.3, middle + 0.9), (x + 1.4, middle - 1.4))
        items.append(Path(stroke, Pen("ink", 0.5)))
    if cell.about:
        items.append(Anchor(row_mark(cell.about), (left, middle)))
    if cell.swatch:
        items += swatch(cell.swatch, left + PAD_MM, middle)
    if cell.bands:
        items += resistor_picture(cell.bands, left + PAD_MM, middle)
    if cell.rank is not None:
        items += flag(cell.rank, left + PAD_MM + 1.6, middle)
    return tuple(items)


def swatch(letters: str, x: float, y: float) -> tuple[Item, ...]:
    """Return a short piece of a wire of that colour, from (x, y) to the right."""
    spec = wire_colour(letters)
    end = x + _SWATCH_MM - 1.8
    return (
        Path(((x, y - 1.0), (end, y - 1.0), (end, y + 1.0), (x, y + 1.0)), Pen("ink", 0.2), spec.rgb, True),
        *stripe_items(((x + 0.2, y), (end - 0.2, y)), spec, 0.9, 1.3),
    )


def flag(rank: Rank, x: float, y: float) -> tuple[Item, ...]:
    """Return the flag of a finding: a circle for a note, a diamond for weak, a triangle for danger."""
    r = 1.5
    if rank == Rank.NOTE:
        return (Disc((x, y), r * 0.85, r * 0.85, NO_PEN, "note"),)
    if rank == Rank.WEAK:
        return (Path(((x, y - r), (x + r, y), (x, y + r), (x - r, y)), NO_PEN, "weak", closed=True),)
    return (Path(((x, y - r), (x + r, y + r * 0.8), (x - r, y + r * 0.8)), NO_PEN, "danger", closed=True),)


def _lead(cell: Cell) -> float:
    return _SWATCH_MM if cell.swatch else 4.5 if cell.rank is not None else cell.indent


def _x(column: Column, left: float, right: float) -> float:
    if column.align == "right":
        return right - PAD_MM
    return (left + right) / 2 if column.align == "centre" else left + PAD_MM
