"""Dead ends: branches no current can flow in, because one end leads nowhere.

Many are taken off at once while there are many, then one after the other.
"""

from itertools import pairwise
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
    """Which branches are dead ends, and the twigs, those nearer to what is left first."""

    dead: NDArray[np.bool_]
    twigs: Twigs
    depth: Ints  # how many twigs each hangs behind

    @property
    def layers(self) -> tuple[Twigs, ...]:
        """The twigs that hang equally deep, from the inside outwards."""
        ends = np.flatnonzero(np.diff(self.depth)) + 1
        bounds = [0, *ends.tolist(), len(self.depth)]
        return tuple(
            Twigs(*(column[begin:end] for column in self.twigs))
            for begin, end in pairwise(bounds)
            if end > begin
        )


def dead_ends(a: Ints, b: Ints, count: int) -> DeadEnds:
    """Return the dead ends of a network.

    Each node keeps the sum of its branches' numbers, so the last one left can be read off.
    """
    real = np.flatnonzero(a != b)
    degree = np.bincount(a[real], minlength=count) + np.bincount(b[real], minlength=count)
    sums = np.bincount(a[real], real, count) + np.bincount(b[real], real, count)
    left = sums.astype(np.intp)
    layers: list[Twigs] = []
    waiting = np.flatnonzero(degree == 1)
    while len(waiting) > FEW:
        branches = left[waiting]
        others = a[branches] + b[branches] - waiting
        alone = (degree[others] == 1) & (others < waiting)  # both ends of one branch: one goes, one stays
        twigs = Twigs(waiting[~alone], branches[~alone], others[~alone])
        layers.append(twigs)
        degree[twigs.nodes] = 0
        np.subtract.at(degree, twigs.others, 1)
        np.subtract.at(left, twigs.others, twigs.branches)
        waiting = np.unique(twigs.others[degree[twigs.others] == 1])
    one_by_one = _one_by_one(a, b, degree, left, waiting.tolist())
    depth = np.zeros(count, dtype=np.intp)
    for node, _, other in reversed(one_by_one):
        depth[node] = depth[other] + 1
    for layer in reversed(layers):
        depth[layer.nodes] = depth[layer.others] + 1
    rest = np.array(one_by_one, dtype=np.intp).reshape(-1, 3)
    nodes, branches, others = (
        np.concatenate([*(layer[n] for layer in layers), rest[:, n]]) for n in range(3)
    )
    return hung(Twigs(nodes, branches, others), depth[nodes], len(a))


def hung(twigs: Twigs, depth: Ints, branches: int) -> DeadEnds:
    """Return twigs in any order, with how deep each hangs, as the dead ends of so many branches."""
    inwards = np.argsort(depth, kind="stable")
    dead = np.zeros(branches, dtype=np.bool_)
    dead[twigs.branches] = True
    return DeadEnds(dead, Twigs(*(column[inwards] for column in twigs)), depth[inwards])


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
    for twigs in layers:
        rest = emf_v[twigs.branches]
        sign = np.where(a[twigs.branches] == twigs.nodes, 1.0, -1.0)
        nodes[twigs.nodes] = nodes[twigs.others] + (rest * sign if rest.ndim == 1 else rest * sign[:, None])
