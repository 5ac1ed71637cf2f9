"""In which order nodes are taken out of a network, worked out once for each shape of it.

Each round takes out nodes of few neighbours of which no two are neighbours themselves, so that all of them
go at once. Taking a node out joins its neighbours to one another (star to mesh); links that come to lie side
by side become one. What no longer shrinks is the core.
"""

from typing import Any, NamedTuple

import numpy as np
from numpy.typing import NDArray

Ints = NDArray[np.integer[Any]]
Flags = NDArray[np.bool_]
MOST_NEIGHBOURS = 6  # of a node that is taken out in a round: more, and it joins too many others
LEAST_SHARE = 0.1  # of the nodes left; fewer in a round, and the rest is a core
SMALL_CORE = 12  # nodes; from here on one after the other is quicker
SWEEPS = 2  # over the candidates of a round: the second finds more that can go with those already found


# Of each number of eight binary digits: these mirrored, as a share of one.
MIRRORED = np.sum((np.arange(256)[:, None] >> np.arange(8) & 1) * 0.5 ** np.arange(1, 9), axis=1)


class Round(NamedTuple):
    """Nodes `begin` to `end` of the order leave; they have `links` to others, listed node by node."""

    begin: int
    end: int
    links: Ints  # places in the weights before this round
    own: Ints  # which of the leaving nodes each link is of, from nought
    others: Ints  # the other node of each link, counted from `end`
    one: Ints  # pairs of links of one node, which become a link between the other ends
    other: Ints
    kept: Ints  # places of the weights that stay
    slots: Ints  # where what is kept and then what is new goes in the weights after this round
    after: int  # weights after this round


class Order(NamedTuple):
    """The whole order: `place` is each node's, `slots` where each link's weight goes at the beginning."""

    place: Ints
    nodes: Ints  # the nodes in their order
    slots: Ints  # of the links between two nodes
    before: int
    rounds: tuple[Round, ...]
    core_a: Ints  # ends of the links that are left, counted from the first node of the core
    core_b: Ints

    @property
    def core(self) -> int:
        """Nodes that are left after the last round."""
        return len(self.nodes) - (self.rounds[-1].end if self.rounds else 0)


def order_of(a: Ints, b: Ints, count: int) -> Order:
    """Return the order for a network of `count` nodes with links from a to b, none to itself."""
    one, other, slots = _merged(a.astype(np.int32), b.astype(np.int32), count)
    before = len(one)
    names = np.arange(count, dtype=np.int32)  # the nodes that are left
    scatter = _scattered(count)
    gone: list[Ints] = []
    rough: list[Round] = []
    ends: list[Ints] = []
    taken = 0
    while len(names) > SMALL_CORE:
        left = len(names)
        degree = np.bincount(one, minlength=left) + np.bincount(other, minlength=left)
        leaves = _independent(one, other, degree, scatter[names])
        nodes = np.flatnonzero(leaves)
        size = len(nodes)
        if size < LEAST_SHARE * left:
            break
        by_one, by_other = leaves[one], leaves[other]
        links, own, far = _links(one, other, np.flatnonzero(by_one), np.flatnonzero(by_other))
        rank = np.cumsum(leaves)
        stay = np.flatnonzero(~leaves)
        renamed = np.arange(left) - rank  # of those that stay
        first, second = _pairs(own, degree)
        kept = np.flatnonzero(~(by_one | by_other))
        new_a = renamed[np.concatenate((one[kept], far[first]))]
        new_b = renamed[np.concatenate((other[kept], far[second]))]
        one, other, joined = _merged(new_a, new_b, len(stay))
        rough.append(
            Round(taken, taken + size, links, rank[own] - 1, far, first, second, kept, joined, len(one))
        )
        ends.append(names[far])
        gone.append(names[nodes])
        names = names[stay]
        taken += size
    nodes = np.concatenate((*gone, names)).astype(np.intp)
    place = np.empty(count, dtype=np.intp)
    place[nodes] = np.arange(count)
    rounds = tuple(made._replace(others=place[far] - made.end) for made, far in zip(rough, ends, strict=True))
    return Order(place, nodes, slots, before, rounds, one.astype(np.intp), other.astype(np.intp))


def _scattered(count: int) -> NDArray[np.float64]:
    """Return a fixed number below one for each node: ties between neighbours are broken by it.

    The nodes' numbers with their binary digits mirrored behind the point, so that along a row of nodes
    numbered in even steps every other one goes, and again every other one of those left.
    """
    nodes = np.arange(count)
    low, middle, high = (MIRRORED[nodes >> shift & 255] for shift in (0, 8, 16))
    return np.asarray(low + (middle + high / 256.0) / 256.0)


def _independent(one: Ints, other: Ints, degree: Ints, scatter: NDArray[np.float64]) -> Flags:
    """Return nodes with few neighbours of which no two are neighbours.

    Of two neighbours that of the higher score gives way; who has too many neighbours always scores higher.
    """
    score = degree + scatter
    free = degree <= MOST_NEIGHBOURS
    chosen = np.zeros(len(degree), dtype=np.bool_)
    for sweep in range(SWEEPS):
        if sweep:
            free[one[chosen[other]]] = False
            free[other[chosen[one]]] = False
            free &= ~chosen
            score[~free] = np.inf
        picked = free.copy()
        picked[np.where(score[one] < score[other], other, one)] = False
        chosen |= picked
    return chosen


def _links(one: Ints, other: Ints, from_one: Ints, from_other: Ints) -> tuple[Ints, Ints, Ints]:
    """Return the links of leaving nodes, node by node: place, the node, the other end."""
    links = np.concatenate((from_one, from_other))
    own = np.concatenate((one[from_one], other[from_other]))
    far = np.concatenate((other[from_one], one[from_other]))
    order = np.argsort(own)
    return links[order], own[order], far[order]


def _pairs(own: Ints, degree: Ints) -> tuple[Ints, Ints]:
    """Return all pairs of links of one node; `own` is the node of each link, those of one node in a row."""
    count = len(own)
    new = np.empty(count, dtype=np.bool_)
    new[:1] = True
    np.not_equal(own[1:], own[:-1], out=new[1:])
    begin = np.flatnonzero(new)
    after = np.repeat(begin + degree[own[begin]], degree[own[begin]])  # where the next node's links begin
    later = after - np.arange(1, count + 1)  # links of the same node that follow
    first = np.repeat(np.arange(count), later)
    second = np.arange(1, len(first) + 1) + first - np.repeat(np.cumsum(later) - later, later)
    return first, second


def _merged(a: Ints, b: Ints, count: int) -> tuple[Ints, Ints, Ints]:
    """Return links with those side by side made one, and where each went."""
    low, high = np.minimum(a, b), np.maximum(a, b)
    key = low.astype(np.int64) * count + high
    if count < 46_000:
        key = key.astype(np.int32)
    order = np.argsort(key)
    ranked = key[order]
    new = np.empty(len(key), dtype=np.bool_)
    new[:1] = True
    np.not_equal(ranked[1:], ranked[:-1], out=new[1:])
    slots = np.empty(len(key), dtype=np.intp)
    slots[order] = np.cumsum(new) - 1
    first = order[new]
    return low[first], high[first], slots
