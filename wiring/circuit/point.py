"""A network at one set of node voltages, and the one it came to rest at last, taken up again."""

from collections.abc import Callable
from typing import NamedTuple

import numpy as np

from wiring.circuit.linear import Floats
from wiring.circuit.network import Network

Solve = Callable[[Floats], Floats]
MOST_CHANGED = 0.1  # of the branches; if more have changed, all are worked out anew


class Point(NamedTuple):
    """Voltages of nodes and branches, currents and slopes of branches, and what is left over at each node."""

    x: Floats
    volts: Floats
    amps: Floats
    slopes: Floats
    force: Floats


class Rest(NamedTuple):
    """Where a network came to rest, and the matrix it was found with."""

    network: Network
    point: Point
    solver: Solve


def point_at(network: Network, x: Floats) -> Point:
    """Return a network at certain node voltages."""
    volts = network.volts(x)
    amps, slopes = network.currents(volts)
    return Point(x, volts, amps, slopes, network.sums(amps))


def resumed(network: Network, rest: Rest) -> Point:
    """Return a network at the node voltages that one of the same shape had at rest.

    Only branches with other values than there are worked out.
    """
    changed = network.values != rest.network.values
    if network.behind is not None and rest.network.behind is not None:
        changed[:, 0] |= network.behind != rest.network.behind
    branches = np.flatnonzero(changed.any(axis=1))
    if len(branches) > MOST_CHANGED * len(network.a):
        return point_at(network, rest.point.x)
    volts, amps, slopes = rest.point.volts, rest.point.amps.copy(), rest.point.slopes.copy()
    amps[branches], slopes[branches] = network.some_currents(branches, volts[branches])
    return Point(rest.point.x, volts, amps, slopes, network.sums(amps))
