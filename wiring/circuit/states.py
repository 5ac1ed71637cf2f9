"""What the circuit itself decides: relays pull in, supplies fold back or shut off; gone round until still."""

from collections.abc import Mapping
from types import MappingProxyType
from typing import NamedTuple

import numpy as np

from wiring.catalogue.kind import Kind
from wiring.circuit.alternating import read_alternating
from wiring.circuit.assembly import Assembly, assemble
from wiring.circuit.behaviours.feeding import FOLDED_SHARE, SHUT_OFF_OHMS
from wiring.circuit.islands import Islands, find_islands
from wiring.circuit.linear import Floats
from wiring.circuit.reading import Reading, resting
from wiring.circuit.steady import read_steady
from wiring.plan.names import PartId, TerminalRef
from wiring.plan.plan import Plan
from wiring.plan.positions import Positions

MOST_RELAY_ROUNDS = 24
MOST_FOLD_ROUNDS = 60
FOLD_TOLERANCE = 1e-7
AT_LIMIT = 0.98  # of the limit: from here a supply is limiting
DROPS_OUT = 0.1  # of rated coil volts, common practice; between this and pull-in a relay stays as it is
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


def settle(
    plan: Plan,
    kinds: Mapping[str, Kind],
    positions: Positions,
    start: Mapping[TerminalRef, float] | None,
    sources: Mapping[PartId, tuple[float, ...]] = MappingProxyType({}),
) -> Settled:
    """Solve, throw the relays the solution says, and again; positions seen before mean that they buzz.

    `sources` gives some supplies other values (EMF, ohms, limit, sinks) than their own.
    """
    relays = [p.id for p in plan.parts.values() if p.kind in kinds and kinds[p.kind].behaviour == "relay"]
    now = dict(positions)
    seen: list[dict[PartId, str]] = []
    while True:
        settled = _fed(_changed(assemble(plan, kinds, now), sources), now, start)
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


def _changed(assembly: Assembly, sources: Mapping[PartId, tuple[float, ...]]) -> Assembly:
    for part, values in sources.items():
        assembly.values[assembly.spans[part][0]] = values
    return assembly


def _thrown(settled: Settled, relay: PartId, standing: str) -> str:
    compiled = settled.assembly.parts[relay]
    span = settled.assembly.spans[relay]
    if not span or settled.reading.failed[span[0]]:
        return standing
    coil_v = abs(settled.reading.volts[span[0]])
    if coil_v >= compiled.values["pull_in_v"]:
        return OPERATED
    return RELEASED if coil_v < DROPS_OUT * compiled.values["rated_v"] else standing


def _fed(assembly: Assembly, positions: Positions, start: Mapping[TerminalRef, float] | None) -> Settled:
    """Solve every island; then make supplies that fold back or shut off do so, and solve those again."""
    islands = find_islands(assembly)
    warm = None if start is None else _node_volts(assembly, start)
    values = assembly.values.copy()
    reading = _read(assembly, islands, values, warm)
    shut: set[PartId] = set()
    limited = _limited(assembly, reading, values)
    for _ in range(MOST_FOLD_ROUNDS):
        changed = False
        for source in assembly.sources:
            owner = assembly.owners[source]
            style = assembly.parts[owner].values.get("on_overload", "")
            if owner not in limited or reading.failed[source]:
                continue
            if style == "shuts off" and owner not in shut:
                shut.add(owner)
                values[source] = (0.0, SHUT_OFF_OHMS, np.inf, 1.0)
                changed = True
            elif style == "folds back":
                full = assembly.values[source]
                left = max(float(reading.volts[source]), 0.0) / full[0]
                folded = full[2] * (FOLDED_SHARE + (1.0 - FOLDED_SHARE) * min(left, 1.0))
                changed = changed or abs(folded - values[source, 2]) > FOLD_TOLERANCE * full[2]
                values[source, 2] = folded
        if not changed:
            break
        reading = _read(assembly, islands, values, None)
        limited |= _limited(assembly, reading, values)
    return Settled(
        assembly, islands, reading, values, positions, frozenset(), frozenset(shut), frozenset(limited)
    )


def _read(assembly: Assembly, islands: Islands, values: Floats, warm: Floats | None) -> Reading:
    reading = resting(assembly)
    for island in islands.fed:
        if island.alternating:
            read_alternating(assembly, island, values, reading)
        else:
            read_steady(assembly, island, values, reading, warm)
    return reading


def _limited(assembly: Assembly, reading: Reading, values: Floats) -> set[PartId]:
    given = -reading.amps[assembly.sources]
    over = given >= AT_LIMIT * values[assembly.sources, 2]
    return {assembly.owners[source] for source in assembly.sources[over]}


def _node_volts(assembly: Assembly, start: Mapping[TerminalRef, float]) -> Floats:
    known = np.array([start.get(ref, np.nan) for ref in assembly.refs], dtype=np.float64)
    volts = np.full(assembly.node_count, np.nan)
    volts[assembly.node_of] = known
    return volts
