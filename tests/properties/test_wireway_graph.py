"""The shortest way along wireways, against networkx's on the same stretches."""

import math
from itertools import pairwise

import networkx as nx
from hypothesis import assume, given, settings
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


corner = st.tuples(st.integers(-9, 9), st.integers(-9, 9)).map(lambda at: (100.0 * at[0], 100.0 * at[1]))


def side(a, b, p) -> float:
    """On which side of the line from a to b a place lies; nought on it."""
    return (b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0])


@settings(deadline=None, max_examples=200)
@given(corner, corner, corner, corner)
def test_two_straight_wireways_are_cut_where_each_has_the_ends_of_the_other_on_both_sides(a, b, c, d):
    sides = side(a, b, c), side(a, b, d), side(c, d, a), side(c, d, b)
    assume(all(sides))
    ways = {name: Wireway(id=name, name=name, points=ends) for name, ends in (("x", (a, b)), ("y", (c, d)))}
    cross = (sides[0] > 0) is not (sides[1] > 0) and (sides[2] > 0) is not (sides[3] > 0)
    assert len(WirewayGraph(ways).stretches) == (4 if cross else 2)
