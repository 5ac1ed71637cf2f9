"""How volts and amperes of a part run over one cycle of the mains: ripple, mean and peaks."""

from collections.abc import Mapping
from typing import NamedTuple

import numpy as np

from wiring.catalogue.kind import Kind
from wiring.circuit.alternating import cycle
from wiring.circuit.linear import Floats
from wiring.circuit.states import settle
from wiring.plan.names import PartId
from wiring.plan.plan import Plan
from wiring.plan.positions import Positions


class Wave(NamedTuple):
    """One branch of a part at evenly spread moments of a cycle; amperes into its first terminal."""

    role: str
    volts: Floats
    amps: Floats

    @property
    def ripple_v(self) -> float:
        """From the least to the highest of the volts."""
        return float(np.ptp(self.volts))

    @property
    def mean_v(self) -> float:
        """The volts a DC meter shows."""
        return float(self.volts.mean())

    @property
    def mean_a(self) -> float:
        """The amperes a DC meter shows."""
        return float(self.amps.mean())

    @property
    def peak_a(self) -> float:
        """The most amperes, either way."""
        return float(np.abs(self.amps).max())


def waves(
    plan: Plan, kinds: Mapping[str, Kind], positions: Positions, part: PartId
) -> tuple[Wave, ...] | None:
    """Return the waves of a part's branches; None where no AC reaches it or nothing steady was found.

    Without capacitors it is half a cycle, from the least to the highest: the way back reads the same.

    KeyError if the plan has no such part.
    """
    settled = settle(plan, kinds, positions, None)
    span = settled.assembly.spans[part]
    place = int(settled.islands.of_node[settled.assembly.a[span[0]]]) if span else -1
    if place < 0 or not settled.islands.fed[place].alternating:
        return None
    island = settled.islands.fed[place]
    found = cycle(settled.assembly, island, settled.values)
    if found is None:
        return None
    columns = np.searchsorted(island.branches, span)
    roles = [settled.assembly.roles[branch] for branch in span]
    return tuple(Wave(r, found.volts[:, c], found.amps[:, c]) for r, c in zip(roles, columns, strict=True))
