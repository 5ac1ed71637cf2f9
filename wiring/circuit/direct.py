"""All islands on direct current: those a change has reached are solved again, the others read as before."""

from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from wiring.circuit.branch_arrays import Assembly
from wiring.circuit.branches.laws import WIDTH
from wiring.circuit.cores import (
    PLAN,
    Core,
    Scope,
    core_of_island,
    core_of_plan,
    cores_known,
    scope_of_plan,
    solved_core,
)
from wiring.circuit.dead_ends import hang
from wiring.circuit.islands import Islands
from wiring.circuit.linear import Floats, Ints
from wiring.circuit.reading import Reading
from wiring.circuit.steady import read_steady, resting_amps

MOST_APART = 3  # islands solved one by one; where more have changed, all are solved side by side
Flags = NDArray[np.bool_]


class Known(NamedTuple):
    """What the islands on direct current read with certain values of the branches.

    Nodes of islands that are not settled may be NaN.
    """

    values: Floats
    columns: tuple[Floats, ...]
    nodes: Floats
    residual_a: Floats  # per island
    settled: Flags  # per island: among the others


class _Task(NamedTuple):
    """What is solved, and where what it reads goes."""

    assembly: Assembly
    islands: Islands
    values: Floats
    reading: Reading
    residual_a: Floats
    settled: Flags


def read_direct(
    assembly: Assembly, islands: Islands, values: Floats, reading: Reading, warm: Floats | None
) -> None:
    """Solve all islands on direct current and write what they read into `reading`.

    `warm` holds likely node voltages. Islands whose values are those of the last time read as they did then,
    so the `values` must not be written to later. An island that does not come to rest is solved alone.
    """
    direct = ~islands.alternating
    kept = last_known(assembly, islands)
    last = kept[0] if kept else None
    stale = direct if last is None else _stale(islands, last, values) & direct
    if last is None or _all_at_once(assembly, islands, stale, direct):
        residual_a, settled = np.zeros(len(direct)), np.ones(len(direct), dtype=np.bool_)
        task = _Task(assembly, islands, values, reading, residual_a, settled)
        core, scope = core_of_plan(assembly, islands), scope_of_plan(assembly, islands)
        likely = warm if last is None or np.isnan(last.nodes).any() else last.nodes
        _read_core(task, core, scope, np.flatnonzero(direct), likely)
    else:
        task = _Task(assembly, islands, values, reading, last.residual_a.copy(), last.settled.copy())
        _read_as_before(last, islands, direct, reading)
        for place in np.flatnonzero(stale).tolist():
            island = islands.fed[place]
            scope = Scope(island.branches, island.nodes)
            likely = None if np.isnan(last.nodes[island.reference]) else last.nodes
            _read_core(task, core_of_island(assembly, islands, place), scope, np.array([place]), likely)
    reading.residual_a[islands.references[direct]] = task.residual_a[direct]
    for place in np.flatnonzero(~task.settled & direct).tolist():
        read_steady(assembly, islands.fed[place], values, reading, None)
    columns = tuple(column.copy() for column in _columns(reading))
    kept[:] = [Known(values, columns, reading.nodes.copy(), task.residual_a, task.settled)]


def last_known(assembly: Assembly, islands: Islands) -> list[Known]:
    """Return what the islands read the last time, one entry or none; to be written to."""
    return assembly.kept.of(("direct", islands, assembly.laws), list[Known])


def _all_at_once(assembly: Assembly, islands: Islands, stale: Flags, direct: Flags) -> bool:
    """Whether the core of the whole plan is the quicker way."""
    if np.count_nonzero(stale) > MOST_APART:
        return True
    return np.array_equal(stale, direct) and PLAN in cores_known(assembly, islands)


def _columns(reading: Reading) -> tuple[Floats, ...]:
    return reading.volts, reading.amps, reading.mean_amps, reading.power


def _stale(islands: Islands, last: Known, values: Floats) -> Flags:
    """Return for each island whether a value in it is another than the last time, or it was hard to solve."""
    stale = np.append(~last.settled, False)
    if values is not last.values:
        changed = np.flatnonzero((values != last.values).ravel()) // WIDTH
        stale[islands.of_branch[changed]] = True
    return stale[:-1]


def _read_as_before(last: Known, islands: Islands, direct: Flags, reading: Reading) -> None:
    if direct.all() and not np.isnan(last.nodes).any():  # what nothing feeds reads nought either way
        for column, before in zip(_columns(reading), last.columns, strict=True):
            np.copyto(column, before)
        np.copyto(reading.nodes, last.nodes)
        return
    among = np.append(direct, False)
    for column, before in zip(_columns(reading), last.columns, strict=True):
        np.copyto(column, before, where=among[islands.of_branch])
    np.copyto(reading.nodes, last.nodes, where=among[islands.of_node])


def _read_core(task: _Task, core: Core, scope: Scope, places: Ints, warm: Floats | None) -> None:
    """Solve the core of some islands and write what they read, dead ends and all."""
    mine, around = scope
    values, reading = task.values[mine], task.reading
    solved = solved_core(core, values, None if warm is None else warm[around])
    nodes = solved.nodes
    hang(core.layers, np.where(core.sources, values[:, 0], 0.0), core.a, nodes)
    nodes -= nodes[core.references]
    volts, amps = nodes[core.a] - nodes[core.b], np.zeros(len(mine))
    amps[core.branches] = solved.amps
    amps[core.loops] = resting_amps(task.assembly, mine[core.loops], task.values)
    reading.nodes[around] = nodes
    reading.volts[mine], reading.amps[mine], reading.mean_amps[mine] = volts, amps, amps
    reading.power[mine] = volts * amps
    inner = places[core.islands]
    task.settled[places] = True
    task.settled[inner] = solved.converged
    task.residual_a[places] = 0.0
    task.residual_a[inner] = np.where(solved.converged, solved.residual_a, 0.0)
