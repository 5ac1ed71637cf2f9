"""One island on direct current: its core solved by all means there are, the dead ends hung back on."""

import numpy as np

from wiring.circuit.branch_arrays import Assembly
from wiring.circuit.branches.laws import LAW_NUMBER, LAWS
from wiring.circuit.islands import Island, core_network
from wiring.circuit.linear import Floats, Ints
from wiring.circuit.network import Network
from wiring.circuit.newton import Solved, newton
from wiring.circuit.reading import Reading

WARM_STEPS = 8
ONE: Floats = np.ones(1)
SOURCE = LAW_NUMBER["source"]


def read_steady(
    assembly: Assembly, island: Island, values: Floats, reading: Reading, warm: Floats | None
) -> None:
    """Solve one island alone and write what it reads into `reading`, by all means there are."""
    mine, nodes = island.branches, np.zeros(assembly.node_count)
    for column in (reading.volts, reading.amps, reading.mean_amps, reading.power):
        column[mine] = 0.0
    reading.nodes[island.nodes] = 0.0
    reading.residual_a[island.reference] = 0.0
    solved = None
    if carries(assembly, island, values):
        network = core_network(assembly, island, values)
        solved = _solve(network, None if warm is None else warm[island.core_nodes])
        if not solved.converged:
            reading.failed[mine] = True
            return
        reading.residual_a[island.reference] = solved.residual_a
        nodes[island.core_nodes[:-1]] = solved.x
    hang_on(assembly, island, values, nodes)
    reading.nodes[island.nodes] = nodes[island.nodes] - nodes[island.reference]
    reading.volts[mine] = nodes[assembly.a[mine]] - nodes[assembly.b[mine]]
    if solved is not None:
        reading.volts[island.core] = solved.volts
        reading.amps[island.core] = solved.amps
    reading.amps[island.loops] = loop_currents(assembly, island, values)[0]
    reading.mean_amps[mine] = reading.amps[mine]
    reading.power[mine] = reading.volts[mine] * reading.amps[mine]


def carries(assembly: Assembly, island: Island, values: Floats) -> bool:
    """Whether anything can drive a current in the island's core."""
    core = island.core
    return bool(np.any(values[core[assembly.laws[core] == SOURCE], 0] != 0.0))


def hang_on(assembly: Assembly, island: Island, values: Floats, nodes: Floats, swing: Floats = ONE) -> None:
    """Give the nodes of dead ends their voltages: a load drops nothing, a source holds its EMF.

    The last axis of `nodes` is the nodes; one before it goes with `swing`, the share of an alternating EMF.
    """
    for node, branch, other in island.twigs:
        rest: Floats = np.zeros(1)
        if assembly.laws[branch] == SOURCE:
            rest = values[branch, 0] * (swing if assembly.alternating[branch] else ONE)
        nodes[..., node] = nodes[..., other] + (rest if assembly.a[branch] == node else -rest)


def resting_amps(assembly: Assembly, loops: Ints, values: Floats) -> Floats:
    """Return the currents of branches with both ends on one node."""
    amps = np.zeros(len(loops))
    for number in np.unique(assembly.laws[loops]):
        those = np.flatnonzero(assembly.laws[loops] == number)
        amps[those] = LAWS[int(number)].current(np.zeros(len(those)), values[loops[those]].T)[0]
    return amps


def loop_currents(assembly: Assembly, island: Island, values: Floats, swing: Floats = ONE) -> Floats:
    """Return the currents of branches with both ends on one node, a row for each of `swing`."""
    amps = np.zeros((len(swing), len(island.loops)))
    for place, branch in enumerate(island.loops):
        law = LAWS[int(assembly.laws[branch])]
        rows = np.repeat(values[branch][:, None], len(swing), axis=1)
        if assembly.alternating[branch]:
            rows[0] *= swing
        amps[:, place] = law.current(np.zeros(len(swing)), rows)[0]
    return amps


def _solve(network: Network, warm: Floats | None) -> Solved:
    if warm is not None and network.monotone and np.all(np.isfinite(warm)):
        solved = newton(network, warm[:-1] - warm[-1], WARM_STEPS)
        if solved.converged:
            return solved
    return newton(network)
