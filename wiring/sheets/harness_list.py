"""What runs together: the wires of each wireway, how full its holes get, and the drill that leaves room."""

from collections.abc import Mapping
from typing import NamedTuple

from wiring.catalogue.kind import Kind
from wiring.plan.plan import Plan
from wiring.quantities.wording import worded
from wiring.routing.bundles import bundles
from wiring.sheets.blocks import Block, heading, paragraph
from wiring.sheets.designation_runs import run_words
from wiring.sheets.drill_words import drill_words
from wiring.sheets.table import Cell, Column, table


class HarnessRow(NamedTuple):
    """The bundle in one wireway."""

    name: str
    labels: tuple[str, ...]
    fill: float  # share of the narrowest hole
    allowed: float
    hole_mm: float  # as it is
    needed_mm: float  # the drill that leaves room

    @property
    def fits(self) -> bool:
        """Whether the hole is large enough."""
        return self.fill <= self.allowed


def harness_rows(plan: Plan, kinds: Mapping[str, Kind]) -> tuple[HarnessRow, ...]:
    """Return a row for each wireway that holds wires, in plan order."""
    return tuple(
        HarnessRow(
            b.wireway.name,
            tuple(plan.wires[w].label for w in b.wires),
            b.fill,
            b.allowed,
            b.wireway.hole_mm,
            b.hole_mm,
        )
        for b in bundles(plan)
    )


def harness_blocks(plan: Plan, kinds: Mapping[str, Kind], width: float) -> tuple[Block, ...]:
    """Return the list as blocks for the sheets; nothing for a plan without a wire in a wireway."""
    rows = harness_rows(plan, kinds)
    if not rows:
        return ()
    us = plan.habits.units == "us"
    columns = (
        Column("", 6, "centre"),
        Column("Wireway", 30, weight="semibold"),
        Column("Wires", 13, "right", "bold"),
        Column("Which", 59),
        Column("Hole filled", 22, "right"),
        Column("Hole", 18, "right"),
        Column("Drill", 24, "right"),
    )
    cells = [
        (
            Cell(tick=True),
            r.name,
            str(len(r.labels)),
            run_words(r.labels),
            worded(r.fill, "fraction"),
            f"{r.hole_mm:g} mm",
            "large enough" if r.fits else Cell(drill_words(r.needed_mm, us=us), "bold"),
        )
        for r in rows
    ]
    return (
        heading("Harness list", width, anchor="harness"),
        *paragraph(
            "Lay these wires together before they go in, tie them every hand's breadth, and label both ends "
            "first. Two fifths of a hole may be filled, for one or two wires half of it or a third.",
            width,
            leads=True,
        ),
        *table(columns, cells, width),
    )
