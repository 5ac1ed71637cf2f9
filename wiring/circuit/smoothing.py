"""Smoothing capacitors over one cycle of the mains, in the steady state: what they hold at each moment.

Held at given volts, a capacitor is a source like any other, and the rest of the circuit has no memory: all
moments of a cycle are solved side by side. What then flows into the capacitors must be what changes their
volts from one moment to the next, the last one leading back to the first (trapezoidal rule, periodic):

    C (u[j+1] - u[j]) / dt = (i[j] + i[j+1]) / 2

Newton's method on all moments at once; how the currents into all capacitors change with the volts of each
comes from the circuit's own matrix at each moment. Filaments are too slow to follow the cycle: they keep the
ohms their RMS volts give them, which are set anew after each step.
"""

from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from wiring.circuit.branches.laws import LAW_NUMBER
from wiring.circuit.lamp_warmth import NO_LAMPS, Lamps
from wiring.circuit.linear import Floats, Ints
from wiring.circuit.network import Network
from wiring.circuit.newton import newton_lanes
from wiring.circuit.round_trip import closing_move
from wiring.circuit.together import newton_together

CAPACITOR, SOURCE = LAW_NUMBER["capacitor"], LAW_NUMBER["source"]
COARSE, FINE = 48, 192  # moments a cycle; so many leave 1e-4 of RMS values, and 1e-5 of steady volts
MOST_STEPS = 40
MOST_IDLE, FEWER = 8, 0.9  # steps without the least left over yet falling to such a share: it will not settle
MOST_HALVINGS = 6
ROUGH, TOLERANCE = 1e-3, 1e-7  # of the largest current into a capacitor
ROUGH_OHMS, OHMS = 1e-3, 1e-6  # of a filament
START_SHARE = 0.5  # of the peak: from beneath, the charging current grows ever steeper and Newton cannot pass
NOTHING_A = 1e-13  # of what is missing: what a leak charges a capacitor with is not told any better


class Moments(NamedTuple):
    """A network at each moment, a column each."""

    x: Floats
    volts: Floats
    amps: Floats
    residual_a: float


class Held(NamedTuple):
    """Volts on each capacitor, a row a moment and a column a capacitor; the circuit solved at each moment."""

    volts: Floats
    solved: Moments
    sines: Floats
    lamp_ohms: Floats


class _Task(NamedTuple):
    network: Network
    swing: NDArray[np.bool_]
    places: Ints  # of the capacitors among the branches
    farads: Floats
    lamps: Lamps
    sines: Floats
    step_s: float


class _State(NamedTuple):
    """Where the search stands."""

    volts: Floats
    ohms: Floats  # of the lamps
    solved: Moments
    short: Floats

    @property
    def size(self) -> float:
        return float(np.linalg.norm(self.short))


def capacitors(network: Network) -> Ints:
    """Return the places of the capacitors among a network's branches."""
    return np.flatnonzero(network.laws == CAPACITOR)


def hold(
    network: Network,
    swing: NDArray[np.bool_],
    hertz: float,
    points: int = FINE,
    lamps: Lamps = NO_LAMPS,
) -> Held | None:
    """Return the periodic steady state; None where none is found. `swing` marks the alternating sources.

    `lamps` are filaments that stand in the network as resistors.
    """
    places = capacitors(network)
    farads = network.values[places, 0]
    laws, values = network.laws.copy(), network.values.copy()
    laws[places] = SOURCE
    values[places, :4] = np.stack(
        (np.zeros(len(places)), values[places, 1], np.full(len(places), np.inf), np.ones(len(places))), axis=1
    )
    held = network.with_values(values, laws)
    peak = float(np.max(np.abs(values[network.laws == SOURCE, 0]), initial=0.0))
    found: Held | None = None
    for moments, tolerance, warm in ((COARSE, ROUGH, ROUGH_OHMS), (points, TOLERANCE, OHMS)):
        sines = np.asarray(np.sin(2.0 * np.pi * np.arange(moments) / moments))
        task = _Task(held, swing, places, farads, lamps, sines, 1.0 / (hertz * moments))
        if found is None:
            start = np.full((moments, len(places)), START_SHARE * peak)
            found = _found(task, start, lamps.rated_ohms, None, tolerance, warm)
        else:
            start, x = _stretched(found.volts, moments), _stretched(found.solved.x.T, moments).T
            found = _found(task, start, found.lamp_ohms, np.ascontiguousarray(x), tolerance, warm)
        if found is None:
            return None
    return found


def _stretched(volts: Floats, points: int) -> Floats:
    old, new = np.arange(len(volts) + 1) / len(volts), np.arange(points) / points
    closed = np.concatenate((volts, volts[:1]))
    return np.stack([np.interp(new, old, column) for column in closed.T], axis=1)


def _found(
    task: _Task, volts: Floats, ohms: Floats, x: Floats | None, tolerance: float, warm: float
) -> Held | None:
    state = _state(task, volts, ohms, x)
    least, idle = np.inf, 0
    for _ in range(MOST_STEPS):
        if state is None or idle > MOST_IDLE:
            return None
        into = float(np.max(np.abs(state.solved.amps[task.places])))
        warmer = task.lamps.ohms(state.solved.volts)
        rests = bool(np.all(np.abs(warmer - state.ohms) <= warm * warmer))
        if rests and np.max(np.abs(state.short)) <= max(tolerance * into, NOTHING_A):
            return Held(state.volts, state.solved, task.sines, state.ohms)
        idle = 0 if state.size < FEWER * least else idle + 1
        least = min(least, state.size)
        try:
            slopes, moved = _slopes(task, state)
            move = closing_move(task.farads / task.step_s, slopes, state.short)
        except (ArithmeticError, np.linalg.LinAlgError):
            return None
        state = _stepped(task, state, move, moved, warmer)
    return None


def _stepped(task: _Task, state: _State, move: Floats, moved: Floats, ohms: Floats) -> _State | None:
    """Return the state after a step, shorter where the whole one leaves more than there was."""
    onward = np.einsum("nmc,mc->nm", moved, move)
    for halving in range(MOST_HALVINGS):
        share = 0.5**halving
        tried = _state(task, state.volts + share * move, ohms, state.solved.x + share * onward)
        if tried is not None and (tried.size < state.size or halving == MOST_HALVINGS - 1):
            return tried
    return None


def _values(task: _Task, volts: Floats, ohms: Floats) -> Floats:
    """Return the branches' values, the last axis the moments."""
    values = np.repeat(task.network.values[:, :, None], len(task.sines), axis=2)
    values[task.swing, 0] *= task.sines
    values[task.places, 0] = volts.T
    values[task.lamps.places, 0] = ohms[:, None]
    return values


def _columns(task: _Task, values: Floats) -> Network:
    count = values.shape[2]
    return Network.shaped(
        task.network.shape, values, np.repeat(task.network.held[:, None], count, axis=1), task.network.behind
    )


def _state(task: _Task, volts: Floats, ohms: Floats, x: Floats | None) -> _State | None:
    solved = _solved(task, _values(task, volts, ohms), x)
    return None if solved is None else _State(volts, ohms, solved, _missing(task, volts, solved))


def _solved(task: _Task, values: Floats, x: Floats | None) -> Moments | None:
    found = newton_together(_columns(task, values), x)
    if found.converged.all():
        return Moments(found.x, found.volts, found.amps, float(found.residual_a.max(initial=0.0)))
    lanes = [task.network.with_values(values[:, :, moment].copy()) for moment in range(values.shape[2])]
    one_by_one = newton_lanes(lanes, None if x is None else x.T.ravel())
    if not all(one.converged for one in one_by_one):
        return None
    x, volts, amps = (np.stack([one[n] for one in one_by_one], axis=1) for n in range(3))
    return Moments(x, volts, amps, max(one.residual_a for one in one_by_one))


def _slopes(task: _Task, state: _State) -> tuple[Floats, Floats]:
    """Return by how much each capacitor's current rises per volt held on another, at each moment.

    A source of one volt more behind g siemens pushes g amperes more into its two nodes. And by how much the
    nodes then rise: node, moment, capacitor.
    """
    network = _columns(task, _values(task, state.volts, state.ohms))
    _, gains = network.currents(state.solved.volts)
    solve = network.pattern.solver(gains)
    free, gain = task.network.free, gains[task.places]
    a, b = task.network.a[task.places], task.network.b[task.places]
    count = len(task.sines)
    found, rises = np.empty((count, len(a), len(a))), np.empty((free, count, len(a)))
    for column, (one, other) in enumerate(zip(a.tolist(), b.tolist(), strict=True)):
        right = np.zeros((free + len(task.network.held), count))
        right[one] += gain[column]
        right[other] -= gain[column]
        moved = np.zeros_like(right)
        moved[:free] = solve(right[:free])
        across = moved[a] - moved[b]
        across[column] -= 1.0
        found[:, :, column] = (gain * across).T
        rises[:, :, column] = moved[:free]
    return found, rises


def _missing(task: _Task, volts: Floats, solved: Moments) -> Floats:
    """Return the amperes by which each moment's charge balance is off."""
    into = solved.amps[task.places].T
    change = (np.roll(volts, -1, axis=0) - volts) * task.farads / task.step_s
    return np.asarray(change - 0.5 * (into + np.roll(into, -1, axis=0)))
