"""What wire to buy and cut: the lengths of each size and colour, with their totals."""

from collections.abc import Mapping, Sequence
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

# Lengths that hook-up wire is sold in, metres. Common practice, no source.
SPOOLS_M = {"metric": (5.0, 10.0, 25.0, 100.0), "us": (7.62, 15.24, 30.48)}  # 25, 50 and 100 ft


class CutRow(NamedTuple):
    """All wires of one size and colour."""

    size: str
    solid: bool
    colour: str
    pieces: tuple[tuple[str, float], ...]  # label and metres, longest first
    total_m: float
    buy_m: float


def cut_rows(
    plan: Plan, kinds: Mapping[str, Kind], wires: Sequence[BenchRow] | None = None
) -> tuple[CutRow, ...]:
    """Return one row for each size and colour; totals are the sums of the bench list's lengths."""
    groups: dict[tuple[str, bool, str], list[BenchRow]] = {}
    for row in bench_rows(plan, kinds) if wires is None else wires:
        groups.setdefault((row.size, row.solid, row.colour), []).append(row)
    found = []
    for (size, solid, colour), rows in sorted(groups.items()):
        pieces = tuple((r.label, r.length_m) for r in sorted(rows, key=lambda r: -r.length_m))
        total = sum(length for _, length in pieces)
        found.append(
            CutRow(size, solid, colour, pieces, total, rounded_up_m(total * (1 + SPARE), plan.habits.units))
        )
    return tuple(found)


def spools(buy_m: float, units: str) -> tuple[tuple[int, float], ...]:
    """Return how many spools of which length in metres cover a length, the longest spools first."""
    lengths = SPOOLS_M["us" if units == "us" else "metric"]
    smallest_fit = next((m for m in lengths if m >= buy_m - 1e-9), None)
    if smallest_fit is not None:
        return ((1, smallest_fit),)
    longest = lengths[-1]
    count = int(buy_m // longest)
    rest = buy_m - count * longest
    return ((count, longest), *(spools(rest, units) if rest > 1e-9 else ()))


def spool_words(buy_m: float, units: str) -> str:
    """Return spools as they are bought: ``2 × 100 m, 25 m``."""
    said = []
    for count, length_m in spools(buy_m, units):
        length = f"{length_m / 0.3048:.0f} ft" if units == "us" else f"{length_m:g} m"
        said.append(f"{count} × {length}" if count > 1 else length)
    return ", ".join(said)


def _pieces_words(row: CutRow, units: str) -> str:
    """Return the pieces with those of one length together: ``2 × 0.69 m: W8, W60; 0.66 m: W9``."""
    said = []
    for length, group in groupby(row.pieces, key=lambda piece: length_words(piece[1], units)):
        labels = [label for label, _ in group]
        count = f"{len(labels)} × " if len(labels) > 1 else ""
        said.append(f"{count}{length}: {run_words(labels)}")
    return "; ".join(said)


def cut_blocks(
    plan: Plan, kinds: Mapping[str, Kind], width: float, wires: Sequence[BenchRow] | None = None
) -> tuple[Block, ...]:
    """Return the list, or that of some rows of the bench list, as blocks for the sheets."""
    rows, units = cut_rows(plan, kinds, wires), plan.habits.units
    columns = (
        Column("", 6, "centre"),
        Column("Size", 18, weight="semibold", again=True),
        Column("Colour", 22, again=True),
        Column("Pieces", 13, "right"),
        Column("Total", 16, "right", "semibold"),
        Column("Buy", 15, "right"),
        Column("Spools", 16, "right"),
        Column("Cut these, longest first", 78),
    )
    cells = [
        (
            Cell(tick=True),
            f"{r.size} solid" if r.solid else r.size,
            Cell(r.colour, swatch=r.colour),
            str(len(r.pieces)),
            length_words(r.total_m, units),
            length_words(r.buy_m, units),
            spool_words(r.buy_m, units),
            _pieces_words(r, units),
        )
        for r in rows
    ]
    total = length_words(sum(r.total_m for r in rows), units)
    return (
        heading("Cut list", width, anchor="cut"),
        *paragraph(
            f"{sum(len(r.pieces) for r in rows)} pieces of wire, {total} in all. "
            "“Buy” is a tenth more, for what goes wrong; “Spools” covers it. Cut the longest first: "
            "a spoilt piece makes a shorter one.",
            width,
            leads=True,
        ),
        *table(columns, cells, width),
    )
