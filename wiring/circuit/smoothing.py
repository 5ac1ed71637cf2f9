"""Smoothing capacitors over one cycle of the mains, in the steady state: what they hold at each moment.

Held at given volts, a capacitor is a source like any other, and the rest of the circuit has no memory: all
moments of a cycle are solved side by side. What then flows into the capacitors must be what changes their
volts from one moment to the next, the last one leading back to the first (trapezoidal rule, periodic):

    C (u[j+1] - u[j]) / dt = (i[j] + i[j+1]) / 2

Newton's method on all moments at once; how the currents into all capacitors change with the volts of each
comes from the circuit's own matrix at each moment.
"""

from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from wiring.circuit.branches.laws import LAW_NUMBER
from wiring.circuit.linear import Floats, Ints
from wiring.circuit.network import Network, as_columns
from wiring.circuit.newton import Solved, newton_lanes

CAPACITOR, SOURCE = LAW_NUMBER["capacitor"], LAW_NUMBER["source"]
COARSE, FINE = 48, 192  # moments a cycle; so many leave 1e-4 of RMS values, and 1e-5 of steady volts
MOST_STEPS = 40
MOST_HALVINGS = 6
TOLERANCE = 1e-8  # of the largest current into a capacitor
START_SHARE = 0.5  # of the peak: from beneath, the charging current grows ever steeper and Newton cannot pass
LEAST_A = 1e-12


class Held(NamedTuple):
    """Volts on each capacitor, a row a moment and a column a capacitor; the circuit solved at each moment."""

    volts: Floats
    solved: list[Solved]
    sines: Floats


class _Task(NamedTuple):
    network: Network
    swing: NDArray[np.bool_]
    places: Ints  # of the capacitors among the branches
    farads: Floats
    sines: Floats
    step_s: float


def capacitors(network: Network) -> Ints:
    """Return the places of the capacitors among a network's branches."""
    return np.flatnonzero(network.laws == CAPACITOR)


def hold(
    network: Network,
    swing: NDArray[np.bool_],
    hertz: float,
    points: int = FINE,
    start: Floats | None = None,
    nodes: Floats | None = None,
) -> Held | None:
    """Return the periodic steady state; None where none is found. `swing` marks the alternating sources.

    `start` holds volts of a like circuit at as many moments, `nodes` those of its nodes, one moment after the
    other.
    """
    places = capacitors(network)
    farads = network.values[places, 0]
    laws, values = network.laws.copy(), network.values.copy()
    laws[places] = SOURCE
    values[places, :4] = np.stack(
        (np.zeros(len(places)), values[places, 1], np.full(len(places), np.inf), np.ones(len(places))), axis=1
    )
    held = network.with_values(values, laws)
    if start is None:
        peak = float(np.max(np.abs(values[network.laws == SOURCE, 0]), initial=0.0))
        start = np.full((COARSE, len(places)), START_SHARE * peak)
        coarse = _found(_task(held, swing, places, farads, COARSE, hertz), start)
        if coarse is None:
            return None
        start = _stretched(coarse.volts, points)
    return _found(_task(held, swing, places, farads, points, hertz), start, nodes)


def _task(
    network: Network, swing: NDArray[np.bool_], places: Ints, farads: Floats, points: int, hertz: float
) -> _Task:
    sines = np.asarray(np.sin(2.0 * np.pi * np.arange(points) / points))
    return _Task(network, swing, places, farads, sines, 1.0 / (hertz * points))


def _stretched(volts: Floats, points: int) -> Floats:
    old, new = np.arange(len(volts) + 1) / len(volts), np.arange(points) / points
    closed = np.concatenate((volts, volts[:1]))
    return np.stack([np.interp(new, old, column) for column in closed.T], axis=1)


def _found(task: _Task, volts: Floats, nodes: Floats | None = None) -> Held | None:
    solved = _solve(task, volts, nodes)
    if solved is None:
        return None
    into = _into(task, solved)
    short = _missing(task, volts, into)
    for _ in range(MOST_STEPS):
        if np.max(np.abs(short)) <= TOLERANCE * max(float(np.max(np.abs(into))), LEAST_A):
            return Held(volts, solved, task.sines)
        try:
            move = _move(task, _slopes(task, solved, volts), short)
        except (ArithmeticError, np.linalg.LinAlgError):
            return None
        best = float(np.linalg.norm(short))
        for halving in range(MOST_HALVINGS):
            tried = volts + move * 0.5**halving
            again = _solve(task, tried, np.concatenate([one.x for one in solved]))
            if again is None:
                continue
            into_then = _into(task, again)
            short_then = _missing(task, tried, into_then)
            if np.linalg.norm(short_then) < best or halving == MOST_HALVINGS - 1:
                volts, solved, into, short = tried, again, into_then, short_then
                break
        else:
            return None
    return None


def _lanes(task: _Task, volts: Floats) -> list[Network]:
    lanes = []
    for sine, held in zip(task.sines, volts, strict=True):
        values = task.network.values.copy()
        values[task.swing, 0] *= sine
        values[task.places, 0] = held
        lanes.append(task.network.with_values(values))
    return lanes


def _solve(task: _Task, volts: Floats, nodes: Floats | None) -> list[Solved] | None:
    solved = newton_lanes(_lanes(task, volts), nodes)
    return solved if all(one.converged for one in solved) else None


def _slopes(task: _Task, solved: list[Solved], volts: Floats) -> Floats:
    """Return by how much each capacitor's current rises per volt held on another, at each moment.

    A source of one volt more behind g siemens pushes g amperes more into its two nodes.
    """
    together = as_columns(_lanes(task, volts))
    _, gains = together.currents(np.stack([one.volts for one in solved], axis=1))
    solve = together.pattern.solver(gains)
    free, gain = task.network.free, gains[task.places]
    a, b = task.network.a[task.places], task.network.b[task.places]
    found = np.empty((len(solved), len(a), len(a)))
    for column, (one, other) in enumerate(zip(a.tolist(), b.tolist(), strict=True)):
        right = np.zeros((free + len(task.network.held), len(solved)))
        right[one] += gain[column]
        right[other] -= gain[column]
        moved = np.zeros_like(right)
        moved[:free] = solve(right[:free])
        across = moved[a] - moved[b]
        across[column] -= 1.0
        found[:, :, column] = (gain * across).T
    return found


def _into(task: _Task, solved: list[Solved]) -> Floats:
    return np.stack([one.amps[task.places] for one in solved])


def _missing(task: _Task, volts: Floats, into: Floats) -> Floats:
    """Return the amperes by which each moment's charge balance is off."""
    change = (np.roll(volts, -1, axis=0) - volts) * task.farads / task.step_s
    return np.asarray(change - 0.5 * (into + np.roll(into, -1, axis=0)))


def _move(task: _Task, slopes: Floats, short: Floats) -> Floats:
    """Return Newton's step: each moment's move follows from the one before, and once round must lead back."""
    points, count = short.shape
    stiff = np.diag(task.farads / task.step_s)
    here, after = stiff + 0.5 * slopes, stiff - 0.5 * np.roll(slopes, -1, axis=0)
    onward = np.linalg.solve(after, np.concatenate((here, -short[:, :, None]), axis=2))
    begins, gains = np.zeros((points + 1, count)), np.zeros((points + 1, count, count))
    gains[0] = np.eye(count)
    for moment in range(points):
        step = onward[moment, :, :count]
        begins[moment + 1] = step @ begins[moment] + onward[moment, :, count]
        gains[moment + 1] = step @ gains[moment]
    first = np.linalg.solve(np.eye(count) - gains[-1], begins[-1])
    return np.asarray(begins[:-1] + gains[:-1] @ first)
