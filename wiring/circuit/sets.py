"""Which numbers hang together when some pairs of them are joined."""

from collections.abc import Sequence

import numpy as np

from wiring.circuit.linear import Ints


def joined(pairs: Sequence[tuple[int, int]] | Ints, count: int) -> Ints:
    """Return for each of 0..count-1 the number of its set; joined numbers share one."""
    from scipy.sparse import coo_array
    from scipy.sparse.csgraph import connected_components

    both = np.asarray(pairs, dtype=np.int32).reshape(-1, 2)
    graph = coo_array((np.ones(len(both), dtype=np.int8), (both[:, 0], both[:, 1])), shape=(count, count))
    _, label = connected_components(graph, directed=False)
    return np.asarray(label, dtype=np.intp)
