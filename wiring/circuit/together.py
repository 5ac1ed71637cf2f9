"""Newton's method on many networks at once: components that touch at held nodes only, columns of one shape.

Each is judged by itself and takes steps of its own length, so one that is hard does not hold up the others.
What is not settled when the steps run out is left to be solved alone.
"""

from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from wiring.circuit.linear import Floats
from wiring.circuit.network import Network
from wiring.circuit.point import Point, Rest, Solve, point_at, resumed

MOST_STEPS = 40
RELATIVE = 1e-11  # of the currents that meet at a node
CLEAN = 0.01  # of what is allowed
NOTHING_A = 1e-16
STEP_RELATIVE = 1e-10
MOST_LINE_STEPS = 12
OVERSHOT = 0.1  # of the slope at the start: more than that the other way means the step was too long
GONE = 0.5
GOOD_MATRIX = 1e-2  # of what was left over may be left after a step by an older matrix; more, and it goes
Flags = NDArray[np.bool_]


class Together(NamedTuple):
    """Node voltages, branch voltages and currents; per component (and column) what is left over."""

    x: Floats
    volts: Floats
    amps: Floats
    residual_a: Floats
    converged: Flags
    steps: int
    rest: Rest | None = None  # where all of it came to rest


def newton_together(
    network: Network, start: Floats | None = None, most_steps: int = MOST_STEPS, rest: Rest | None = None
) -> Together:
    """Return all components (and columns) of a network solved, as far as plain Newton steps solve them.

    `start` holds likely node voltages; `rest` is where a network of the same shape and nearly the same values
    came to rest: its matrix is used as long as it does well.
    """
    with np.errstate(all="ignore"):
        try:
            return _newton(network, start, most_steps, rest)
        except ArithmeticError:
            size = network.highest.shape
            x = np.zeros((network.free, *size[1:]))
            empty = np.zeros((len(network.a), *size[1:]))
            return Together(x, empty, empty, np.zeros(size), np.zeros(size, dtype=np.bool_), 0)


def _newton(network: Network, start: Floats | None, most_steps: int, rest: Rest | None) -> Together:
    by_component = network.shape.by_component
    if rest is not None:
        point = resumed(network, rest)
    else:
        point = point_at(network, network.first_guess() if start is None else start)
    unsound = np.zeros(network.highest.shape, dtype=np.bool_)
    solver = None if rest is None else rest.solver
    older = solver is not None
    settled, clean = _settled(network, point)
    step = 0
    for step in range(most_steps):
        if step and bool(np.all(settled | unsound)):
            break
        if solver is None or not older:
            solver = network.pattern.solver(point.slopes)
        move = solver(-point.force)
        downhill = by_component(point.force * move)
        unsound |= ~(downhill <= 0)
        if unsound.any():
            move = np.where(unsound[network.shape.component], 0.0, move)
            downhill = np.where(unsound, 0.0, downhill)
        small = np.abs(move) <= STEP_RELATIVE * (1.0 + np.abs(point.x))
        if bool(np.all(settled | unsound)) and bool(np.all(small)):
            break
        before_a = np.max(np.abs(point.force))
        point = _searched(network, point, move, downhill)
        settled, clean = _settled(network, point)
        older = older and bool(np.max(np.abs(point.force)) <= GOOD_MATRIX * before_a)
    if solver is not None and not clean and settled.all():
        point = _polished(network, point, solver)
    settled = settled & ~unsound
    residual = np.zeros(settled.shape)
    np.maximum.at(residual, network.shape.component, np.abs(point.force))
    found = None if solver is None or not settled.all() else Rest(network, point, solver)
    return Together(point.x, point.volts, point.amps, residual, settled, step, found)


def _settled(network: Network, point: Point) -> tuple[Flags, bool]:
    """Return for each component whether Kirchhoff's law holds at all its nodes, as far as digits go.

    And whether it holds so well everywhere that another step would be wasted.
    """
    shape = network.shape
    digits_a = RELATIVE * np.abs(point.amps) + network.rounding_v * np.abs(point.slopes)
    allowed = network.sums(digits_a, 1.0) + NOTHING_A
    left = np.abs(point.force)
    breaches = ~(left <= allowed)
    if not breaches.any():
        return np.ones(network.highest.shape, dtype=np.bool_), bool(np.all(left <= CLEAN * allowed))
    return np.asarray(shape.by_component(breaches.astype(np.float64)) == 0.0), False


def _polished(network: Network, point: Point, solver: Solve) -> Point:
    """Take one more step by the matrix there is, where it leaves less.

    It is so short that the branches are straight lines along it to the last digit.
    """
    move = solver(-point.force)
    across = network.moved(move)
    amps = point.amps + point.slopes * across
    better = Point(point.x + move, point.volts + across, amps, point.slopes, network.sums(amps))
    component, most = network.shape.component, np.zeros((2, *network.highest.shape))
    np.maximum.at(most[0], component, np.abs(point.force))
    np.maximum.at(most[1], component, np.abs(better.force))
    worse = ~(most[1] <= most[0])
    if worse.any():
        return point_at(network, np.where(worse[component], point.x, better.x))
    return better


def _searched(network: Network, point: Point, move: Floats, downhill: Floats) -> Point:
    """Step along `move`; where the directional derivative has turned about, look for where it vanishes."""
    shape = network.shape
    trial = point_at(network, point.x + move)
    slope = shape.by_component(trial.force * move)
    searching = ~(slope <= OVERSHOT * np.abs(downhill))
    if not searching.any():
        return trial
    length, low, high = np.ones((3, *slope.shape))
    low[:] = 0.0
    low_slope, high_slope = downhill.copy(), slope
    best = np.where(searching, 0.0, 1.0)
    for _ in range(MOST_LINE_STEPS):
        share = -low_slope / (high_slope - low_slope)
        share = np.clip(np.where(np.isfinite(share), share, 0.5), 0.1, 0.9)
        length = np.where(searching, low + (high - low) * share, length)
        trial = point_at(network, point.x + length[shape.component] * move)
        slope = shape.by_component(trial.force * move)
        found = searching & (np.abs(slope) <= GONE * np.abs(downhill))
        best = np.where(found, length, best)
        searching = searching & ~found
        if not searching.any():
            return trial
        short = searching & (slope < 0)
        far = searching & ~short
        low, low_slope = np.where(short, length, low), np.where(short, slope, low_slope)
        best = np.where(short, length, best)
        high, high_slope = np.where(far, length, high), np.where(far, slope, high_slope)
    return point_at(network, point.x + np.where(searching, best, length)[shape.component] * move)
