"""Which numbers hang together: few pairs and many, against networkx."""

import networkx as nx
import numpy as np
import pytest

from wiring.circuit.sets import joined


@pytest.mark.parametrize(("count", "pairs"), [(1, 0), (5, 0), (40, 30), (3000, 2000), (9000, 6000)])
def test_sets_are_connected_components(count: int, pairs: int) -> None:
    rng = np.random.default_rng(count)
    both = rng.integers(0, count, (pairs, 2))
    graph = nx.Graph(both.tolist())
    graph.add_nodes_from(range(count))
    label = joined(both, count)
    parts = list(nx.connected_components(graph))
    assert sorted(set(label.tolist())) == list(range(len(parts)))
    for part in parts:
        assert len({int(label[n]) for n in part}) == 1
