"""All islands on direct current: those a change has reached are solved again, the others read as before."""

from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from wiring.circuit.assembly import Assembly
from wiring.circuit.branches.laws import WIDTH
from wiring.circuit.cores import Core, core_of_island, core_of_plan, solved_core
from wiring.circuit.dead_ends import hang
from wiring.circuit.islands import Islands
from wiring.circuit.linear import Floats
from wiring.circuit.reading import Reading
from wiring.circuit.steady import SOURCE, read_steady, resting_amps

MOST_APART = 3  # islands solved one by one; where more have changed, all are solved side by side
Flags = NDArray[np.bool_]


class _Known(NamedTuple):
    """What the islands on direct current read with certain values of the branches."""

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
    kept = assembly.kept.of(("direct", islands, assembly.laws), list[_Known])
    last = kept[0] if kept else None
    stale = direct if last is None else _stale(islands, last, values) & direct
    if last is None or np.count_nonzero(stale) > MOST_APART or np.array_equal(stale, direct):
        residual_a, settled = np.zeros(len(direct)), np.ones(len(direct), dtype=np.bool_)
        task = _Task(assembly, islands, values, reading, residual_a, settled)
        _read_core(task, core_of_plan(assembly, islands), direct, warm if last is None else last.nodes)
    else:
        task = _Task(assembly, islands, values, reading, last.residual_a.copy(), last.settled.copy())
        _read_as_before(last, islands, direct, reading)
        for place in np.flatnonzero(stale).tolist():
            only = np.zeros_like(direct)
            only[place] = True
            _read_core(task, core_of_island(assembly, islands, place), only, last.nodes)
    reading.residual_a[islands.references[direct]] = task.residual_a[direct]
    for place in np.flatnonzero(~task.settled).tolist():
        read_steady(assembly, islands.fed[place], values, reading, None)
    columns = tuple(column.copy() for column in _columns(reading))
    kept[:] = [_Known(values, columns, reading.nodes.copy(), task.residual_a, task.settled)]


def _columns(reading: Reading) -> tuple[Floats, ...]:
    return reading.volts, reading.amps, reading.mean_amps, reading.power


def _stale(islands: Islands, last: _Known, values: Floats) -> Flags:
    """Return for each island whether a value in it is another than the last time, or it was hard to solve."""
    stale = np.append(~last.settled, False)
    if values is not last.values:
        changed = np.flatnonzero((values != last.values).ravel()) // WIDTH
        stale[islands.of_branch[changed]] = True
    return stale[:-1]


def _read_as_before(last: _Known, islands: Islands, direct: Flags, reading: Reading) -> None:
    if direct.all():  # what nothing feeds reads nought either way
        for column, before in zip(_columns(reading), last.columns, strict=True):
            np.copyto(column, before)
        np.copyto(reading.nodes, last.nodes)
        return
    among = np.append(direct, False)
    for column, before in zip(_columns(reading), last.columns, strict=True):
        np.copyto(column, before, where=among[islands.of_branch])
    np.copyto(reading.nodes, last.nodes, where=among[islands.of_node])


def _read_core(task: _Task, core: Core, meant: Flags, warm: Floats | None) -> None:
    """Solve the core of some islands and write what they read, dead ends and all."""
    assembly, islands, values, reading, residual_a, settled = task
    solved = solved_core(core, values, warm)
    nodes = solved.nodes
    hang(islands.dead.layers, np.where(assembly.laws == SOURCE, values[:, 0], 0.0), assembly.a, nodes)
    among = np.append(meant, False)
    nodes -= np.append(nodes[islands.references], 0.0)[islands.of_node]
    np.copyto(reading.nodes, nodes, where=among[islands.of_node])
    mine = among[islands.of_branch]
    np.copyto(reading.volts, nodes[assembly.a] - nodes[assembly.b], where=mine)
    reading.amps[core.branches] = solved.amps
    loops = np.flatnonzero(mine & islands.circling)
    reading.amps[loops] = resting_amps(assembly, loops, values)
    np.copyto(reading.mean_amps, reading.amps, where=mine)
    np.copyto(reading.power, reading.volts * reading.amps, where=mine)
    settled[core.islands] = solved.converged
    residual_a[core.islands] = np.where(solved.converged, solved.residual_a, 0.0)
