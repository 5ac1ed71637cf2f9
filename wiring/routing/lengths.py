"""The lengths to cut: one for every wire, and the sum for every sort of wire that is on a reel."""

from collections.abc import Mapping
from typing import NamedTuple

from wiring.catalogue.kind import Kind
from wiring.plan import lengths
from wiring.plan.names import WireId
from wiring.plan.plan import Plan
from wiring.plan.wire import Wire
from wiring.standards.colours import colour
from wiring.standards.conductors import read_size


class Cut(NamedTuple):
    """One wire's length: to cut, as drawn, and whether the user measured it."""

    cut_m: float
    drawn_m: float
    measured: bool


class Reel(NamedTuple):
    """A sort of wire that is bought together."""

    size: str
    colour: str
    solid: bool


class ReelTotal(NamedTuple):
    """How much of one sort a plan needs."""

    length_m: float
    wires: int


def cut_length_m(plan: Plan, kinds: Mapping[str, Kind], wire: Wire) -> float:
    """Return the metres to cut for a wire: what was measured, else as drawn and the spare at both ends."""
    return lengths.cut_length_m(plan, kinds, wire)


def cuts(plan: Plan, kinds: Mapping[str, Kind]) -> dict[WireId, Cut]:
    """Return the length of every wire, in plan order."""
    return {
        wire.id: Cut(
            cut_m=lengths.cut_length_m(plan, kinds, wire),
            drawn_m=lengths.drawn_length_m(plan, kinds, wire),
            measured=wire.length_m is not None,
        )
        for wire in plan.wires.values()
    }


def reel_totals(plan: Plan, kinds: Mapping[str, Kind]) -> dict[Reel, ReelTotal]:
    """Return how much of each sort of wire the plan needs, the sorts in order of size and colour."""
    totals: dict[Reel, ReelTotal] = {}
    for wire in plan.wires.values():
        reel = Reel(read_size(wire.size).label, colour(wire.colour).letters, wire.solid)
        so_far = totals.get(reel, ReelTotal(0.0, 0))
        length_m = so_far.length_m + lengths.cut_length_m(plan, kinds, wire)
        totals[reel] = ReelTotal(length_m, so_far.wires + 1)
    return dict(sorted(totals.items()))
