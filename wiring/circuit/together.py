"""Newton's method on many networks at once: components that touch at held nodes only, columns of one shape.

Each is judged by itself and takes steps of its own length, so one that is hard does not hold up the others.
What is not settled when the steps run out is left to be solved alone.
"""

from collections.abc import Callable
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from wiring.circuit.linear import Floats
from wiring.circuit.network import Network

MOST_STEPS = 40
RELATIVE = 1e-11  # of the currents that meet at a node
CLEAN = 0.01  # of what is allowed
ROUNDING = 1e-15
NOTHING_A = 1e-16
STEP_RELATIVE = 1e-10
MOST_LINE_STEPS = 12
OVERSHOT = 0.1  # of the slope at the start: more than that the other way means the step was too long
GONE = 0.5
Flags = NDArray[np.bool_]


class Together(NamedTuple):
    """Node voltages, branch voltages and currents; per component (and column) what is left over."""

    x: Floats
    volts: Floats
    amps: Floats
    residual_a: Floats
    converged: Flags
    steps: int


class _Point(NamedTuple):
    x: Floats
    volts: Floats
    amps: Floats
    slopes: Floats
    force: Floats


def newton_together(network: Network, start: Floats | None = None, most_steps: int = MOST_STEPS) -> Together:
    """Return all components (and columns) of a network solved, as far as plain Newton steps solve them."""
    with np.errstate(all="ignore"):
        try:
            return _newton(network, start, most_steps)
        except ArithmeticError:
            size = network.highest.shape
            x = np.zeros((network.free, *size[1:]))
            empty = np.zeros((len(network.a), *size[1:]))
            return Together(x, empty, empty, np.zeros(size), np.zeros(size, dtype=np.bool_), 0)


def _newton(network: Network, start: Floats | None, most_steps: int) -> Together:
    by_component = network.shape.by_component
    point = _point(network, network.first_guess() if start is None else start)
    unsound = np.zeros(network.highest.shape, dtype=np.bool_)
    solver: Callable[[Floats], Floats] | None = None
    settled, clean = _settled(network, point)
    step = 0
    for step in range(most_steps):
        if step and bool(np.all(settled | unsound)):
            break
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
        point = _searched(network, point, move, downhill)
        settled, clean = _settled(network, point)
    if solver is not None and not clean:
        point = _polished(network, point, solver)
        settled, _ = _settled(network, point)
    settled = settled & ~unsound
    residual = np.zeros(settled.shape)
    np.maximum.at(residual, network.shape.component, np.abs(point.force))
    return Together(point.x, point.volts, point.amps, residual, settled, step)


def _point(network: Network, x: Floats) -> _Point:
    volts = network.volts(x)
    amps, slopes = network.currents(volts)
    return _Point(x, volts, amps, slopes, network.sums(amps))


def _settled(network: Network, point: _Point) -> tuple[Flags, bool]:
    """Return for each component whether Kirchhoff's law holds at all its nodes, as far as digits go.

    And whether it holds so well everywhere that another step would be wasted.
    """
    shape = network.shape
    meeting = network.sums(np.abs(point.amps), 1.0)
    stiff = network.sums(np.abs(point.slopes), 1.0)
    allowed = RELATIVE * meeting + (ROUNDING * network.highest)[shape.component] * stiff + NOTHING_A
    left = np.abs(point.force)
    breaches = ~(left <= allowed)
    if not breaches.any():
        return np.ones(network.highest.shape, dtype=np.bool_), bool(np.all(left <= CLEAN * allowed))
    return np.asarray(shape.by_component(breaches.astype(np.float64)) == 0.0), False


def _polished(network: Network, point: _Point, solver: Callable[[Floats], Floats]) -> _Point:
    """Take one more step by the matrix there is, where it leaves less."""
    better = _point(network, point.x + solver(-point.force))
    component, most = network.shape.component, np.zeros((2, *network.highest.shape))
    np.maximum.at(most[0], component, np.abs(point.force))
    np.maximum.at(most[1], component, np.abs(better.force))
    worse = ~(most[1] <= most[0])
    if worse.any():
        return _point(network, np.where(worse[component], point.x, better.x))
    return better


def _searched(network: Network, point: _Point, move: Floats, downhill: Floats) -> _Point:
    """Step along `move`; where the directional derivative has turned about, look for where it vanishes."""
    shape = network.shape
    trial = _point(network, point.x + move)
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
        trial = _point(network, point.x + length[shape.component] * move)
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
    return _point(network, point.x + np.where(searching, best, length)[shape.component] * move)
