"""One plan in many sets of positions: what every wire, supply and part reads in each of them, as arrays."""

from collections.abc import Iterator, Mapping, Sequence
from functools import partial
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from wiring.catalogue.kind import Kind
from wiring.circuit.alternating_columns import may_be_columns, swung_columns
from wiring.circuit.assembly import Assembly, assemble
from wiring.circuit.compiled import standing
from wiring.circuit.islands import find_islands
from wiring.circuit.linear import Floats, Ints
from wiring.circuit.many_positions_converters import converted, converters
from wiring.circuit.side_by_side import Columns, SideBySide, read_columns, side_by_side, solved_columns
from wiring.circuit.states import MOST_RELAY_ROUNDS, Settled, settle, thrown
from wiring.circuit.supply_states import AT_LIMIT
from wiring.plan.names import PartId, WireId
from wiring.plan.part import Part
from wiring.plan.plan import Plan
from wiring.plan.positions import Positions

NONE: frozenset[str] = frozenset()  # of the parts that decide for themselves are left to others


class ManyReadings(NamedTuple):
    """One row a set of positions, one column a wire, part or supply; RMS where AC feeds.

    A current is that from a wire's start to its end, that into a part's first terminal on its branch that
    carries most, and that a supply gives. What has no steady state reads nought and is False in `found`.
    """

    wires: tuple[WireId, ...]
    parts: tuple[PartId, ...]  # those with branches in some position
    supplies: tuple[PartId, ...]
    wire_a: Floats
    part_v: Floats
    part_a: Floats
    supply_v: Floats
    supply_a: Floats
    limited: NDArray[np.bool_]  # per supply: it has reached its limit or shut off
    found: NDArray[np.bool_]  # per supply: its circuit has a steady state


def solve_positions(plan: Plan, kinds: Mapping[str, Kind], positions: Sequence[Positions]) -> ManyReadings:
    """Return what the plan reads in each set of positions; parts not named stand as they usually do.

    Solved side by side, which costs little more than one; relays are thrown by what that finds, and those
    sets solved again, side by side too. Where a smoothing capacitor or a limit of a supply makes a set more
    than that, it is solved by itself.
    """
    if len(positions) < 2:
        one = _read(settle(plan, kinds, positions[0] if positions else {}, None))
        return one if positions else _empty(one.wires, one.parts, one.supplies, 0)
    found = _nothing_read(assemble(plan, kinds, positions[0]), len(positions))
    for place in _relays_at_rest(plan, kinds, positions, found):
        one = _read(settle(plan, kinds, positions[place], None))
        for table, row in zip(found[3:], one[3:], strict=True):
            table[place] = row[0]
    return found


def _relays_at_rest(
    plan: Plan, kinds: Mapping[str, Kind], positions: Sequence[Positions], found: ManyReadings
) -> list[int]:
    """Read all sets, throwing relays until they rest or buzz; return the sets to be solved alone."""
    relays = [p for p in plan.parts.values() if p.kind in kinds and kinds[p.kind].behaviour == "relay"]
    now: list[dict[PartId, str]] = [dict(given) for given in positions]
    seen: list[list[dict[PartId, str]]] = [[] for _ in now]
    alone: list[int] = []
    going = list(range(len(now)))
    while going:
        many = side_by_side(plan, kinds, [now[place] for place in going], NONE)
        if many is None or not _together_on_ac(many):
            return [*alone, *going]
        coils, unsure = _read_many(many, found, np.array(going), [relay.id for relay in relays])
        again: list[int] = []
        for column, place in enumerate(going):
            if column in unsure:
                alone.append(place)
                continue
            stood = {r.id: _stood(r, kinds, now[place]) for r in relays}
            wanted = {
                relay: thrown(many.assembly.parts[relay].values, coils[row, column], stood[relay])
                for row, relay in enumerate(stood)
            }
            if wanted == stood:
                continue
            seen[place].append(stood)
            if wanted not in seen[place] and len(seen[place]) < MOST_RELAY_ROUNDS:  # else they buzz
                now[place].update(wanted)
                again.append(place)
        going = again
    return alone


def _stood(relay: Part, kinds: Mapping[str, Kind], given: Positions) -> str:
    position = standing(relay, kinds[relay.kind], given.get(relay.id, ""))
    return position.name if position else ""


def _together_on_ac(many: SideBySide) -> bool:
    islands = find_islands(many.assembly)
    swinging = np.flatnonzero(islands.alternating).tolist()
    return all(may_be_columns(many.assembly, islands.fed[place]) for place in swinging)


def _read_many(
    many: SideBySide, found: ManyReadings, rows: Ints, relays: Sequence[PartId]
) -> tuple[Floats, set[int]]:
    """Write the readings of all sets into rows; return the relays' coil volts and the sets to solve alone."""
    assembly, wires = many.assembly, len(many.assembly.wires)
    first = np.array([assembly.spans[part][0] for part in found.supplies], dtype=np.intp)
    limit = assembly.values[first, 2] * AT_LIMIT
    gives = np.where(assembly.alternating[first], 1.0, -1.0)
    holds = np.array([_holds(assembly, part) for part in found.supplies], dtype=np.bool_)
    spans = [assembly.spans[part] for part in found.parts]
    coil = np.array(
        [assembly.spans[relay][0] if assembly.spans[relay] else -1 for relay in relays], dtype=np.intp
    )
    coils = np.zeros((len(relays), many.sets))
    alone: set[int] = set()
    for read in _settled_columns(many):
        _swing(assembly, read)
        coils[:, read.sets] = np.abs(read.volts[coil])
        sets = rows[read.sets]
        found.wire_a[sets] = read.amps[:wires].T
        for column, span in enumerate(spans):
            if len(span) == 1:
                found.part_v[sets, column] = read.volts[span.start]
                found.part_a[sets, column] = read.amps[span.start]
            elif span:
                telling = np.argmax(np.abs(read.amps[span.start : span.stop]), axis=0) + span.start
                here = np.arange(len(sets))
                found.part_v[sets, column] = read.volts[telling, here]
                found.part_a[sets, column] = read.amps[telling, here]
        found.supply_v[sets] = read.volts[first].T
        found.supply_a[sets] = (gives[:, None] * read.amps[first]).T
        limited = found.supply_a[sets] >= limit
        found.limited[sets] = limited
        found.found[sets] = read.found[first].T
        unsure = (limited & ~holds).any(axis=1) | ~read.found.all(axis=0)
        alone |= set(read.sets[unsure].tolist())
    return coils, alone


def _settled_columns(many: SideBySide) -> Iterator[Columns]:
    """Solve all sets, some at once, converters at rest."""
    for read in read_columns(many):
        if not converters(many.assembly):
            yield read
            continue
        again = partial(_with_values, many, read)
        yield converted(many.assembly, read, again)


def _with_values(many: SideBySide, read: Columns, values: Floats) -> Columns:
    return solved_columns(many, read.sets, values, read.absent)


def _swing(assembly: Assembly, read: Columns) -> None:
    """Fill in what islands on AC read."""
    islands = find_islands(assembly)
    for place in np.flatnonzero(islands.alternating).tolist():
        island = islands.fed[place]
        swung = swung_columns(assembly, island, read.values)
        open_here = read.absent[island.branches]
        read.volts[island.branches] = np.where(open_here, 0.0, swung.volts)
        read.amps[island.branches] = np.where(open_here, 0.0, swung.amps)
        read.found[island.branches] = swung.found


def _holds(assembly: Assembly, part: PartId) -> bool:
    return bool(assembly.parts[part].values.get("on_overload", "holds current") == "holds current")


def _nothing_read(assembly: Assembly, sets: int) -> ManyReadings:
    parts = tuple(part for part, compiled in assembly.parts.items() if compiled.links)
    supplies = tuple(part for part in parts if assembly.parts[part].behaviour.feeds)
    return _empty(tuple(assembly.wires), parts, supplies, sets)


def _empty(
    wires: tuple[WireId, ...], parts: tuple[PartId, ...], supplies: tuple[PartId, ...], sets: int
) -> ManyReadings:
    """Return readings of so many sets in which nothing flows."""
    a_part, a_supply = (sets, len(parts)), (sets, len(supplies))
    return ManyReadings(
        wires, parts, supplies, np.zeros((sets, len(wires))), np.zeros(a_part), np.zeros(a_part),
        np.zeros(a_supply), np.zeros(a_supply),
        np.zeros(a_supply, dtype=np.bool_), np.zeros(a_supply, dtype=np.bool_),
    )  # fmt: skip


def _read(settled: Settled) -> ManyReadings:
    assembly, reading = settled.assembly, settled.reading
    like = _nothing_read(assembly, 0)
    parts, supplies = like.parts, like.supplies
    volts, amps = np.zeros(len(parts)), np.zeros(len(parts))
    for column, part in enumerate(parts):
        if span := assembly.spans[part]:  # else an open switch
            telling = max(span, key=lambda b: abs(reading.amps[b]))
            volts[column], amps[column] = reading.volts[telling], reading.amps[telling]
    first = [assembly.spans[part][0] for part in supplies]
    swinging = assembly.alternating[first]
    return ManyReadings(
        tuple(assembly.wires), parts, supplies,
        reading.amps[None, : len(assembly.wires)],
        volts[None], amps[None],
        reading.volts[None, first], np.where(swinging, reading.amps[first], -reading.amps[first])[None],
        np.array([[part in settled.limited or part in settled.shut_off for part in supplies]]),
        ~reading.failed[None, first],
    )  # fmt: skip
