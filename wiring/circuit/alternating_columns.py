"""One island on alternating current in many sets of positions, all sets and phases solved side by side.

For islands without capacitors and direct sources; filaments keep the resistance their RMS volts give them, as
in wiring.circuit.alternating.
"""

from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from wiring.circuit.alternating import (
    FILAMENT_LAW,
    MOST_ROUNDS,
    RESISTOR_LAW,
    RMS_ALONE,
    WARM_TOLERANCE,
    phases,
)
from wiring.circuit.branch_arrays import Assembly
from wiring.circuit.branches.laws import LAW_NUMBER
from wiring.circuit.islands import Island, core_network
from wiring.circuit.lamp_warmth import warm_ohms
from wiring.circuit.linear import Floats, Ints
from wiring.circuit.network import Network
from wiring.circuit.steady import SOURCE, hang_on
from wiring.circuit.together import newton_together

CAPACITOR = LAW_NUMBER["capacitor"]
COLUMNS = 256  # sets times phases that are solved at once


class Swung(NamedTuple):
    """RMS readings of an island's branches, a column a set, and which sets came to rest."""

    volts: Floats
    amps: Floats
    found: NDArray[np.bool_]


def may_be_columns(assembly: Assembly, island: Island) -> bool:
    """Whether an island is of that kind."""
    mine, laws = island.branches, assembly.laws
    direct = (laws[mine] == SOURCE) & ~assembly.alternating[mine]
    return not (np.any(laws[mine] == CAPACITOR) or direct.any() or np.any(laws[island.loops] == SOURCE))


def swung_columns(assembly: Assembly, island: Island, values: Floats) -> Swung:
    """Return what an island reads; `values` are those of all branches, the last axis the sets."""
    count = values.shape[2]
    mine = island.branches
    volts, amps = np.zeros((2, len(mine), count))
    found = np.zeros(count, dtype=np.bool_)
    lamps = mine[assembly.laws[mine] == FILAMENT_LAW]
    laws = assembly.laws.copy()
    laws[lamps] = RESISTOR_LAW
    warm = assembly._replace(laws=laws)
    straight = core_network(warm, island, values[:, :, 0]).linear
    sines = RMS_ALONE if straight else phases()
    step = max(COLUMNS // len(sines), 1)
    for begin in range(0, count, step):
        sets = np.arange(begin, min(begin + step, count))
        _read(warm, island, values[:, :, sets], lamps, sines, Swung(volts, amps, found), sets)
    return Swung(volts, amps, found)


def _read(
    warm: Assembly, island: Island, values: Floats, lamps: Ints, sines: Floats, into: Swung, sets: Ints
) -> None:
    """Solve some sets, again and again until their filaments are as warm as their volts make them."""
    rows = values.copy()
    rows[lamps, 0] = values[lamps, 0] / values[lamps, 1]
    places = np.searchsorted(island.branches, lamps)
    left, start = np.arange(len(sets)), None
    for _ in range(MOST_ROUNDS):
        volts, amps, sound, x = _solved(warm, island, rows[:, :, left], sines, start)
        rms = _rms(volts)
        ohms = warm_ohms(values[lamps][:, :, left], rms[places])
        moved = np.abs(ohms - rows[lamps][:, 0, left]) > WARM_TOLERANCE * ohms
        still = ~moved.any(axis=0)
        done = left[still]
        into.volts[:, sets[done]], into.amps[:, sets[done]] = rms[:, still], _rms(amps)[:, still]
        into.found[sets[done]] = sound[still]
        rows[lamps[:, None], 0, left[None, :]] = ohms
        goes_on = ~still & sound
        if not goes_on.any():
            return
        left, start = left[goes_on], x[:, goes_on]


def _solved(
    warm: Assembly, island: Island, values: Floats, sines: Floats, start: Floats | None
) -> tuple[Floats, Floats, NDArray[np.bool_], Floats]:
    """Return volts and amps by branch, set and phase, which sets were solved, and the core's node volts."""
    count, phase_count, mine = values.shape[2], len(sines), island.branches
    swing = np.tile(sines, count)
    nodes = np.zeros((count * phase_count, warm.node_count))
    amps = np.zeros((len(mine), count * phase_count))
    x, sound = np.zeros((0, count * phase_count)), np.ones(count, dtype=np.bool_)
    if len(island.core):  # else nothing closes a circuit, and only the volts at open ends are left
        shape = core_network(warm, island, values[:, :, 0]).shape
        lanes = np.repeat(values[island.core], phase_count, axis=2)
        lanes[warm.alternating[island.core], 0] *= swing
        network = Network.shaped(shape, lanes, np.zeros((1, count * phase_count)))
        solved = newton_together(network, None if start is None else start.reshape(len(start), -1))
        x = solved.x
        sound = np.all(solved.converged.reshape(-1, count, phase_count), axis=(0, 2))
        nodes[:, island.core_nodes[:-1]] = x.T
        amps[np.searchsorted(mine, island.core)] = solved.amps
    hang_on(warm, island, values[:, :, 0], nodes, swing)
    volts = (nodes[:, warm.a[mine]] - nodes[:, warm.b[mine]]).T
    parted = (count, phase_count)
    return (
        volts.reshape(len(mine), *parted), amps.reshape(len(mine), *parted), sound,
        x.reshape(-1, *parted),
    )  # fmt: skip


def _rms(rows: Floats) -> Floats:
    return np.asarray(np.sqrt(np.mean(rows * rows, axis=-1)))
