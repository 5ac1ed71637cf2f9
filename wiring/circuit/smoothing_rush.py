"""Smoothing capacitors at the moment of switching on, all empty and the mains at its peak; and when full.

An empty capacitor is a source of no volts behind its own ohms; filaments are cold and supplies know no limit.
Both ways round of the mains are tried, since a lone diode lets only one through. With the capacitors cut off
what is left tells the volts they fill to.
"""

from collections.abc import Mapping
from typing import NamedTuple

import numpy as np

from wiring.catalogue.kind import Kind
from wiring.circuit.altered import CUT_OHMS, Branches
from wiring.circuit.assembly import Assembly, assemble
from wiring.circuit.branches.filament import FILAMENT
from wiring.circuit.branches.laws import LAW_NUMBER
from wiring.circuit.islands import Islands, find_islands
from wiring.circuit.linear import Floats, Ints
from wiring.circuit.reading import resting
from wiring.circuit.steady import read_steady
from wiring.plan.names import PartId
from wiring.plan.plan import Plan
from wiring.plan.positions import Positions

SOURCE, RESISTOR, FILAMENT_LAW, CAPACITOR = (
    LAW_NUMBER[name] for name in ("source", "resistor", "filament", "capacitor")
)


class Store(NamedTuple):
    """A smoothing capacitor when all are empty, and the charge that fills it."""

    part: PartId
    amps: float
    charge_as: float


class Rush(NamedTuple):
    """The first moment: what every branch carries, and what each capacitor takes by itself, others full."""

    stores: tuple[Store, ...]
    all_empty: tuple[Branches, ...]  # either way round of the mains
    one_empty: tuple[tuple[Branches, ...], ...]  # per store

    def peak_a(self, part: PartId) -> float:
        """Return the most a part's first branch carries with all capacitors empty."""
        return _most(self.all_empty, part)

    def charge_as(self, part: PartId) -> float:
        """Return the charge that fills capacitors through a part's first branch, ampere seconds."""
        total = 0.0
        for store, empty in zip(self.stores, self.one_empty, strict=True):
            share = _most(empty, part) / store.amps if store.amps > 0.0 else 0.0
            total += min(share, 1.0) * store.charge_as
        return total

    def heat_a2s(self, part: PartId) -> float:
        """Return the integral of current squared while they fill: at most half of peak times charge.

        Filling C to U through R leaves at most half of C U² in R, whatever the source does below its peak; so
        the integral is at most C U² / (2 R), with peak U / R and charge C U.
        """
        return 0.5 * self.peak_a(part) * self.charge_as(part)


def rush_of_stores(plan: Plan, kinds: Mapping[str, Kind], positions: Positions) -> Rush | None:
    """Return the rush into the smoothing capacitors of a plan; None where it has none that anything feeds."""
    assembly = assemble(plan, kinds, positions)
    stores = np.flatnonzero(assembly.laws == CAPACITOR)
    if not len(stores):
        return None
    laws, values = assembly.laws.copy(), assembly.values.copy()
    lamps = np.flatnonzero(laws == FILAMENT_LAW)
    values[lamps, 0] = 1.0 / FILAMENT.current(np.zeros(len(lamps)), values[lamps].T)[1]
    values[laws == SOURCE, 2] = np.inf
    laws[lamps] = RESISTOR
    laws[stores] = SOURCE
    values[stores, :4] = np.stack(
        (np.zeros(len(stores)), values[stores, 1], np.full(len(stores), np.inf), np.ones(len(stores))), axis=1
    )
    still = np.zeros_like(assembly.alternating)
    changed = assembly._replace(
        laws=laws, values=values, alternating=still, sources=np.flatnonzero(laws == SOURCE)
    )
    islands = find_islands(changed)
    only = {int(n) for n in islands.of_node[assembly.a[stores]] if n >= 0}
    ways = [_turned(values, assembly, sign) for sign in (1.0, -1.0)]
    full = [_filled(changed, islands, only, way, stores, positions) for way in ways]
    empty = tuple(_read(changed, islands, only, way, positions) for way in ways)
    alone: list[tuple[Branches, ...]] = []
    found: list[Store] = []
    for place, branch in enumerate(stores.tolist()):
        owner = assembly.owners[branch]
        some = []
        for way, volts in zip(ways, full, strict=True):
            one = way.copy()
            one[stores, 0] = volts
            one[branch, 0] = 0.0
            some.append(_read(changed, islands, only, one, positions))
        alone.append(tuple(some))
        taken = [abs(float(read.reading.amps[branch])) for read in some]
        held_v = max(abs(float(volts[place])) for volts in full)
        found.append(Store(owner, max(taken), float(assembly.values[branch, 0]) * held_v))
    return Rush(tuple(found), empty, tuple(alone))


def _turned(values: Floats, assembly: Assembly, sign: float) -> Floats:
    turned = values.copy()
    turned[assembly.alternating, 0] *= sign
    return turned


def _filled(
    assembly: Assembly, islands: Islands, only: set[int], values: Floats, stores: Ints, positions: Positions
) -> Floats:
    """Return the volts the capacitors fill to: those there with nothing flowing into them."""
    cut, laws = values.copy(), assembly.laws.copy()
    laws[stores] = RESISTOR
    cut[stores, 0] = CUT_OHMS
    whole = assembly._replace(laws=laws, sources=np.flatnonzero(laws == SOURCE))
    read = _read(whole, find_islands(whole), None, cut, positions)
    return np.asarray(read.reading.volts[stores])


def _read(
    assembly: Assembly, islands: Islands, only: set[int] | None, values: Floats, positions: Positions
) -> Branches:
    reading = resting(assembly)
    for place in range(len(islands.fed)) if only is None else sorted(only):
        read_steady(assembly, islands.fed[place], values, reading, None)
    return Branches(assembly, islands, reading, positions)


def _most(ways: tuple[Branches, ...], part: PartId) -> float:
    return max((abs(way.amps(part)[0]) for way in ways if way.amps(part)), default=0.0)
