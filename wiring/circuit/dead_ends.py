"""Dead ends: branches no current can flow in, because one end leads nowhere.

Many are taken off at once while there are many, then one after the other.
"""

from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from wiring.circuit.linear import Floats, Ints

FEW = 24  # nodes; one after the other is quicker then


class Twigs(NamedTuple):
    """Nodes that only one branch holds, that branch, and the node at its other end; many at once."""

    nodes: Ints
    branches: Ints
    others: Ints


class DeadEnds(NamedTuple):
    """Which branches are dead ends, and the twigs layer by layer as they were taken off."""

    dead: NDArray[np.bool_]
    layers: tuple[Twigs, ...]


def dead_ends(a: Ints, b: Ints, count: int) -> DeadEnds:
    """Return the dead ends of a network.

    Each node keeps the sum of its branches' numbers, so the last one left can be read off.
    """
    real = np.flatnonzero(a != b)
    degree = np.bincount(a[real], minlength=count) + np.bincount(b[real], minlength=count)
    sums = np.bincount(a[real], real, count) + np.bincount(b[real], real, count)
    left = sums.astype(np.intp)
    dead = np.zeros(len(a), dtype=np.bool_)
    layers: list[Twigs] = []
    waiting = np.flatnonzero(degree == 1)
    while len(waiting) > FEW:
        branches = left[waiting]
        others = a[branches] + b[branches] - waiting
        alone = (degree[others] == 1) & (others < waiting)  # both ends of one branch: one goes, one stays
        twigs = Twigs(waiting[~alone], branches[~alone], others[~alone])
        layers.append(twigs)
        dead[twigs.branches] = True
        degree[twigs.nodes] = 0
        np.subtract.at(degree, twigs.others, 1)
        np.subtract.at(left, twigs.others, twigs.branches)
        waiting = np.unique(twigs.others[degree[twigs.others] == 1])
    one_by_one = _one_by_one(a, b, degree, left, waiting.tolist())
    if one_by_one:
        nodes, taken, others = (np.array(column, dtype=np.intp) for column in zip(*one_by_one, strict=True))
        dead[taken] = True
        layers += [
            Twigs(nodes[n : n + 1], taken[n : n + 1], others[n : n + 1]) for n in range(len(one_by_one))
        ]
    return DeadEnds(dead, tuple(layers))


def _one_by_one(a: Ints, b: Ints, degree: Ints, left: Ints, waiting: list[int]) -> list[tuple[int, int, int]]:
    twigs: list[tuple[int, int, int]] = []
    while waiting:
        node = waiting.pop()
        if degree[node] != 1:
            continue
        branch = int(left[node])
        other = int(a[branch] + b[branch] - node)
        twigs.append((node, branch, other))
        degree[node] = 0
        degree[other] -= 1
        left[other] -= branch
        if degree[other] == 1:
            waiting.append(other)
    return twigs


def hang(layers: tuple[Twigs, ...], emf_v: Floats, a: Ints, nodes: Floats) -> None:
    """Give the nodes of dead ends their volts, from the inside outwards; `emf_v` is each resting branch's."""
    for twigs in reversed(layers):
        rest = emf_v[twigs.branches]
        sign = np.where(a[twigs.branches] == twigs.nodes, 1.0, -1.0)
        nodes[twigs.nodes] = nodes[twigs.others] + (rest * sign if rest.ndim == 1 else rest * sign[:, None])
