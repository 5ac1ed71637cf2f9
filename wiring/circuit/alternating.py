"""One island on alternating current: it has no capacitors, so no memory, and is solved at points of one cycle.

Filaments are the exception: too slow to follow the cycle, each keeps the resistance its RMS volts give it.
"""

import math

import numpy as np

from wiring.circuit.assembly import Assembly
from wiring.circuit.branches.filament import FILAMENT
from wiring.circuit.branches.laws import LAW_NUMBER
from wiring.circuit.islands import Island, core_network
from wiring.circuit.linear import Floats
from wiring.circuit.newton import newton
from wiring.circuit.reading import Reading
from wiring.circuit.steady import SOURCE, hang_on, loop_currents

POINTS = 96  # of one cycle, between the crossings; exact for straight lines, about 1e-3 where diodes switch
MOST_ROUNDS = 60
WARM_TOLERANCE = 1e-8
RESISTOR_LAW = LAW_NUMBER["resistor"]
FILAMENT_LAW = LAW_NUMBER["filament"]


def read_alternating(assembly: Assembly, island: Island, values: Floats, reading: Reading) -> None:
    """Solve one island over a cycle and write its RMS readings into `reading`."""
    lamps = island.core[assembly.laws[island.core] == FILAMENT_LAW]
    warmed, laws = values.copy(), assembly.laws.copy()
    laws[lamps] = RESISTOR_LAW
    warmed[lamps, 0] = values[lamps, 0] / values[lamps, 1]
    plan = assembly._replace(laws=laws)
    for _ in range(MOST_ROUNDS):
        found = _cycle(plan, island, warmed)
        if found is None:
            break
        ohms = _warm_ohms(values[lamps], _rms(found[0][:, lamps]))
        settled = bool(np.all(np.abs(ohms - warmed[lamps, 0]) <= WARM_TOLERANCE * ohms))
        if settled:
            _write(assembly, island, reading, *found)
            return
        warmed[lamps, 0] = ohms
    reading.failed[island.branches] = True


def phases(points: int = POINTS) -> Floats:
    """Return the sine at points spread evenly over a cycle, none of them at a crossing."""
    return np.asarray(np.sin((np.arange(points) + 0.5) * (2.0 * math.pi / points)))


def _cycle(plan: Assembly, island: Island, values: Floats) -> tuple[Floats, Floats, Floats, float] | None:
    """Return volts and amps of every branch, volts of every node, one row a phase, and the residual."""
    sines = phases()
    size = (len(sines), len(plan.a))
    volts, amps = np.zeros(size), np.zeros(size)
    nodes = np.zeros((len(sines), plan.node_count))
    network = core_network(plan, island, values) if len(island.core) else None
    swing = plan.alternating[island.core]
    straight = network is not None and network.linear and bool(swing[network.laws == SOURCE].all())
    x: Floats | None = None
    residual = 0.0
    for row, sine in enumerate(sines):
        now = values.copy()
        now[plan.alternating, 0] *= sine
        if network is not None:
            if straight and row > 0:
                scale = sine / sines[0]
                nodes[row], volts[row], amps[row] = nodes[0] * scale, volts[0] * scale, amps[0] * scale
                continue
            solved = newton(network.with_values(now[island.core]), x)
            if not solved.converged and x is not None:
                solved = newton(network.with_values(now[island.core]))
            if not solved.converged:
                return None
            x = solved.x
            residual = max(residual, solved.residual_a)
            nodes[row, island.core_nodes[:-1]] = x
            amps[row, island.core] = solved.amps
        hang_on(plan, island, now, nodes[row])
        nodes[row] -= nodes[row, island.reference]
        volts[row] = nodes[row, plan.a] - nodes[row, plan.b]
        amps[row, island.loops] = loop_currents(plan, island, now)
    return volts, amps, nodes, residual


def _warm_ohms(rows: Floats, rms_v: Floats) -> Floats:
    amps, slopes = FILAMENT.current(rms_v, rows.T)
    return np.where(rms_v > 1e-9, rms_v / np.where(rms_v > 1e-9, amps, 1.0), 1.0 / slopes)


def _rms(rows: Floats) -> Floats:
    return np.asarray(np.sqrt(np.mean(rows * rows, axis=0)))


def _write(
    assembly: Assembly, island: Island, reading: Reading, volts: Floats, amps: Floats, nodes: Floats,
    residual: float,
) -> None:  # fmt: skip
    mine = island.branches
    reading.volts[mine] = _rms(volts[:, mine])
    reading.amps[mine] = _rms(amps[:, mine])
    reading.mean_amps[mine] = amps[:, mine].mean(axis=0)
    reading.power[mine] = (volts[:, mine] * amps[:, mine]).mean(axis=0)
    reading.nodes[island.nodes] = _rms(nodes[:, island.nodes])
    reading.residual_a.append(residual)
