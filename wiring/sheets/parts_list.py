"""What to buy and unpack: parts of one kind and the same values in one row, with spares."""

import math
from collections.abc import Mapping
from typing import NamedTuple

from wiring.catalogue.kind import Kind, Setting, Value
from wiring.plan.part import Part
from wiring.plan.plan import Plan
from wiring.quantities.wording import worded
from wiring.sheets.blocks import Block, heading, paragraph
from wiring.sheets.designation_runs import run_words
from wiring.sheets.table import Cell, Column, table

# The settings a buyer must know, by behaviour; others show only where the user has set them.
_KEY_SETTINGS: Mapping[str, tuple[str, ...]] = {
    "resistor": ("resistance", "rated_power"),
    "led": ("forward_a", "series_ohm"),
    "strip": ("length",),
    "filament": ("rated_v", "rated_a"),
    "constant_current": ("set_a",),
    "stall_motor": ("rated_v",),
    "twin_coil": ("coil_ohm",),
    "discharge_unit": ("capacitance",),
    "servo": ("rated_v",),
    "relay": ("rated_v",),
    "switch": ("rated_a",),
    "supply_regulated": ("volts", "limit_a"),
    "converter": ("volts", "limit_a"),
    "supply_unregulated": ("rated_v", "rated_a"),
    "supply_ac": ("rated_v", "rated_a"),
    "battery": ("cell", "in_series", "in_parallel"),
    "fuse": ("rating_a", "speed"),
    "resettable_fuse": ("hold_a",),
    "diode": ("max_a",),
    "rectifier": ("max_a",),
}
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
            )
        )
    return tuple(rows)


def value_words(kind: Kind, part: Part, units: str = "metric") -> str:
    """Return the values that matter when buying a part: ``470 Ω, 250 mW``."""
    wanted = _KEY_SETTINGS.get(kind.behaviour, ())
    values = kind.values(part.settings)
    said = []
    for setting in kind.settings:
        if setting.name not in wanted and setting.name not in part.settings:
            continue
        text = setting_words(setting, values[setting.name], units)
        if not text or setting.name in ("fitted", "position"):
            continue
        said.append(
            text if setting.name in wanted and _speaks(setting) else f"{setting.title.lower()} {text}"
        )
    return ", ".join(said)


def setting_words(setting: Setting, value: Value, units: str) -> str:
    """Return one value in words; "" for an optional one that is not set."""
    if isinstance(value, str):
        return value
    if setting.quantity == "count":
        return f"{value:g}"
    if value == 0.0 and setting.name in ("series_ohm", "capacity", "limit_a"):
        return ""
    return worded(value, setting.quantity, units)


def part_blocks(plan: Plan, kinds: Mapping[str, Kind], width: float) -> tuple[Block, ...]:
    """Return the list as blocks for the sheets."""
    columns = (
        Column("", 6, "centre"),
        Column("Count", 13, "right", "bold"),
        Column("Spare", 13, "right"),
        Column("Part", 46, weight="semibold"),
        Column("Values", 44),
        Column("Designations", 50),
    )
    rows = part_rows(plan, kinds)
    cells = [
        (
            Cell(tick=True),
            str(r.pieces),
            f"+{r.spares}" if r.spares else "",
            r.title,
            r.values,
            run_words(r.designations),
        )
        for r in rows
    ]
    return (
        heading("Parts list", width, anchor="parts"),
        *paragraph(
            f"{sum(r.pieces for r in rows)} parts of {len(rows)} sorts. Wire stands in the cut list. "
            "Spares are for what is lost or burnt while building.",
            width,
        ),
        *table(columns, cells, width),
    )


def _speaks(setting: Setting) -> bool:
    """Return whether a value needs no title beside it: its unit or its own words say what it is."""
    return setting.quantity not in ("count",)
