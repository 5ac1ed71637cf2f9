"""Which numbers hang together: few pairs and many, against networkx."""

import networkx as nx
import numpy as np
import pytest

from wiring.circuit.sets import joined, joined_without_scipy


@pytest.mark.parametrize(("count", "pairs"), [(1, 0), (5, 0), (40, 30), (3000, 2000), (9000, 6000)])
def test_sets_are_connected_components(count: int, pairs: int) -> None:
    rng = np.random.default_rng(count)
    both = rng.integers(0, count, (pairs, 2))
    graph = nx.Graph(both.tolist())
    graph.add_nodes_from(range(count))
    parts = list(nx.connected_components(graph))
    for label in (joined(both, count), joined_without_scipy(both, count)):
        assert sorted(set(label.tolist())) == list(range(len(parts)))
        for part in parts:
            assert len({int(label[n]) for n in part}) == 1
