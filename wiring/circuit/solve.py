"""A plan in one set of positions, solved."""

from collections.abc import Mapping

from wiring.catalogue.kind import Kind
from wiring.circuit.figures import Figures
from wiring.circuit.gathering import figures_of
from wiring.circuit.states import settle
from wiring.plan.plan import Plan
from wiring.plan.positions import Positions

Start = Figures  # of the same or a like plan, solved before


def solve(plan: Plan, kinds: Mapping[str, Kind], positions: Positions, start: Start | None = None) -> Figures:
    """Return what every part, wire and supply of the plan reads; never raises for anything a person can draw.

    Volts, amperes, watts; RMS where AC feeds. Parts of a circuit for which no steady state is found have no
    figures, and a Problem names them. `start` only makes it quicker.
    """
    settled = settle(plan, kinds, positions, start.terminals if start is not None else None)
    return figures_of(settled)
