"""One island on alternating current, solved at points of one cycle: but for capacitors it has no memory.

Filaments are too slow to follow the cycle: each keeps the resistance its RMS volts give it.
"""

import math
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from wiring.circuit.behind_rectifiers import direct_volts
from wiring.circuit.branch_arrays import Assembly
from wiring.circuit.branches.laws import LAW_NUMBER
from wiring.circuit.islands import Island, core_network
from wiring.circuit.lamp_warmth import Lamps, warm_ohms
from wiring.circuit.linear import Floats, Ints
from wiring.circuit.network import Network
from wiring.circuit.newton import newton_lanes
from wiring.circuit.reading import Reading
from wiring.circuit.smoothing import CAPACITOR, hold
from wiring.circuit.steady import SOURCE, hang_on, loop_currents
from wiring.plan.plan import Plan

POINTS = 64  # between the least and the highest of the wave; about 1e-4 off where diodes switch
MOST_ROUNDS = 60
WARM_TOLERANCE = 1e-7
RMS_ALONE: Floats = np.array([math.sqrt(0.5)])  # straight lines only: one share of the peak says it all
RESISTOR_LAW = LAW_NUMBER["resistor"]
FILAMENT_LAW = LAW_NUMBER["filament"]


class Cycle(NamedTuple):
    """Volts and amps of an island's branches and volts of its nodes, one row a phase."""

    volts: Floats
    amps: Floats
    nodes: Floats
    residual_a: float
    unknowns: Floats  # of the core, phase after phase: where the next round starts
    sines: Floats
    held: Floats | None = None  # volts on smoothing capacitors, where there are any


def read_alternating(
    assembly: Assembly, island: Island, values: Floats, reading: Reading, near: Cycle | None = None
) -> Cycle | None:
    """Solve one island over a cycle, write its RMS readings into `reading` and return the cycle.

    `near` is what the island did with nearly the same values: a place to start from.
    """
    found = cycle(assembly, island, values, near=near)
    if found is None and near is not None:
        found = cycle(assembly, island, values)
    if found is None:
        reading.failed[island.branches] = True
    else:
        _write(assembly, island, reading, found)
    return found


def cycle(assembly: Assembly, island: Island, values: Floats, *, near: Cycle | None = None) -> Cycle | None:
    """Return an island at points of one cycle, its filaments warm; None where no steady state is found.

    Without capacitors the way from the least to the highest of the wave will do.
    """
    mine = island.branches
    lamps = mine[assembly.laws[mine] == FILAMENT_LAW]
    places = np.searchsorted(mine, lamps)
    warmed, laws = values.copy(), assembly.laws.copy()
    laws[lamps] = RESISTOR_LAW
    warmed[lamps, 0] = values[lamps, 0] / values[lamps, 1]
    plan = assembly._replace(laws=laws)
    if np.any(laws[island.core] == CAPACITOR):
        lit = lamps[np.isin(lamps, island.core)]
        return _smoothed(plan, island, warmed, Lamps(np.searchsorted(island.core, lit), values[lit]))
    found = near
    for _ in range(MOST_ROUNDS):
        found = _cycle(plan, island, warmed, found)
        if found is None:
            return None
        ohms = warm_ohms(values[lamps], _rms(found.volts[:, places]))
        if np.all(np.abs(ohms - warmed[lamps, 0]) <= WARM_TOLERANCE * ohms):
            return found
        warmed[lamps, 0] = ohms
    return None


def hertz(plan: Plan) -> float:
    """Return the mains frequency: 60 Hz where the builder measures in feet and inches, else 50 Hz."""
    return 60.0 if plan.habits.units == "us" else 50.0


def phases(points: int = POINTS) -> Floats:
    """Return a sine at evenly spread times from its least to its highest: the way back reads the same."""
    return np.asarray(np.sin(((np.arange(points) + 0.5) / points - 0.5) * math.pi))


def _cycle(plan: Assembly, island: Island, values: Floats, before: Cycle | None) -> Cycle | None:
    network = core_network(plan, island, values)
    swing = plan.alternating[island.core]
    straight = network.linear and bool(swing[network.laws == SOURCE].all())
    sines = RMS_ALONE if straight else phases()
    if not len(island.core):
        nothing = np.zeros((len(sines), 0))
        return _spread(plan, island, values, sines, nothing, nothing, 0.0)
    lanes = [_at_phase(network, swing, float(sine)) for sine in sines]
    solved = newton_lanes(lanes, None if before is None else before.unknowns)
    if not all(one.converged for one in solved):
        return None
    x, amps = np.array([one.x for one in solved]), np.array([one.amps for one in solved])
    return _spread(plan, island, values, sines, x, amps, max(one.residual_a for one in solved))


def _smoothed(plan: Assembly, island: Island, values: Floats, lamps: Lamps) -> Cycle | None:
    """Return a cycle of an island with smoothing capacitors."""
    swing = plan.alternating[island.core]
    kept = hold(core_network(plan, island, values), swing, hertz(plan.plan), lamps=lamps)
    if kept is None:
        return None
    solved = kept.solved
    found = _spread(plan, island, values, kept.sines, solved.x.T, solved.amps.T, solved.residual_a)
    return found._replace(held=kept.volts)


def _spread(
    plan: Assembly,
    island: Island,
    values: Floats,
    sines: Floats,
    x: Floats,
    core_amps: Floats,
    residual: float,
) -> Cycle:
    """Return what all branches and nodes of an island read, from its core's; a row a phase."""
    mine = island.branches
    amps, nodes = np.zeros((len(sines), len(mine))), np.zeros((len(sines), plan.node_count))
    nodes[:, island.core_nodes[:-1]] = x
    amps[:, np.searchsorted(mine, island.core)] = core_amps
    hang_on(plan, island, values, nodes, sines)
    nodes -= nodes[:, [island.reference]]
    volts = nodes[:, plan.a[mine]] - nodes[:, plan.b[mine]]
    amps[:, np.searchsorted(mine, island.loops)] = loop_currents(plan, island, values, sines)
    return Cycle(volts, amps, nodes[:, island.nodes], residual, x.ravel(), sines)


def _at_phase(network: Network, swing: NDArray[np.bool_], sine: float) -> Network:
    values = network.values.copy()
    values[swing, 0] *= sine
    return network.with_values(values)


def _rms(rows: Floats) -> Floats:
    return np.asarray(np.sqrt(np.mean(rows * rows, axis=0)))


def _write(assembly: Assembly, island: Island, reading: Reading, found: Cycle) -> None:
    mine = island.branches
    reading.volts[mine], reading.amps[mine] = _rms(found.volts), _rms(found.amps)
    if len(found.amps) > 1:  # else it is a sine, with a mean of nought
        reading.mean_amps[mine] = found.amps.mean(axis=0)
    # A DC source among AC has a direction: what it gives leaves its plus, as on DC.
    direct = mine[(assembly.laws[mine] == SOURCE) & ~assembly.alternating[mine]]
    reading.amps[direct] *= np.where(reading.mean_amps[direct] < 0.0, -1.0, 1.0)
    reading.power[mine] = (found.volts * found.amps).mean(axis=0)
    reading.nodes[island.nodes] = _rms(found.nodes)
    reading.direct[island.nodes] = direct_volts(assembly, island, found.nodes)
    reading.residual_a[island.reference] = found.residual_a


def warm_values(assembly: Assembly, island: Island, values: Floats, reading: Reading) -> tuple[Ints, Floats]:
    """Return laws and values with every filament of an island as the resistor it is when warm."""
    lamps = island.branches[assembly.laws[island.branches] == FILAMENT_LAW]
    laws, warmed = assembly.laws.copy(), values.copy()
    laws[lamps] = RESISTOR_LAW
    warmed[lamps, 0] = warm_ohms(values[lamps], np.abs(reading.volts[lamps]))
    return laws, warmed
