"""The lengths to cut, one for every wire."""

from collections.abc import Mapping
from typing import NamedTuple

from wiring.catalogue.kind import Kind
from wiring.plan import lengths
from wiring.plan.names import WireId
from wiring.plan.plan import Plan
from wiring.plan.wire import Wire


class Cut(NamedTuple):
    """One wire's length: to cut, as drawn, and whether the user measured it."""

    cut_m: float
    drawn_m: float
    measured: bool


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
