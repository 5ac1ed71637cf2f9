"""One plan in many sets of positions: what every wire, supply and part reads in each of them, as arrays."""

from collections.abc import Mapping, Sequence
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from wiring.catalogue.kind import Kind
from wiring.circuit.linear import Floats
from wiring.circuit.states import Settled, settle
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
    """Return what the plan reads in each set of positions; parts not named stand as they usually do."""
    rows = [_read(settle(plan, kinds, given, None)) for given in positions]
    if not rows:
        return _read(settle(plan, kinds, {}, None))._replace(
            **{name: np.zeros((0, 0)) for name in ManyReadings._fields[3:]}
        )
    return rows[0]._replace(
        **{n: np.concatenate([getattr(row, n) for row in rows]) for n in ManyReadings._fields[3:]}
    )


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
