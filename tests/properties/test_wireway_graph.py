"""The shortest way along wireways, against networkx's on the same stretches."""

import math
from itertools import pairwise

import networkx as nx
from hypothesis import given, settings
from hypothesis import strategies as st

from wiring.plan.wireway import Wireway
from wiring.routing.wireway_graph import WirewayGraph

coordinate = st.integers(0, 12).map(lambda i: 100.0 * i)
points = st.tuples(coordinate, coordinate)
lines = st.lists(points, min_size=2, max_size=4, unique=True)


@given(st.lists(lines, min_size=1, max_size=6), points, points)
@settings(max_examples=80, deadline=None)
def test_the_way_is_as_short_as_the_shortest_there_is(corners, one, other):
    graph = WirewayGraph(
        {f"y{i}": Wireway(id=f"y{i}", name="", points=tuple(c)) for i, c in enumerate(corners)}
    )
    start, end = graph.entry(one), graph.entry(other)
    judge = nx.Graph()
    for stretch in graph.stretches:
        judge.add_edge(rounded(stretch.a), rounded(stretch.b), weight=math.dist(stretch.a, stretch.b))
    for name, entry in (("start", start), ("end", end)):
        for corner in (entry.stretch.a, entry.stretch.b):
            judge.add_edge(name, rounded(corner), weight=math.dist(entry.at, corner))
    if start.stretch == end.stretch:
        judge.add_edge("start", "end", weight=math.dist(start.at, end.at))
    way = graph.way(start, end)
    if not nx.has_path(judge, "start", "end"):
        assert way is None
        return
    assert way[0][0] == start.at and way[-1][0] == end.at
    length = sum(math.dist(a, b) for (a, _), (b, _) in pairwise(way))
    assert math.isclose(length, nx.dijkstra_path_length(judge, "start", "end"), abs_tol=0.01)
    assert all(wireway in {s.wireway for s in graph.stretches} for _, wireway in way)


@given(st.lists(lines, min_size=1, max_size=6), points)
@settings(max_examples=80, deadline=None)
def test_the_entry_is_the_nearest_place_of_any_wireway(corners, at):
    graph = WirewayGraph(
        {f"y{i}": Wireway(id=f"y{i}", name="", points=tuple(c)) for i, c in enumerate(corners)}
    )
    entry = graph.entry(at)
    assert math.isclose(entry.away_mm, math.dist(entry.at, at))
    for way in corners:
        for (ax, ay), (bx, by) in pairwise(way):
            for share in (0.0, 0.25, 0.5, 0.75, 1.0):
                there = ax + share * (bx - ax), ay + share * (by - ay)
                assert entry.away_mm <= math.dist(there, at) + 0.001


def rounded(at):
    return round(at[0], 1), round(at[1], 1)
