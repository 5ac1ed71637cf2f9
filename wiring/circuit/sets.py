"""Which numbers hang together when some pairs of them are joined."""

from collections.abc import Sequence

import numpy as np

from wiring.circuit.linear import Ints

FEW = 10_000  # pairs; then it is quicker than loading scipy


def joined(pairs: Sequence[tuple[int, int]] | Ints, count: int) -> Ints:
    """Return for each of 0..count-1 the number of its set; joined numbers share one."""
    both = np.asarray(pairs, dtype=np.intp).reshape(-1, 2)
    if len(both) <= FEW:
        return joined_without_scipy(both, count)
    from scipy.sparse import csr_array
    from scipy.sparse.csgraph import connected_components

    places = both.astype(np.int32)
    ones = np.ones(len(both), dtype=np.int8)
    graph = csr_array((ones, (places[:, 0], places[:, 1])), shape=(count, count))
    _, label = connected_components(graph, directed=False)
    return np.asarray(label, dtype=np.intp)


def joined_without_scipy(pairs: Ints, count: int) -> Ints:
    """Return the same: each set hangs itself under its lowest neighbour, again and again."""
    above = np.arange(count)
    one, other = pairs[:, 0], pairs[:, 1]
    while len(one):
        one, other = above[one], above[other]
        apart = one != other
        one, other = one[apart], other[apart]
        np.minimum.at(above, np.maximum(one, other), np.minimum(one, other))
        while True:
            higher = above[above]
            if np.array_equal(higher, above):
                break
            above = higher
    is_root = above == np.arange(count)
    return np.asarray((np.cumsum(is_root) - 1)[above], dtype=np.intp)
