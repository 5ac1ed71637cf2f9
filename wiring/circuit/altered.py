"""A plan at rest, and with some of its branches made other than they are, to ask what would flow then."""

from collections.abc import Mapping, Sequence
from itertools import repeat
from typing import NamedTuple

import numpy as np

from wiring.catalogue.kind import Kind
from wiring.circuit.alternating import read_alternating
from wiring.circuit.assembly import Assembly, assemble
from wiring.circuit.branches.filament import FILAMENT
from wiring.circuit.branches.laws import LAW_NUMBER, WIDTH
from wiring.circuit.cold_lamps import cold_lamps
from wiring.circuit.direct import read_direct
from wiring.circuit.islands import Islands, find_islands
from wiring.circuit.linear import Floats, Ints
from wiring.circuit.reading import Reading, resting
from wiring.circuit.states import settle
from wiring.circuit.steady import read_steady
from wiring.plan.names import PartId, WireId
from wiring.plan.plan import Plan
from wiring.plan.positions import Positions

IDEAL_OHMS = 1e-6
CUT_OHMS = 1e12
SOURCE, RESISTOR, FILAMENT_LAW = (LAW_NUMBER[name] for name in ("source", "resistor", "filament"))


class Branches(NamedTuple):
    """Readings of a plan branch by branch, where figures tell too little; RMS on AC."""

    assembly: Assembly
    islands: Islands
    reading: Reading
    positions: Positions  # relays as their coils have thrown them, where that was asked

    def amps(self, part: PartId) -> list[float]:
        """Return the current of each branch of a part, first terminal to second; nought if unknown."""
        return self._of(self.reading.amps, part)

    def first_amps(self, parts: Sequence[PartId]) -> list[float]:
        """Return the current of the first branch of parts; nought where there is none, or it is unknown."""
        table, reading = self.assembly.table, self.reading
        rows = np.fromiter(map(table.rows.get, parts, repeat(-1)), dtype=np.intp, count=len(parts))
        first = np.where((rows >= 0) & (table.branches[rows] > 0), table.first_branch[rows], -1)
        amps, failed = np.append(reading.amps, 0.0)[first], np.append(reading.failed, False)[first]
        found: list[float] = np.where(failed, 0.0, amps).tolist()
        return found

    def volts(self, part: PartId) -> list[float]:
        """Return the volts of each branch of a part, first terminal over second; nought if unknown."""
        return self._of(self.reading.volts, part)

    def wire_ohms(self) -> dict[WireId, float]:
        """Return the resistance of every wire that can be calculated."""
        return {wire: float(self.assembly.values[n, 0]) for wire, n in self.assembly.wires.items()}

    def alternating(self, part: PartId) -> bool:
        """Whether AC reaches a part."""
        span = self.assembly.spans.get(part, range(0))
        return any(
            self.islands.of_node[self.assembly.a[b]] >= 0
            and self.islands.fed[int(self.islands.of_node[self.assembly.a[b]])].alternating
            for b in span
        )

    def one_circuit(self, one: PartId, other: PartId) -> bool:
        """Whether current can get from one part to another as the switches stand."""
        spans = (self.assembly.spans.get(part, range(0)) for part in (one, other))
        islands = [int(self.islands.of_node[self.assembly.a[span[0]]]) for span in spans if span]
        return len(islands) == 2 and islands[0] == islands[1] >= 0

    def source(self, part: PartId) -> tuple[float, float, float]:
        """Return a supply's EMF (RMS on AC), its ohms, and what its limit leaves beside what it gives now."""
        span = self.assembly.spans.get(part, range(0))
        if not span:
            return 0.0, 0.0, 0.0
        emf, ohms, limit, _ = (float(v) for v in self.assembly.values[span[0], :4])
        if self.assembly.alternating[span[0]]:
            emf /= float(np.sqrt(2.0))
        return emf, ohms, max(limit - abs(float(self.reading.amps[span[0]])), 0.0)

    def _of(self, values: Floats, part: PartId) -> list[float]:
        span = self.assembly.spans.get(part, range(0))
        return [0.0 if self.reading.failed[b] else float(values[b]) for b in span]


def at_rest(plan: Plan, kinds: Mapping[str, Kind], positions: Positions) -> Branches:
    """Return the branch readings of a plan as it is."""
    settled = settle(plan, kinds, positions, None)
    return Branches(settled.assembly, settled.islands, settled.reading, settled.positions)


def as_source(
    plan: Plan,
    kinds: Mapping[str, Kind],
    positions: Positions,
    part: PartId,
    emfs_v: tuple[float, ...],
    ohms: float = 0.0,
) -> tuple[Branches, ...]:
    """Return what flows when a part's first branch is a source without a limit, of each EMF in turn.

    That branch is a supply's own, or a discharge unit's capacitor; the way the unit is charged is cut, so all
    that flows comes from the capacitor. Relays stand as `positions` say. KeyError if there is no such part.
    """
    assembly = assemble(plan, kinds, positions)
    first, *others = assembly.spans[part]
    laws, values = assembly.laws.copy(), assembly.values.copy()
    laws[first] = SOURCE
    values[others, 0] = CUT_OHMS
    assembly = _with(assembly, laws, values)
    islands = find_islands(assembly)
    only = frozenset((int(islands.of_node[assembly.a[first]]),))
    found = []
    for emf_v in emfs_v:
        values = values.copy()
        values[first] = (emf_v, max(ohms, IDEAL_OHMS), np.inf, 1.0, *([0.0] * (WIDTH - 4)))
        found.append(_read(_with(assembly, laws, values), islands, only, positions))
    return tuple(found)


def with_cold_lamps(plan: Plan, kinds: Mapping[str, Kind], positions: Positions) -> Branches:
    """Return what flows at the moment of switching on: filaments cold, supplies that know no limit.

    Circuits without filaments are left out and read nought.

    Cold filaments are resistors, so AC is solved once, as if its RMS volts were DC; behind a lone diode that
    reads the half wave it lets through, or nothing.
    """
    assembly = assemble(plan, kinds, positions)
    islands = find_islands(assembly)
    question = "cold readings", islands, assembly.laws, assembly.values
    cold, still, reading = assembly.kept.of(question, lambda: _with_cold_lamps(assembly, islands))
    return Branches(cold, still, reading, positions)


def _with_cold_lamps(assembly: Assembly, islands: Islands) -> tuple[Assembly, Islands, Reading]:
    lamps = np.flatnonzero(assembly.laws == FILAMENT_LAW)
    laws, still = cold_lamps(assembly, islands)
    values = assembly.values.copy()
    values[lamps, 0] = 1.0 / FILAMENT.current(np.zeros(len(lamps)), values[lamps].T)[1]
    values[assembly.sources, 2] = np.inf
    values[assembly.alternating, 0] /= np.sqrt(2.0)
    cold = assembly._replace(laws=laws, values=values, alternating=np.zeros_like(assembly.alternating))
    reading = resting(cold)
    read_direct(cold, still, values, reading, None)
    return cold, still, reading


def _with(assembly: Assembly, laws: Ints, values: Floats) -> Assembly:
    return assembly._replace(laws=laws, values=values, sources=np.flatnonzero(laws == SOURCE))


def _read(assembly: Assembly, islands: Islands, only: frozenset[int], positions: Positions) -> Branches:
    """Solve some of the islands."""
    reading = resting(assembly)
    for place, island in enumerate(islands.fed):
        if place not in only:
            continue
        if island.alternating:
            read_alternating(assembly, island, assembly.values, reading)
        else:
            read_steady(assembly, island, assembly.values, reading, None)
    return Branches(assembly, islands, reading, positions)
