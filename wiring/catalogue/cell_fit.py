"""A battery type fitted to the discharges of its data sheet: capacity and resistance."""

import math
from collections.abc import Sequence
from itertools import pairwise

import msgspec

from wiring.standards.cell_type import BadCell, CellType
from wiring.standards.two_wells import Wells, drawn, full

STEPS = 240  # of one discharge, in published hours: its life is then right within half a per cent
LONGEST = 4.0  # times the published hours: no fit goes that far
CAPACITIES, RESISTANCES = (0.2, 5.0), (0.1, 10.0)  # bounds, of the type it starts from


class Discharge(msgspec.Struct, frozen=True, forbid_unknown_fields=True):
    """One line of a data sheet: hours of load until the whole battery falls to `to_v`."""

    hours: float
    to_v: float
    amps: float = 0.0  # constant current, or
    ohms: float = 0.0  # a resistor
    on_h: float = 0.0  # hours on at a time, 0 = without a break
    every_h: float = 24.0


def checked(rows: Sequence[Discharge], cell: CellType) -> None:
    """Raise BadCell for a line no battery of that voltage can have."""
    for number, row in enumerate(rows, 1):
        values = (row.hours, row.to_v, row.amps, row.ohms, row.on_h, row.every_h)
        if not all(math.isfinite(v) and v >= 0 for v in values) or row.hours <= 0:
            raise BadCell(f"discharge {number} needs hours of more than nothing", "discharges")
        if (row.amps > 0) == (row.ohms > 0):
            raise BadCell(f"discharge {number} needs either amps or ohms", "discharges")
        if not 0 < row.to_v < cell.fresh_v:
            raise BadCell(
                f"discharge {number} ends at {row.to_v:g} V, but this battery has at most {cell.fresh_v:g} V",
                "discharges",
            )
        if row.on_h > row.every_h:
            raise BadCell(f"discharge {number} is on for longer than its period", "discharges")


def lasted_h(cell: CellType, row: Discharge) -> float:
    """Return the hours of load the model gives for a line of a data sheet."""
    step_h = min(row.hours / STEPS, row.on_h / 2 if row.on_h > 0 else math.inf)
    wells, lit_h, session_h = full(cell.capacity_ah, cell.c), 0.0, 0.0
    above_v = math.inf
    while lit_h < LONGEST * row.hours:
        volts, amps = _worked(cell, row, wells)
        if volts <= row.to_v:
            share = (above_v - row.to_v) / (above_v - volts) if math.isfinite(above_v) else 0.0
            return max(lit_h - step_h * (1 - share), 0.0)
        wells = drawn(wells, amps, step_h, cell.c, cell.k_per_h)
        lit_h += step_h
        session_h += step_h
        above_v = volts
        if 0 < row.on_h <= session_h + 1e-9:
            wells = drawn(wells, 0.0, row.every_h - row.on_h, cell.c, cell.k_per_h)
            session_h = 0.0
    return lit_h


def _worked(cell: CellType, row: Discharge, wells: Wells) -> tuple[float, float]:
    depth = 1.0 - wells.available_ah / (cell.c * cell.capacity_ah)
    table = cell.emf_table
    emf_v = 0.0
    for (x0, v0), (x1, v1) in pairwise(table):
        if depth <= x1:
            emf_v = v0 + (v1 - v0) * max(depth - x0, 0.0) / (x1 - x0)
            break
    emf_v *= cell.cells_in_series
    inner = cell.r0_ohm * (1.0 + cell.r1 * max(depth, 0.0))
    amps = row.amps if row.amps > 0 else emf_v / (row.ohms + inner)
    return emf_v - inner * amps, amps


def fitted(cell: CellType, rows: Sequence[Discharge]) -> tuple[CellType, float]:
    """Return the type with the capacity (and, from two lines on, resistance) that meets the lines best.

    Beside it the largest relative error of the hours that remains.
    """
    import numpy as np
    from scipy.optimize import least_squares

    checked(rows, cell)
    names = ("capacity_ah", "r0_ohm")[: min(len(rows), 2)]
    start = [getattr(cell, name) for name in names]

    def made(factors: Sequence[float]) -> CellType:
        values = {n: float(v * math.exp(f)) for n, v, f in zip(names, start, factors, strict=True)}
        return msgspec.structs.replace(cell, **values)

    def errors(factors: Sequence[float]) -> list[float]:
        tried = made(factors)
        return [math.log(max(lasted_h(tried, row), 1e-6 * row.hours) / row.hours) for row in rows]

    bounds = np.log([CAPACITIES, RESISTANCES][: len(names)]).T
    found = least_squares(errors, [0.0] * len(names), bounds=(bounds[0], bounds[1]), diff_step=0.01)
    best = made([float(f) for f in found.x])
    return best, max(abs(math.expm1(error)) for error in errors([float(f) for f in found.x]))
