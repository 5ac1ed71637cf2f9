"""Which numbers hang together when some pairs of them are joined."""

import sys
from collections.abc import Sequence

import numpy as np

from wiring.circuit.linear import Ints

FEW = 4000  # pairs; then it is quicker than loading scipy, where nobody else has loaded it


def joined(pairs: Sequence[tuple[int, int]] | Ints, count: int) -> Ints:
    """Return for each of 0..count-1 the number of its set; joined numbers share one."""
    both = np.asarray(pairs, dtype=np.intp).reshape(-1, 2)
    if len(both) <= FEW and "scipy.sparse.csgraph" not in sys.modules:
        return joined_without_scipy(both, count)
    from scipy.sparse import csr_array
    from scipy.sparse.csgraph import connected_components

    places = both.astype(np.int32)
    ones = np.ones(len(both), dtype=np.int8)
    graph = csr_array((ones, (places[:, 0], places[:, 1])), shape=(count, count))
    _, label = connected_components(graph, directed=False)
    return np.asarray(label, dtype=np.intp)


def joined_without_scipy(pairs: Ints, count: int) -> Ints:
    """Return the same, one pair after the other."""
    return _numbered(_roots(pairs, count))


def _roots(pairs: Ints, count: int) -> Ints:
    """Return for each number one of its set, the same for all of it."""
    parent = list(range(count))
    for one, other in pairs.tolist():
        while parent[one] != one:
            parent[one] = one = parent[parent[one]]
        while parent[other] != other:
            parent[other] = other = parent[parent[other]]
        if one < other:
            parent[other] = one
        else:
            parent[one] = other
    above = np.array(parent, dtype=np.intp)
    while True:
        higher = above[above]
        if np.array_equal(higher, above):
            return above
        above = higher


def _numbered(roots: Ints) -> Ints:
    """Return the sets numbered from nought."""
    is_root = roots == np.arange(len(roots))
    return np.asarray((np.cumsum(is_root) - 1)[roots], dtype=np.intp)
