"""What to buy and unpack: parts of one kind and the same values in one row, with spares."""

import math
from collections.abc import Mapping
from typing import NamedTuple

from wiring.catalogue.kind import Kind
from wiring.plan.part import Part
from wiring.plan.plan import Plan
from wiring.sheets.blocks import Block, heading, paragraph
from wiring.sheets.designation_runs import run_words
from wiring.sheets.part_prices import cost_of, cost_words, money, price_each
from wiring.sheets.table import Cell, Column, table
from wiring.sheets.value_words import value_words

# Spares beside the list, by behaviour: share of the count, and the least number. Common practice, no source.
_SPARES: Mapping[str, tuple[float, int]] = {
    "led": (0.1, 1),
    "filament": (0.1, 2),
    "resistor": (0.1, 1),
    "diode": (0.1, 1),
    "fuse": (0.5, 3),
}


class PartRow(NamedTuple):
    """Parts that are bought alike."""

    title: str
    values: str
    pieces: int
    spares: int
    designations: tuple[str, ...]
    each: float | None = None  # the price of one, where the builder gave it

    @property
    def to_buy(self) -> int:
        """Pieces with their spares."""
        return self.pieces + self.spares


def part_rows(plan: Plan, kinds: Mapping[str, Kind]) -> tuple[PartRow, ...]:
    """Return one row for each kind and set of values, in the order of the catalogue."""
    groups: dict[tuple[str, str], list[Part]] = {}
    for part in plan.parts.values():
        kind = kinds.get(part.kind)
        values = value_words(kind, part, plan.habits.units) if kind is not None else ""
        groups.setdefault((part.kind, values), []).append(part)
    order = {key: i for i, key in enumerate(kinds)}
    rows = []
    for (key, values), parts in sorted(groups.items(), key=lambda g: (order.get(g[0][0], len(order)), g[0])):
        kind = kinds.get(key)
        share, least = _SPARES.get(kind.behaviour, (0.0, 0)) if kind is not None else (0.0, 0)
        rows.append(
            PartRow(
                kind.title if kind is not None else f"unknown kind “{key}”",
                values,
                len(parts),
                max(least, math.ceil(share * len(parts))) if share else 0,
                tuple(f"-{p.designation}" for p in parts),
                price_each(plan, kind, parts[0]),
            )
        )
    return tuple(rows)


def sort_words(row: PartRow) -> str:
    """Return what parts of one row are, as each of them is remembered once it was printed."""
    return ", ".join(s for s in (row.title, row.values) if s)


def part_blocks(plan: Plan, kinds: Mapping[str, Kind], width: float) -> tuple[Block, ...]:
    """Return the list as blocks for the sheets."""
    rows = part_rows(plan, kinds)
    cost = cost_of([(r.to_buy, r.each) for r in rows])
    currency = plan.habits.currency
    unit = f" {currency}" if currency else ""
    priced: tuple[Column, ...] = ()
    if cost.priced:
        priced = (Column(f"Each{unit}", 17, "right"), Column(f"Sum{unit}", 19, "right"))
    columns = (
        Column("", 6, "centre"),
        Column("Count", 13, "right", "bold"),
        Column("Spare", 13, "right"),
        Column("Part", 42 - 8 * bool(priced), weight="semibold"),
        Column("Values", 36 - 12 * bool(priced)),
        Column("Designations", 62 - 16 * bool(priced)),
        *priced,
    )
    cells = [
        (
            Cell(tick=True, about=sort_words(r)),
            str(r.pieces),
            f"+{r.spares}" if r.spares else "",
            r.title,
            r.values,
            run_words(r.designations),
            *(_price_cells(r) if priced else ()),
        )
        for r in rows
    ]
    says = (
        f"{sum(r.pieces for r in rows)} parts of {len(rows)} sorts. Wire stands in the cut list. "
        f"Spares are for what is lost or burnt while building. {cost_words(cost, currency)}"
    )
    return (
        heading("Parts list", width, anchor="parts"),
        *paragraph(says, width, leads=True),
        *table(columns, cells, width),
    )


def _price_cells(row: PartRow) -> tuple[str, str]:
    return ("", "") if row.each is None else (money(row.each), money(row.each * row.to_buy))
