"""Every resistor by value, with its colour bands: those of their own, and those built onto a light's lead."""

from collections.abc import Mapping
from typing import NamedTuple

from wiring.catalogue.kind import Kind
from wiring.plan.plan import Plan
from wiring.quantities.wording import worded
from wiring.sheets.blocks import Block, heading, paragraph
from wiring.sheets.designation_runs import run_words
from wiring.sheets.table import Cell, Column, table
from wiring.standards.resistor_bands import bands

# By behaviour: the setting that holds the ohms. A light's own resistor comes on its lead.
_OHMS: Mapping[str, str] = {"resistor": "resistance", "led": "series_ohm", "strip": "series_ohm"}
TOLERANCE = 0.05  # common practice, no source: carbon-film resistors of the E24 series


class ResistorRow(NamedTuple):
    """Resistors of one value and rating: bands from the end they are read from, none where none say it."""

    ohms: float
    watts: float  # 0 where the resistor is built on
    built_on: bool
    designations: tuple[str, ...]
    bands: tuple[str, ...]


def resistor_rows(plan: Plan, kinds: Mapping[str, Kind]) -> tuple[ResistorRow, ...]:
    """Return a row for each value, loose resistors first, by ohms."""
    groups: dict[tuple[bool, float, float], list[str]] = {}
    for part in plan.parts.values():
        kind = kinds.get(part.kind)
        if kind is None or kind.behaviour not in _OHMS:
            continue
        values = kind.values(part.settings)
        ohms = float(values.get(_OHMS[kind.behaviour]) or 0.0)
        if ohms > 0.0:
            loose = kind.behaviour == "resistor"
            watts = float(values.get("rated_power") or 0.0) if loose else 0.0
            groups.setdefault((not loose, ohms, watts), []).append(f"-{part.designation}")
    return tuple(
        ResistorRow(ohms, watts, built_on, tuple(names), _bands(ohms))
        for (built_on, ohms, watts), names in sorted(groups.items())
    )


def resistor_blocks(plan: Plan, kinds: Mapping[str, Kind], width: float) -> tuple[Block, ...]:
    """Return the list as blocks for the sheets; nothing for a plan without a resistor."""
    rows = resistor_rows(plan, kinds)
    if not rows:
        return ()
    columns = (
        Column("", 6, "centre"),
        Column("Count", 13, "right", "bold"),
        Column("Value", 16, "right", "semibold"),
        Column("Rated", 22),
        Column("Bands", 20),
        Column("Read from that end", 39),
        Column("Where", 56),
    )
    cells = [
        (
            Cell(tick=True),
            str(len(r.designations)),
            worded(r.ohms, "resistance"),
            "on the lead" if r.built_on else worded(r.watts, "power") if r.watts else "",
            Cell(bands=r.bands),
            ", ".join(r.bands) if r.bands else "no bands say this value: measure it",
            run_words(r.designations),
        )
        for r in rows
    ]
    return (
        heading("Resistor list", width, anchor="resistors"),
        *paragraph(
            "Bands of four-band resistors of 5 %, the gold band last; a value with three figures has five. "
            "Read in daylight: red, brown and orange look alike under a lamp. If in doubt, measure before "
            "you solder. “On the lead” is what a light made for its voltage already brings along.",
            width,
            leads=True,
        ),
        *table(columns, cells, width),
    )


def _bands(ohms: float) -> tuple[str, ...]:
    try:
        return bands(ohms, TOLERANCE).colours
    except ValueError:
        return ()
