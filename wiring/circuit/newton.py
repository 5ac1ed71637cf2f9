"""Newton's method on Kirchhoff's current law.

Every branch current depends on its own voltage only, so the law's residual is the gradient of one function
(the co-content), the Jacobian is symmetric, and a step can be judged by the sign of F(x + t d) . d alone.
"""

from typing import NamedTuple

import numpy as np

from wiring.circuit.linear import Floats
from wiring.circuit.network import Network, as_columns
from wiring.circuit.together import newton_together

MOST_STEPS = 80
WARM_STEPS = 12
MOST_SLOW_STEPS = 400
RELATIVE = 1e-11  # of the currents that meet at a node
ROUNDING = 1e-15
NOTHING_A = 1e-16
CLIPPED_S = 1e-6
STEP_RELATIVE = 1e-10
MOST_LINE_STEPS = 20
OVERSHOT = 0.1  # of the slope at the start: more than that the other way means the step was too long
GONE = 0.5


class Solved(NamedTuple):
    """Node voltages, branch voltages and currents, and whether Kirchhoff's law holds at every node."""

    x: Floats
    volts: Floats
    amps: Floats
    residual_a: float
    converged: bool
    steps: int


class _Point:
    """The network at one set of node voltages."""

    def __init__(self, network: Network, x: Floats) -> None:
        self.x = x
        self.volts = network.volts(x)
        self.amps, self.slopes = network.currents(self.volts)
        self.force = network.sums(self.amps)

    def settled(self, network: Network) -> bool:
        meeting = network.sums(np.abs(self.amps), 1.0)
        stiff = network.sums(np.abs(self.slopes), 1.0)
        highest = max(
            float(np.max(np.abs(self.x), initial=0.0)), float(np.max(np.abs(network.held), initial=0.0))
        )
        allowed = RELATIVE * meeting + ROUNDING * stiff * highest + NOTHING_A
        return bool(np.all(np.abs(self.force) <= allowed))

    def solved(self, converged: bool, steps: int) -> Solved:
        residual = float(np.max(np.abs(self.force), initial=0.0))
        return Solved(self.x, self.volts, self.amps, residual, converged, steps)


def newton(network: Network, start: Floats | None = None, most_steps: int = MOST_STEPS) -> Solved:
    """Return the network solved; `converged` is False where no operating point was found."""
    with np.errstate(all="ignore"):
        try:
            point = _Point(network, network.first_guess() if start is None else start)
            for step in range(most_steps):
                if not np.all(np.isfinite(point.force)):
                    return point.solved(False, step)
                settled = point.settled(network)
                move = _direction(network, point)
                slight = float(np.max(np.abs(move), initial=0.0)) <= STEP_RELATIVE * (
                    1.0 + float(np.max(np.abs(point.x), initial=0.0))
                )
                if settled and (slight or step > 0):
                    return _polished(network, point, move).solved(True, step)
                point = _search(network, point, move)
            if start is None:
                return _slowly(network, point)
            return point.solved(point.settled(network), most_steps)
        except ArithmeticError:
            empty = np.zeros(len(network.a))
            return Solved(np.zeros(network.free), empty, empty, 0.0, False, 0)


def _direction(network: Network, point: _Point) -> Floats:
    move = network.pattern.solver(point.slopes)(-point.force)
    if float(point.force @ move) <= 0 and np.all(np.isfinite(move)):
        return move
    return network.pattern.solver(np.maximum(point.slopes, CLIPPED_S))(-point.force)


def _polished(network: Network, point: _Point, move: Floats) -> _Point:
    """Take the step that is already computed where it is better still."""
    better = _Point(network, point.x + move)
    if np.max(np.abs(better.force), initial=0.0) <= np.max(np.abs(point.force), initial=0.0):
        return better
    return point


def _search(network: Network, point: _Point, move: Floats) -> _Point:
    """Step along `move`; where the directional derivative has turned about, look for where it vanishes."""
    start = float(point.force @ move)
    trial = _Point(network, point.x + move)
    slope = float(trial.force @ move)
    if slope <= OVERSHOT * abs(start):
        return trial
    low, low_slope, high, high_slope = 0.0, start, 1.0, slope
    best = trial
    for _ in range(MOST_LINE_STEPS):
        part = -low_slope / (high_slope - low_slope) if np.isfinite(high_slope) else 0.5
        t = low + (high - low) * min(max(part, 0.1), 0.9)
        trial = _Point(network, point.x + t * move)
        slope = float(trial.force @ move)
        if abs(slope) <= GONE * abs(start):
            return trial
        if slope < 0:
            low, low_slope, best = t, slope, trial
        else:
            high, high_slope = t, slope
    return best


def _slowly(network: Network, point: _Point) -> Solved:
    """Follow the circuit as it would settle with a small capacitor on every node: slow but sure."""
    inertia = max(float(np.max(np.abs(point.slopes), initial=1.0)) * 1e-3, 1e-6)
    size = float(np.max(np.abs(point.force), initial=0.0))
    for step in range(MOST_SLOW_STEPS):
        if point.settled(network):
            return point.solved(True, MOST_STEPS + step)
        move = network.pattern.solver(np.maximum(point.slopes, CLIPPED_S), inertia)(-point.force)
        trial = _Point(network, point.x + move)
        now = float(np.max(np.abs(trial.force), initial=0.0))
        if np.isfinite(now) and now <= 2.0 * size:
            point, size, inertia = trial, now, inertia * 0.5
        else:
            inertia *= 8.0
    return point.solved(point.settled(network), MOST_STEPS + MOST_SLOW_STEPS)


def newton_lanes(lanes: list[Network], start: Floats | None = None) -> list[Solved]:
    """Return networks of one shape solved: all at once where that works, else one after the other.

    `start` holds their node voltages, one network after the other.
    """
    together = as_columns(lanes)
    begin = None if start is None else np.ascontiguousarray(start.reshape(len(lanes), -1).T)
    columns = newton_together(together, begin)
    found: list[Solved] = []
    for place, lane in enumerate(lanes):
        if columns.converged[:, place].all():
            x, volts, amps = (table[:, place].copy() for table in columns[:3])
            worst = float(columns.residual_a[:, place].max(initial=0.0))
            found.append(Solved(x, volts, amps, worst, True, columns.steps))
            continue
        warm = found[-1].x if found and found[-1].converged and lane.monotone else None
        one = newton(lane, warm, WARM_STEPS) if warm is not None else newton(lane)
        found.append(one if one.converged else newton(lane))
    return found
