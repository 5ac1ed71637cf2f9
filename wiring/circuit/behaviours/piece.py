"""What a part becomes: branches between its terminals, and terminals that are one node."""

import math
from collections.abc import Callable, Mapping
from typing import Any, NamedTuple

from wiring.catalogue.kind import Kind, Position
from wiring.circuit.branches.law import Branch
from wiring.circuit.figures import PartFigure

Values = Mapping[str, Any]
TINY, HUGE = 1e-9, 1e9  # no setting of any part lies outside
AMBIENT = "ambient_c"  # among a part's values: the temperature of the air, which is the plan's
ROOM_C = 20.0  # at which settings are stated
CONTACT_OHMS = 0.02  # a closed contact whose kind names none; common practice, no source


class UnusableError(ValueError):
    """A value no circuit can be built from: the name of the setting and what is wrong with it."""

    def __init__(self, setting: str, wrong: str) -> None:
        super().__init__(setting, wrong)
        self.setting, self.wrong = setting, wrong

    def worded(self, kind: Kind) -> str:
        """Return the end of the sentence "-E4 is left out: ...", with the setting's name as people see it."""
        titles = [s.title for s in kind.settings if s.name == self.setting and s.title]
        title = (titles or [self.setting])[0]
        if title[1:2].islower():
            title = title[0].lower() + title[1:]
        return f"its {title} {self.wrong}."


class Piece(NamedTuple):
    """A compiled part."""

    branches: tuple[Branch, ...] = ()
    ties: tuple[tuple[str, str], ...] = ()


class Shine(NamedTuple):
    """How light follows from current or volts: over those of rated light, to a power."""

    full: float  # amperes or volts at rated light
    of_volts: bool = False  # of either way round
    exponent: float = 1.0


class Behaviour(NamedTuple):
    """How a part compiles, and what its solved branches mean to its owner."""

    compile: Callable[[Values, Position | None, tuple[str, ...]], Piece]
    read: Callable[[Values, str, PartFigure], PartFigure] = lambda values, position, figure: figure
    polarised: bool = False  # volts keep their sign, and the wrong way round is a fault
    feeds: bool = False  # a supply or battery
    restates: bool = False  # what `read` tells as volts, current or watts is not that of the branch
    shine: Callable[[Values], Shine] | None = None  # of what gives light


def positive(values: Values, name: str, least: float = TINY) -> float:
    """Return a setting as a finite number above `least`; raises UnusableError."""
    value = finite(values, name)
    if value <= least:
        raise UnusableError(name, f"must be more than {least if least > TINY else 0:g}")
    return value


def not_negative(values: Values, name: str) -> float:
    """Return a setting as a finite number of nought or more; raises UnusableError."""
    value = finite(values, name)
    if value < 0:
        raise UnusableError(name, "must not be negative")
    return value


def finite(values: Values, name: str) -> float:
    """Return a setting as a finite number; raises UnusableError."""
    value = values.get(name)
    if not isinstance(value, int | float) or not math.isfinite(value):
        raise UnusableError(name, "is not a number")
    if abs(value) > HUGE:
        raise UnusableError(name, "is far too large")
    return float(value)


def count(values: Values, name: str) -> int:
    """Return a setting as a whole number of one or more; raises UnusableError."""
    value = finite(values, name)
    if value < 1 or value > 10_000:
        raise UnusableError(name, "must be between 1 and 10 000")
    return round(value)


def warmer_k(values: Values) -> float:
    """Return by how many kelvin the air is warmer than where settings are stated."""
    ambient_c = values.get(AMBIENT, ROOM_C)
    return float(ambient_c) - ROOM_C if isinstance(ambient_c, int | float) else 0.0


def contacts(values: Values, position: Position | None) -> tuple[Branch, ...]:
    """Return a branch for every pair of terminals the position joins."""
    if position is None:
        return ()
    ohms = not_negative(values, "contact_ohm") if "contact_ohm" in values else CONTACT_OHMS
    return tuple(Branch("resistor", a, b, (ohms,), "contact") for a, b in position.closes)
