"""Supplies that change with what is asked of them: fold back, shut off, convert; gone round until still.

A folding supply's limit follows its own volts, a converter's input power what goes out of it. Each round sets
them by the last solve and solves the islands they lie in again.
"""

from collections.abc import Mapping
from typing import NamedTuple

import numpy as np

from wiring.circuit.all_islands import read_all
from wiring.circuit.alternating import Cycle, read_alternating
from wiring.circuit.behaviours.converter import INPUT, OUTPUT
from wiring.circuit.behaviours.feeding import FOLDED_SHARE, SHUT_OFF_OHMS
from wiring.circuit.branch_arrays import Assembly
from wiring.circuit.converting import Reads, Stand, next_stand
from wiring.circuit.islands import Island, Islands, find_islands
from wiring.circuit.linear import Floats
from wiring.circuit.reading import Reading, resting
from wiring.circuit.steady import read_steady
from wiring.plan.names import PartId, TerminalRef

MOST_ROUNDS = 60
FOLD_TOLERANCE = 1e-7  # of the limit
AT_LIMIT = 0.98  # of the limit: from here a supply is limiting


class Fed(NamedTuple):
    """Islands solved with their supplies at rest."""

    islands: Islands
    reading: Reading
    values: Floats  # of the branches, with supplies as they have come to stand
    shut_off: frozenset[PartId]
    limited: frozenset[PartId]
    broken_down: frozenset[PartId]  # converters whose input does not hold up under their load


class _Round:
    """What changes from one solve to the next."""

    def __init__(self, assembly: Assembly, reading: Reading, values: Floats) -> None:
        self.assembly, self.reading, self.values = assembly, reading, values
        self.shut: set[PartId] = set()
        self.converters: dict[PartId, Stand] = {}
        self.changed: set[int] = set()  # branches

    def set(self, branch: int, value: tuple[float, ...], changed: bool) -> None:
        self.values[branch, : len(value)] = value
        if changed:
            self.changed.add(branch)


def fed(assembly: Assembly, start: Mapping[TerminalRef, float] | None) -> Fed:
    """Solve every island of a plan, and again until its supplies stand as the solution says."""
    islands = find_islands(assembly)
    reading = resting(assembly)
    read_all(assembly, islands, assembly.values, reading, start)
    values = assembly.values.copy()
    now = _Round(assembly, reading, values)
    folding = _limited(assembly, reading, values)
    cycles: dict[int, Cycle | None] = {}  # of islands on AC, from the round before
    for _ in range(MOST_ROUNDS):
        now.changed.clear()
        for source in assembly.sources:
            converts = assembly.roles[source] == "output"
            if converts or not reading.failed[source]:
                _overload(now, int(source), assembly.owners[source] in folding)
        if not now.changed:
            break
        near = {int(islands.of_node[assembly.a[branch]]) for branch in now.changed}
        for place in near:
            reading.failed[islands.fed[place].branches] = False
            cycles[place] = _read(assembly, islands.fed[place], values, reading, cycles.get(place))
        folding |= _limited(assembly, reading, values)
    else:
        for branch in now.changed:
            if assembly.roles[branch] != "source":  # a folding supply near its end is near enough
                place = int(islands.of_node[assembly.a[branch]])
                reading.failed[islands.fed[place].branches] = True
    last = _limited(assembly, reading, values)
    broken = {part for part, stand in now.converters.items() if stand.broken}
    limited = {s for s in folding if assembly.parts[s].kind.behaviour != "converter" or s in last}
    return Fed(islands, reading, values, *map(frozenset, (now.shut, limited, broken)))


def _overload(now: _Round, source: int, limited: bool) -> None:
    owner = now.assembly.owners[source]
    compiled = now.assembly.parts[owner]
    if compiled.kind.behaviour == "converter":
        _convert(now, owner)
        return
    style = compiled.values.get("on_overload", "") if limited else ""
    if style == "shuts off" and owner not in now.shut:
        now.shut.add(owner)
        now.set(source, (0.0, SHUT_OFF_OHMS, np.inf, 1.0), True)
    elif style == "folds back":
        full = now.assembly.values[source]
        left = max(float(now.reading.volts[source]), 0.0) / full[0]
        folded = full[2] * (FOLDED_SHARE + (1.0 - FOLDED_SHARE) * min(left, 1.0))
        changed = abs(folded - now.values[source, 2]) > FOLD_TOLERANCE * full[2]
        now.set(source, (full[0], full[1], folded), changed)


def _convert(now: _Round, owner: PartId) -> None:
    """Set a converter's output by its input's volts, and its input's power by what goes out."""
    span, values = now.assembly.spans[owner], now.assembly.parts[owner].values
    output, into = span[OUTPUT], span[INPUT]
    amps = float(now.reading.amps[output])
    reads = Reads(
        float(now.reading.volts[into]), max(-float(now.reading.power[output]), 0.0), max(-amps, 0.0),
        bool(now.reading.failed[output]),
    )  # fmt: skip
    stood = now.converters.get(owner, Stand(float(now.values[into, 0]), float(now.values[output, 0])))
    stand, moved = next_stand(values, stood, reads)
    now.converters[owner] = stand
    if not moved:
        return
    if stand.off:
        now.set(output, (0.0, SHUT_OFF_OHMS, np.inf, 1.0), True)
    else:
        now.set(output, (stand.emf_v,), stand.emf_v != stood.emf_v)
    now.set(into, (stand.in_w,), True)


def _read(
    assembly: Assembly, island: Island, values: Floats, reading: Reading, near: Cycle | None
) -> Cycle | None:
    if island.alternating:
        return read_alternating(assembly, island, values, reading, near)
    read_steady(assembly, island, values, reading, None)
    return None


def _limited(assembly: Assembly, reading: Reading, values: Floats) -> set[PartId]:
    given = -reading.amps[assembly.sources]
    over = given >= AT_LIMIT * values[assembly.sources, 2]
    return {assembly.owners[source] for source in assembly.sources[over]}
