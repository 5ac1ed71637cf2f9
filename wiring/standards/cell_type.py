"""What one battery type is: voltage over charge, capacity, two-well constants, inner resistance, spread.

Charge sits in an available well (share ``c``) and a bound well that refills it at ``k_per_h``; the
open-circuit voltage falls with the depth x of the available well; the resistance is
``r0_ohm * (1 + r1 * x)``.
"""

import math
from collections.abc import Iterator, Mapping
from itertools import pairwise
from typing import Any

import msgspec

MOST_CELLS = 24
MOST_FADE = 0.1  # of the charge, for one charge


class BadCell(ValueError):  # noqa: N818 - a finding about data, named for what it says
    """A battery type that cannot be used: why in plain words, and under which key of its row."""

    def __init__(self, reason: str, key: str = "") -> None:
        super().__init__(reason)
        self.reason = reason
        self.key = key


class Grades(msgspec.Struct, frozen=True, forbid_unknown_fields=True):
    """Factors on capacity for a poor, an ordinary and the best cell, and on resistance for a poor one."""

    low: float = 0.9
    typical: float = 1.0
    high: float = 1.1
    low_ohm: float = 1.0


class CellType(msgspec.Struct, frozen=True, forbid_unknown_fields=True):
    """One battery type as sold; volts are per cell, everything else for the whole battery."""

    key: str
    title: str
    chemistry: str
    cell_v: float  # printed on it, per cell
    capacity_ah: float  # charge in both wells of a fresh one
    rated_ah: float  # capacity as printed on it that goes with `capacity_ah`; both and 1/r0 scale together
    c: float  # share of the charge that is available at once
    k_per_h: float  # how fast the bound charge follows
    r0_ohm: float
    r1: float
    emf_table: tuple[tuple[float, float], ...]  # (depth of the available well, volts per cell)
    floor_v: float  # per cell: empty, or where a rechargeable must be taken off
    shelf_per_year: float  # share of its charge it loses in a year on the shelf at 20 °C
    source: str
    cells_in_series: int = 1
    rechargeable: bool = False
    grades: Grades = Grades()
    ageing_ohm_per_year: float = 0.0  # growth of r0 a year on the shelf
    warmth: tuple[tuple[float, float, float, float], ...] = ((20.0, 1.0, 1.0, 1.0),)
    # °C, then factors on capacity, resistance and k
    charges: tuple[tuple[float, float], ...] = ()  # (share taken out each time, charges it stands)
    fade: tuple[float, float] = (0.0, 0.0)  # least and most of its charge that a full charge costs for good
    measured_to_a: float = 0.0  # heaviest current of the tests it was fitted to; 0 = not known
    size_mm: tuple[float, float, float] = (0.0, 0.0, 0.0)

    @property
    def nominal_v(self) -> float:
        """Volts printed on it."""
        return self.cells_in_series * self.cell_v

    @property
    def fresh_v(self) -> float:
        """Open-circuit volts when fresh or fully charged."""
        return self.cells_in_series * self.emf_table[0][1]


_POSITIVE = ("cell_v", "capacity_ah", "rated_ah", "k_per_h", "r0_ohm", "floor_v", "cells_in_series")
_NOT_NEGATIVE = ("r1", "shelf_per_year", "ageing_ohm_per_year", "measured_to_a")


def cell_of(row: Mapping[str, Any]) -> CellType:
    """Return the battery type of a row of a data file; BadCell says what is wrong with it."""
    try:
        cell = msgspec.convert(dict(row), CellType)
    except msgspec.ValidationError as error:
        raise _worded(str(error)) from None
    for fault, key in _faults(cell):
        raise BadCell(fault, key)
    return cell


def _worded(words: str) -> BadCell:
    if "unknown field" in words:
        key = words.split("`")[1]
        return BadCell(f"there is nothing called “{key[:40]}” in a battery type; check its spelling", key)
    if "missing required field" in words:
        key = words.split("`")[1]
        return BadCell(f"“{key}” is missing")
    key = words.split("$.")[-1].strip("`").split("[")[0] if "$." in words else ""
    return BadCell(f"“{key}” is not what belongs there" if key else "a value is not what belongs there", key)


def _faults(cell: CellType) -> Iterator[tuple[str, str]]:
    for key in _POSITIVE:
        value = getattr(cell, key)
        if not (math.isfinite(value) and value > 0):
            yield f"“{key}” must be more than nothing", key
    for key in _NOT_NEGATIVE:
        value = getattr(cell, key)
        if not (math.isfinite(value) and value >= 0):
            yield f"“{key}” must be nothing or more", key
    if not 0 < cell.c < 1:
        yield "“c” is a share and must lie between 0 and 1", "c"
    if cell.cells_in_series > MOST_CELLS:
        yield f"“cells_in_series” is more than {MOST_CELLS}, which no such battery has", "cells_in_series"
    if not (cell.key and cell.title and cell.chemistry and cell.source):
        yield "key, title, chemistry and source must not be empty", "key"
    yield from _table_faults(cell)


def _table_faults(cell: CellType) -> Iterator[tuple[str, str]]:
    table = cell.emf_table
    if len(table) < 2 or table[0][0] != 0 or table[-1][0] <= 1 or table[-1][1] != 0:
        yield (
            "“emf_table” must begin at depth 0 and end beyond depth 1 at 0 V, as [1.02, 0] does",
            "emf_table",
        )
    elif any(a[0] >= b[0] or a[1] < b[1] for a, b in pairwise(table)):
        yield "in “emf_table” the depths must rise and the volts must not", "emf_table"
    elif not cell.floor_v < table[0][1]:
        yield "“floor_v” must lie below the volts of a fresh cell", "floor_v"
    grades = cell.grades
    if not (0 < grades.low <= grades.typical <= grades.high and grades.low_ohm > 0):
        yield "“grades” must not fall from low over typical to high, nor be nothing", "grades"
    if not 0 <= cell.fade[0] <= cell.fade[1] < MOST_FADE:
        yield "“fade” is two shares, the smaller first, that one charge costs for good", "fade"
    if not cell.warmth or any(a[0] >= b[0] for a, b in pairwise(cell.warmth)):
        yield "in “warmth” the temperatures must rise", "warmth"
    elif any(not (math.isfinite(f) and f > 0) for row in cell.warmth for f in row[1:]):
        yield "the factors in “warmth” must be more than nothing", "warmth"
    if any(not (0 < share <= 1 and count > 0) for share, count in cell.charges):
        yield (
            "in “charges” the shares must lie between 0 and 1 and the counts be more than nothing",
            "charges",
        )
