"""Every island of a plan solved: those on direct current all at once, those on AC one by one."""

from collections.abc import Mapping
from typing import Any, NamedTuple

import numpy as np
from numpy.typing import NDArray

from wiring.circuit.alternating import read_alternating
from wiring.circuit.branch_arrays import Assembly
from wiring.circuit.direct import read_direct
from wiring.circuit.islands import Islands
from wiring.circuit.linear import Floats
from wiring.circuit.reading import Reading
from wiring.circuit.terminal_volts import TerminalVolts
from wiring.plan.names import TerminalRef

MOST_SWUNG = 4  # readings of an island that are kept


class _Swung(NamedTuple):
    """What an island on AC read with certain values."""

    values: Floats
    columns: list[NDArray[Any]]
    nodes: Floats
    direct: Floats
    residual_a: float


def read_all(
    assembly: Assembly,
    islands: Islands,
    values: Floats,
    reading: Reading,
    start: Mapping[TerminalRef, float] | None = None,
) -> None:
    """Solve all islands and write what they read into `reading`; `start` holds the volts of a like plan."""
    read_direct(assembly, islands, values, reading, likely_volts(assembly, start))
    for place in np.flatnonzero(islands.alternating).tolist():
        _read_swinging(assembly, islands, place, values, reading)


def _read_swinging(
    assembly: Assembly, islands: Islands, place: int, values: Floats, reading: Reading
) -> None:
    """Solve an island on AC, or take what it read before where nothing in it has changed since."""
    island = islands.fed[place]
    mine, nodes = island.branches, island.nodes
    columns = (reading.volts, reading.amps, reading.mean_amps, reading.power, reading.failed)
    known = swung_known(assembly, islands, place)
    for before in known:
        if np.array_equal(before.values, values[mine]):
            for column, was in zip(columns, before.columns, strict=True):
                column[mine] = was
            reading.nodes[nodes], reading.direct[nodes] = before.nodes, before.direct
            reading.residual_a[island.reference] = before.residual_a
            return
    read_alternating(assembly, island, values, reading)
    now = _Swung(
        values[mine], [column[mine] for column in columns], reading.nodes[nodes], reading.direct[nodes],
        float(reading.residual_a[island.reference]),
    )  # fmt: skip
    known[:] = [now, *known[: MOST_SWUNG - 1]]


def swung_known(assembly: Assembly, islands: Islands, place: int) -> list[_Swung]:
    """Return what an island on AC read before, the latest first; to be written to."""
    return assembly.kept.of((f"swinging {place}", islands, assembly.laws), list[_Swung])


def likely_volts(assembly: Assembly, start: Mapping[TerminalRef, float] | None) -> Floats | None:
    """Return the volts of each node by an answer to the same wiring; None where it was wired otherwise.

    After a change of wiring a linear start is the better one: what lies behind an opened switch is at rest.
    """
    if isinstance(start, TerminalVolts) and start.node_of is assembly.node_of:
        return start.nodes
    return None
