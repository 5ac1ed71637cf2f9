"""Resistance between two nodes of random meshes, against networkx's resistance distance."""

import random

import networkx as nx
import pytest
from support.bare import ohms, solve_branches, volts


@pytest.mark.parametrize("seed", range(40))
def test_mesh_resistance_is_the_resistance_distance(seed: int) -> None:
    pick = random.Random(seed)
    size = pick.randint(3, 40)
    mesh = nx.MultiGraph()
    tree = nx.random_labeled_tree(size, seed=seed)
    ties = [(pick.randrange(size), pick.randrange(size)) for _ in range(pick.randint(0, 2 * size))]
    for one, other in [*tree.edges, *((a, b) for a, b in ties if a != b)]:
        mesh.add_edge(one, other, ohms=10 ** pick.uniform(-2, 4))
    one, other = pick.sample(range(size), 2)
    # A source of 1 V behind 1 ohm: what is left of the volts over what flows is the resistance.
    branches = [ohms(f"n{a}", f"n{b}", d["ohms"]) for a, b, d in mesh.edges(data=True)]
    nodes, amps = solve_branches([volts(f"n{one}", f"n{other}", 1.0, 1.0), *branches], ground=f"n{other}")
    found = nodes[f"n{one}"] / -amps[0]
    assert found == pytest.approx(nx.resistance_distance(mesh, one, other, weight="ohms"), rel=1e-8)
