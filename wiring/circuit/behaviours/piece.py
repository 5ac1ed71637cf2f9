"""What a part becomes: branches between its terminals, and terminals that are one node."""

import math
from collections.abc import Callable, Mapping
from typing import Any, NamedTuple

from wiring.catalogue.kind import Position
from wiring.circuit.branches.law import Branch
from wiring.circuit.figures import PartFigure

Values = Mapping[str, Any]
CONTACT_OHMS = 0.02  # a closed contact whose kind names none; common practice, no source


class UnusableError(ValueError):
    """A value no circuit can be built from; the message ends the sentence "-E4 cannot be calculated: ..."."""


class Piece(NamedTuple):
    """A compiled part."""

    branches: tuple[Branch, ...] = ()
    ties: tuple[tuple[str, str], ...] = ()


class Behaviour(NamedTuple):
    """How a part compiles, and what its solved branches mean to its owner."""

    compile: Callable[[Values, Position | None, tuple[str, ...]], Piece]
    read: Callable[[Values, str, PartFigure], PartFigure] = lambda values, position, figure: figure
    polarised: bool = False  # volts keep their sign, and the wrong way round is a fault
    feeds: bool = False  # a supply or battery


def positive(values: Values, name: str, least: float = 0.0) -> float:
    """Return a setting as a finite number above `least`; raises UnusableError."""
    value = finite(values, name)
    if value <= least:
        raise UnusableError(f"its {name.replace('_', ' ')} must be more than {least:g}.")
    return value


def not_negative(values: Values, name: str) -> float:
    """Return a setting as a finite number of nought or more; raises UnusableError."""
    value = finite(values, name)
    if value < 0:
        raise UnusableError(f"its {name.replace('_', ' ')} must not be negative.")
    return value


def finite(values: Values, name: str) -> float:
    """Return a setting as a finite number; raises UnusableError."""
    value = values.get(name)
    if not isinstance(value, int | float) or not math.isfinite(value):
        raise UnusableError(f"its {name.replace('_', ' ')} is not a number.")
    return float(value)


def count(values: Values, name: str) -> int:
    """Return a setting as a whole number of one or more; raises UnusableError."""
    value = finite(values, name)
    if value < 1 or value > 10_000:
        raise UnusableError(f"its {name.replace('_', ' ')} must be 1 or more.")
    return round(value)


def contacts(values: Values, position: Position | None) -> tuple[Branch, ...]:
    """Return a branch for every pair of terminals the position joins."""
    if position is None:
        return ()
    ohms = not_negative(values, "contact_ohm") if "contact_ohm" in values else CONTACT_OHMS
    return tuple(Branch("resistor", a, b, (ohms,), "contact") for a, b in position.closes)
