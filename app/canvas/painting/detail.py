"""How finely a picture is painted: the more parts and wires are in the view, the plainer."""

from collections.abc import Sequence
from typing import NamedTuple

from app.canvas.painting.label_painter import labels_most
from app.canvas.painting.part_painter import CROWD as PARTS_CROWD
from app.canvas.painting.wire_painter import CROWD, MANY, SIGNS_MOST
from wiring.plan.names import PartId, WireId


class Seen(NamedTuple):
    """The parts and wires of a picture, without those held out of it."""

    parts: Sequence[PartId]
    wires: Sequence[WireId]

    def among(self, lit: frozenset[str], *, wanted: bool) -> "Seen":
        """Return those that are looked at, or those that are not."""
        parts, wires = ([i for i in ids if (i in lit) is wanted] for ids in self)
        return Seen(parts, wires)


class Crowd(NamedTuple):
    """How many parts and wires are in the view, or reach into it with their words."""

    parts: int = 0
    wires: int = 0


class Crowds(NamedTuple):
    """Those that are looked at, and those that are dimmed beside them."""

    lit: Crowd = Crowd()
    dim: Crowd = Crowd()


def crowds(seen: Seen, lit: frozenset[str] | None) -> Crowds:
    """Return how many there are, with a focus of those in it and of the others."""
    if lit is None:
        return Crowds(Crowd(len(seen.parts), len(seen.wires)))
    return Crowds(*(Crowd(*map(len, seen.among(lit, wanted=wanted))) for wanted in (True, False)))


def detail(crowds: Crowds, scale: float) -> tuple[bool, ...]:
    """Return what is left out of a picture because of the crowd in it."""
    return tuple(
        count > most
        for crowd in crowds
        for count, mosts in (
            (crowd.parts, (labels_most(scale), PARTS_CROWD)),
            (crowd.wires, (SIGNS_MOST, MANY, CROWD)),
        )
        for most in mosts
    )
