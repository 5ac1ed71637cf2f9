"""What feeds: regulated, unregulated and AC supplies, and batteries, fresh."""

import math
from typing import NamedTuple

from wiring.catalogue.kind import Position
from wiring.circuit.behaviours.piece import (
    Behaviour,
    Piece,
    UnusableError,
    Values,
    count,
    not_negative,
    positive,
)
from wiring.circuit.branches.law import Branch
from wiring.standards.cells import CELLS

LEAST_SOURCE_OHMS = 1e-3  # no supply is stiffer at its terminals
SHUT_OFF_OHMS = 1e6
FOLDED_SHARE = (
    0.3  # of the limit that a folding supply still gives into a dead short; common practice, no source
)


class Rating(NamedTuple):
    """What is printed on a supply."""

    nominal_v: float
    rated_a: float


def _source(
    emf_v: float, ohms: float, limit_a: float, sinks: float, plus: str = "+", minus: str = "-"
) -> Piece:
    role = "alternating" if plus.startswith("~") else "source"
    return Piece(
        (Branch("source", plus, minus, (emf_v, max(ohms, LEAST_SOURCE_OHMS), limit_a, sinks), role),)
    )


def _regulated(values: Values, position: Position | None, terminals: tuple[str, ...]) -> Piece:
    return _source(positive(values, "volts"), not_negative(values, "ohms"), positive(values, "limit_a"), 0.0)


def _sagging(values: Values) -> tuple[float, float]:
    rated_v, open_v = positive(values, "rated_v"), positive(values, "open_v")
    if open_v < rated_v:
        raise UnusableError("open_v", "must not be less than its rated voltage")
    return open_v, (open_v - rated_v) / positive(values, "rated_a")


def _unregulated(values: Values, position: Position | None, terminals: tuple[str, ...]) -> Piece:
    return _source(*_sagging(values), math.inf, 0.0)


def _ac(values: Values, position: Position | None, terminals: tuple[str, ...]) -> Piece:
    open_v, ohms = _sagging(values)
    return _source(open_v * math.sqrt(2.0), ohms, math.inf, 1.0, "~1", "~2")


def fresh_battery(values: Values) -> tuple[float, float]:
    """Return EMF in volts and resistance in ohms of a fresh battery; raises UnusableError.

    A larger capacity than the type's usual one goes with a lower resistance, as more active area does.
    """
    cell = CELLS.get(str(values.get("cell")))
    if cell is None:
        raise UnusableError("cell", "is not in the list")
    series, parallel = count(values, "in_series"), count(values, "in_parallel")
    capacity_ah = not_negative(values, "capacity") if "capacity" in values else 0.0
    scale = cell.rated_ah / capacity_ah if capacity_ah > 0 else 1.0
    return cell.fresh_v * series, cell.r0_ohm * scale * series / parallel


def _battery(values: Values, position: Position | None, terminals: tuple[str, ...]) -> Piece:
    limit_a = not_negative(values, "limit_a") if "limit_a" in values else 0.0
    return _source(*fresh_battery(values), limit_a if limit_a > 0 else math.inf, 1.0)


def rating(behaviour: str, values: Values) -> Rating:
    """Return the nominal volts and the rated amperes of a supply or battery; infinite where none is known."""
    if behaviour in ("supply_regulated", "converter"):
        return Rating(positive(values, "volts"), positive(values, "limit_a"))
    if behaviour == "battery":
        cell = CELLS[str(values["cell"])]
        limit_a = values.get("limit_a", 0.0)
        return Rating(cell.nominal_v * count(values, "in_series"), limit_a if limit_a > 0 else math.inf)
    return Rating(positive(values, "rated_v"), positive(values, "rated_a"))


SUPPLY_REGULATED = Behaviour(_regulated, feeds=True)
SUPPLY_UNREGULATED = Behaviour(_unregulated, feeds=True)
SUPPLY_AC = Behaviour(_ac, feeds=True)
BATTERY = Behaviour(_battery, feeds=True)
