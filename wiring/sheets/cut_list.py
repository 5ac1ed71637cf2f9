"""What wire to buy and cut: the lengths of each size and colour, with their totals."""

from collections.abc import Mapping
from itertools import groupby
from typing import NamedTuple

from wiring.catalogue.kind import Kind
from wiring.plan.plan import Plan
from wiring.sheets.bench_list import BenchRow, bench_rows
from wiring.sheets.blocks import Block, heading, paragraph
from wiring.sheets.designation_runs import run_words
from wiring.sheets.lengths import length_words, rounded_up_m
from wiring.sheets.table import Cell, Column, table

SPARE = 0.10  # common practice, no source: a tenth more than the list, for what goes wrong


class CutRow(NamedTuple):
    """All wires of one size and colour."""

    size: str
    solid: bool
    colour: str
    pieces: tuple[tuple[str, float], ...]  # label and metres, longest first
    total_m: float
    buy_m: float


def cut_rows(plan: Plan, kinds: Mapping[str, Kind]) -> tuple[CutRow, ...]:
    """Return one row for each size and colour; totals are the sums of the bench list's lengths."""
    groups: dict[tuple[str, bool, str], list[BenchRow]] = {}
    for row in bench_rows(plan, kinds):
        groups.setdefault((row.size, row.solid, row.colour), []).append(row)
    found = []
    for (size, solid, colour), rows in sorted(groups.items()):
        pieces = tuple((r.label, r.length_m) for r in sorted(rows, key=lambda r: -r.length_m))
        total = sum(length for _, length in pieces)
        found.append(
            CutRow(size, solid, colour, pieces, total, rounded_up_m(total * (1 + SPARE), plan.habits.units))
        )
    return tuple(found)


def _pieces_words(row: CutRow, units: str) -> str:
    """Return the pieces with those of one length together: ``2 × 0.69 m: W8, W60; 0.66 m: W9``."""
    said = []
    for length, group in groupby(row.pieces, key=lambda piece: length_words(piece[1], units)):
        labels = [label for label, _ in group]
        count = f"{len(labels)} × " if len(labels) > 1 else ""
        said.append(f"{count}{length}: {run_words(labels)}")
    return "; ".join(said)


def cut_blocks(plan: Plan, kinds: Mapping[str, Kind], width: float) -> tuple[Block, ...]:
    """Return the list as blocks for the sheets."""
    rows, units = cut_rows(plan, kinds), plan.habits.units
    columns = (
        Column("", 6, "centre"),
        Column("Size", 20, weight="semibold"),
        Column("Colour", 22),
        Column("Pieces", 15, "right"),
        Column("Total", 20, "right", "semibold"),
        Column("Buy", 20, "right"),
        Column("Cut these, longest first", 69),
    )
    cells = [
        (
            Cell(tick=True),
            f"{r.size} solid" if r.solid else r.size,
            Cell(r.colour, swatch=r.colour),
            str(len(r.pieces)),
            length_words(r.total_m, units),
            length_words(r.buy_m, units),
            _pieces_words(r, units),
        )
        for r in rows
    ]
    total = length_words(sum(r.total_m for r in rows), units)
    return (
        heading("Cut list", width, anchor="cut"),
        *paragraph(
            f"{sum(len(r.pieces) for r in rows)} pieces of wire, {total} in all. "
            "“Buy” is a tenth more, for what goes wrong. Cut the longest first: "
            "a spoilt piece makes a shorter one.",
            width,
        ),
        *table(columns, cells, width),
    )
