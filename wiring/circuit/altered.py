"""A plan solved with some of its branches made other than they are: to ask what would flow then."""

from collections.abc import Mapping
from typing import NamedTuple

import numpy as np

from wiring.catalogue.kind import Kind
from wiring.circuit.assembly import Assembly, assemble
from wiring.circuit.branches.filament import FILAMENT
from wiring.circuit.branches.laws import LAW_NUMBER, WIDTH
from wiring.circuit.islands import find_islands
from wiring.circuit.linear import Floats, Ints
from wiring.circuit.reading import Reading, resting
from wiring.circuit.steady import read_steady
from wiring.plan.names import PartId
from wiring.plan.plan import Plan
from wiring.plan.positions import Positions

IDEAL_OHMS = 1e-6
CUT_OHMS = 1e12
SOURCE, RESISTOR, FILAMENT_LAW = (LAW_NUMBER[name] for name in ("source", "resistor", "filament"))


class Altered(NamedTuple):
    """The branch readings of an altered plan. Volts and amperes on DC only; relays stay as they stand."""

    assembly: Assembly
    reading: Reading

    def amps(self, part: PartId) -> list[float]:
        """Return the current of each branch of a part, from its first terminal to its second; NaN if none."""
        span = self.assembly.spans.get(part, range(0))
        reading = self.reading
        return [float("nan") if reading.failed[b] else float(reading.amps[b]) for b in span]


def as_source(
    plan: Plan, kinds: Mapping[str, Kind], positions: Positions, unit: PartId, volts: tuple[float, ...]
) -> tuple[Altered, ...]:
    """Return what flows when a discharge unit's capacitor is an ideal source of each of the volts.

    The way it is charged is cut, so all that flows comes from it. KeyError if the plan has no such part.
    """
    assembly = assemble(plan, kinds, positions)
    store, *charge = assembly.spans[unit]
    laws, values = assembly.laws.copy(), assembly.values.copy()
    laws[store] = SOURCE
    values[charge, 0] = CUT_OHMS
    found = []
    for emf_v in volts:
        values = values.copy()
        values[store] = _padded(emf_v, IDEAL_OHMS, np.inf, 1.0)
        found.append(_read(_with(assembly, laws, values), frozenset((unit,))))
    return tuple(found)


def with_cold_lamps(plan: Plan, kinds: Mapping[str, Kind], positions: Positions) -> Altered:
    """Return what flows at the moment of switching on: filaments cold, supplies that know no limit."""
    assembly = assemble(plan, kinds, positions)
    laws, values = assembly.laws.copy(), assembly.values.copy()
    lamps = np.flatnonzero(laws == FILAMENT_LAW)
    slopes = FILAMENT.current(np.zeros(len(lamps)), values[lamps].T)[1]
    laws[lamps] = RESISTOR
    values[lamps, 0] = 1.0 / slopes
    values[laws == SOURCE, 2] = np.inf
    return _read(_with(assembly, laws, values), None)


def _padded(*values: float) -> tuple[float, ...]:
    return values + (0.0,) * (WIDTH - len(values))


def _with(assembly: Assembly, laws: Ints, values: Floats) -> Assembly:
    return assembly._replace(laws=laws, values=values, sources=np.flatnonzero(laws == SOURCE))


def _read(assembly: Assembly, only: frozenset[PartId] | None) -> Altered:
    """Solve the islands on DC, or only those that hold some of the parts; what is on AC counts as failed."""
    reading = resting(assembly)
    for island in find_islands(assembly).fed:
        if only is not None and not only & {assembly.owners[b] for b in island.branches}:
            continue
        if island.alternating:
            reading.failed[island.branches] = True
        else:
            read_steady(assembly, island, assembly.values, reading, None)
    return Altered(assembly, reading)
