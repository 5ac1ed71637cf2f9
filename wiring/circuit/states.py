"""What the circuit itself decides: relays pull in and let go, supplies give way; gone round until still."""

from collections.abc import Mapping
from types import MappingProxyType
from typing import NamedTuple

import numpy as np

from wiring.catalogue.kind import Kind
from wiring.circuit.assembly import Assembly, assemble
from wiring.circuit.behaviours.joining import lets_go_v
from wiring.circuit.behaviours.piece import Values
from wiring.circuit.islands import Islands
from wiring.circuit.linear import Floats
from wiring.circuit.reading import Reading
from wiring.circuit.supply_states import fed
from wiring.plan.names import PartId, TerminalRef
from wiring.plan.plan import Plan
from wiring.plan.positions import Positions

MOST_RELAY_ROUNDS = 24
OPERATED, RELEASED = "operated", "released"


class Settled(NamedTuple):
    """A plan whose relays and supplies have come to rest."""

    assembly: Assembly
    islands: Islands
    reading: Reading
    values: Floats  # of the branches, with supplies as they have come to stand
    positions: Positions
    buzzing: frozenset[PartId]
    shut_off: frozenset[PartId]
    limited: frozenset[PartId]
    broken_down: frozenset[PartId] = frozenset()  # converters whose input does not hold up under their load


def settle(
    plan: Plan,
    kinds: Mapping[str, Kind],
    positions: Positions,
    start: Mapping[TerminalRef, float] | None,
    sources: Mapping[PartId, tuple[float, ...]] = MappingProxyType({}),
) -> Settled:
    """Solve, throw the relays the solution says, and again; positions seen before mean that they buzz.

    `sources` gives some supplies other values (EMF, ohms, limit, sinks) than their own. A relay between its
    two voltages stays as it stands, so `positions` say which of two lasting states is meant.
    """
    now = dict(positions)
    seen: list[dict[PartId, str]] = []
    while True:
        settled = solved_arrays(_changed(assemble(plan, kinds, now), sources), now, start)
        relays = _relays(settled.assembly)
        standing = {relay: settled.assembly.parts[relay].position for relay in relays}
        if not relays:
            return settled
        wanted = {relay: _thrown(settled, relay, standing[relay]) for relay in relays}
        if wanted == standing:
            return settled
        seen.append(standing)
        if wanted in seen or len(seen) >= MOST_RELAY_ROUNDS:
            round_trip = [*seen[seen.index(wanted) if wanted in seen else -2 :], wanted]
            restless = {r for r in relays if len({positions[r] for positions in round_trip}) > 1}
            return settled._replace(buzzing=frozenset(restless))
        now.update(wanted)


def _relays(assembly: Assembly) -> tuple[PartId, ...]:
    return assembly.kept.of(
        ("relays", assembly.table),
        lambda: tuple(assembly.table.ids[row] for row in np.flatnonzero(assembly.table.relays).tolist()),
    )


def _changed(assembly: Assembly, sources: Mapping[PartId, tuple[float, ...]]) -> Assembly:
    if not sources:
        return assembly
    changed = assembly.values.copy()
    for part, values in sources.items():
        changed[assembly.spans[part][0]] = values
    return assembly._replace(values=changed)


def solved_arrays(
    assembly: Assembly, positions: Positions, start: Mapping[TerminalRef, float] | None = None
) -> Settled:
    """Return branch arrays solved, relays standing as they stand in them."""
    found = fed(assembly, start)
    return Settled(
        assembly, found.islands, found.reading, found.values, positions,
        frozenset(), found.shut_off, found.limited, found.broken_down,
    )  # fmt: skip


def _thrown(settled: Settled, relay: PartId, standing: str) -> str:
    compiled = settled.assembly.parts[relay]
    span = settled.assembly.spans[relay]
    if not span or settled.reading.failed[span[0]]:
        return standing
    return thrown(compiled.values, abs(float(settled.reading.volts[span[0]])), standing)


def thrown(values: Values, coil_v: float, stood: str) -> str:
    """Return how a relay stands with so many volts on its coil, which stood so before."""
    if coil_v >= values["pull_in_v"]:
        return OPERATED
    return RELEASED if coil_v < lets_go_v(values) else stood
