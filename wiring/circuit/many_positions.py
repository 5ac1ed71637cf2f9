"""One plan in many sets of positions: what every wire, supply and part reads in each of them, as arrays."""

from collections.abc import Mapping, Sequence
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from wiring.catalogue.kind import Kind
from wiring.circuit.branch_arrays import Assembly
from wiring.circuit.linear import Floats
from wiring.circuit.side_by_side import SideBySide, read_columns, side_by_side
from wiring.circuit.states import Settled, settle
from wiring.circuit.supply_states import AT_LIMIT
from wiring.plan.names import PartId, WireId
from wiring.plan.plan import Plan
from wiring.plan.positions import Positions


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

    Solved side by side, which costs little more than one, where no relay, AC, converter or limit of a supply
    makes a set more than one solve; those are solved one by one.
    """
    if not positions:
        like = _read(settle(plan, kinds, {}, None))
        return _empty(like.wires, like.parts, like.supplies, 0)
    many = side_by_side(plan, kinds, positions) if len(positions) > 1 else None
    if many is None:
        rows = [_read(settle(plan, kinds, given, None)) for given in positions]
        return _together(rows)
    found, alone = _read_many(many)
    for place in alone:
        one = _read(settle(plan, kinds, positions[place], None))
        for table, row in zip(found[3:], one[3:], strict=True):
            table[place] = row[0]
    return found


def _read_many(many: SideBySide) -> tuple[ManyReadings, list[int]]:
    """Return the readings of all sets, and which of them have to be solved alone."""
    assembly, wires = many.assembly, len(many.assembly.wires)
    parts = tuple(part for part, compiled in assembly.parts.items() if compiled.links)
    supplies = tuple(part for part in parts if assembly.parts[part].behaviour.feeds)
    found = _empty(tuple(assembly.wires), parts, supplies, many.sets)
    first = np.array([assembly.spans[part][0] for part in supplies], dtype=np.intp)
    limit = assembly.values[first, 2] * AT_LIMIT
    holds = np.array([_holds(assembly, part) for part in supplies], dtype=np.bool_)
    spans = [assembly.spans[part] for part in parts]
    alone: list[int] = []
    for read in read_columns(many):
        found.wire_a[read.sets] = read.amps[:wires].T
        for column, span in enumerate(spans):
            if len(span) == 1:
                found.part_v[read.sets, column] = read.volts[span.start]
                found.part_a[read.sets, column] = read.amps[span.start]
            elif span:
                telling = np.argmax(np.abs(read.amps[span.start : span.stop]), axis=0) + span.start
                here = np.arange(len(read.sets))
                found.part_v[read.sets, column] = read.volts[telling, here]
                found.part_a[read.sets, column] = read.amps[telling, here]
        found.supply_v[read.sets] = read.volts[first].T
        found.supply_a[read.sets] = -read.amps[first].T
        limited = found.supply_a[read.sets] >= limit
        found.limited[read.sets] = limited
        found.found[read.sets] = read.found[first].T
        unsure = (limited & ~holds).any(axis=1) | ~read.found.all(axis=0)
        alone += read.sets[unsure].tolist()
    return found, alone


def _holds(assembly: Assembly, part: PartId) -> bool:
    return bool(assembly.parts[part].values.get("on_overload", "holds current") == "holds current")


def _together(rows: Sequence[ManyReadings]) -> ManyReadings:
    tables = [np.concatenate(same) for same in zip(*(row[3:] for row in rows), strict=True)]
    return ManyReadings(rows[0].wires, rows[0].parts, rows[0].supplies, *tables)


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
    parts = tuple(part for part, compiled in assembly.parts.items() if compiled.links)
    supplies = tuple(part for part in parts if assembly.parts[part].behaviour.feeds)
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
