"""The wireways of a plan as a graph: corners and crossings joined by the stretches between them."""

import math
from collections.abc import Mapping
from functools import partial
from itertools import combinations, pairwise
from typing import TYPE_CHECKING, Any, NamedTuple

import numpy as np

from wiring.plan.names import WirewayId
from wiring.plan.places import Point
from wiring.plan.wireway import Wireway

if TYPE_CHECKING:
    import networkx

SAME_MM = 0.5  # nearer than this, two corners are one


class Stretch(NamedTuple):
    """A straight piece of a wireway."""

    wireway: WirewayId
    a: Point
    b: Point


class Entry(NamedTuple):
    """Where a terminal meets the nearest wireway, and how far that is."""

    stretch: Stretch
    at: Point
    away_mm: float


class WirewayGraph:
    """Finds the shortest way along wireways; made once for many wires."""

    def __init__(self, wireways: Mapping[WirewayId, Wireway]) -> None:
        self.stretches = _split(
            [Stretch(way.id, a, b) for way in wireways.values() for a, b in pairwise(way.points) if a != b]
        )
        self._a = np.array([s.a for s in self.stretches], dtype=float).reshape(-1, 2)
        self._along = np.array([s.b for s in self.stretches], dtype=float).reshape(-1, 2) - self._a
        self._nodes: list[Point] = []
        self._graph = self._made()

    def entry(self, at: Point) -> Entry | None:
        """Return where the nearest wireway is met from a place; None when there is no wireway."""
        if not self.stretches:
            return None
        towards = np.array(at) - self._a
        shares = (towards * self._along).sum(axis=1) / (self._along**2).sum(axis=1)
        away = towards - self._along * shares.clip(0.0, 1.0)[:, None]
        stretch = self.stretches[int(np.argmin(np.hypot(away[:, 0], away[:, 1]).round(6)))]
        return Entry(stretch, *_nearest(stretch.a, stretch.b, at))

    def way(self, start: Entry, end: Entry) -> list[tuple[Point, WirewayId]] | None:
        """Return the points from entry to entry, each with the wireway that leads to it; None for no way."""
        if start.stretch == end.stretch:
            return [(start.at, start.stretch.wireway), (end.at, start.stretch.wireway)]
        import networkx as nx

        graph = self._graph
        for name, entry in (("start", start), ("end", end)):
            for corner in (entry.stretch.a, entry.stretch.b):
                length = math.dist(entry.at, corner)
                graph.add_edge(name, self._node(corner), weight=length, wireway=entry.stretch.wireway)
        try:
            nodes = nx.dijkstra_path(graph, "start", "end")
        except nx.NetworkXNoPath:
            return None
        else:
            ways = [graph.edges[a, b]["wireway"] for a, b in pairwise(nodes)]
            points = [start.at, *(self._nodes[n] for n in nodes[1:-1]), end.at]
            return list(zip(points, [ways[0], *ways], strict=True))
        finally:
            graph.remove_nodes_from(["start", "end"])

    def _made(self) -> "networkx.Graph[Any]":
        import networkx as nx

        graph = nx.Graph()
        for stretch in self.stretches:
            a, b = self._node(stretch.a), self._node(stretch.b)
            length = math.dist(stretch.a, stretch.b)
            if a != b and graph.get_edge_data(a, b, {"weight": math.inf})["weight"] > length:
                graph.add_edge(a, b, weight=length, wireway=stretch.wireway)
        return graph

    def _node(self, at: Point) -> int:
        for index, point in enumerate(self._nodes):
            if math.dist(point, at) <= SAME_MM:
                return index
        self._nodes.append(at)
        return len(self._nodes) - 1


def _split(stretches: list[Stretch]) -> list[Stretch]:
    """Return the stretches cut where others cross or touch them."""
    cuts: dict[int, list[Point]] = {i: [] for i in range(len(stretches))}
    for (i, one), (j, other) in combinations(enumerate(stretches), 2):
        for at in _meeting(one, other):
            cuts[i].append(at)
            cuts[j].append(at)
    made = []
    for i, stretch in enumerate(stretches):
        inner = [p for p in cuts[i] if min(math.dist(p, stretch.a), math.dist(p, stretch.b)) > SAME_MM]
        inner.sort(key=partial(math.dist, stretch.a))
        made += [Stretch(stretch.wireway, a, b) for a, b in pairwise([stretch.a, *inner, stretch.b])]
    return [s for s in made if math.dist(s.a, s.b) > 1e-6]


def _meeting(one: Stretch, other: Stretch) -> list[Point]:
    """Return where two stretches cross, or where an end of one lies on the other."""
    touching = [p for p in (one.a, one.b) if _nearest(other.a, other.b, p)[1] <= SAME_MM]
    touching += [p for p in (other.a, other.b) if _nearest(one.a, one.b, p)[1] <= SAME_MM]
    if touching:
        return touching
    (ax, ay), (bx, by), (cx, cy), (dx, dy) = one.a, one.b, other.a, other.b
    cross = (bx - ax) * (dy - cy) - (by - ay) * (dx - cx)
    if abs(cross) < 1e-9:
        return []
    t = ((cx - ax) * (dy - cy) - (cy - ay) * (dx - cx)) / cross
    u = ((cx - ax) * (by - ay) - (cy - ay) * (bx - ax)) / cross
    inside = 0 <= t <= 1 and 0 <= u <= 1
    return [(ax + t * (bx - ax), ay + t * (by - ay))] if inside else []


def _nearest(a: Point, b: Point, at: Point) -> tuple[Point, float]:
    dx, dy = b[0] - a[0], b[1] - a[1]
    share = ((at[0] - a[0]) * dx + (at[1] - a[1]) * dy) / (dx * dx + dy * dy)
    share = min(max(share, 0.0), 1.0)
    found = a[0] + share * dx, a[1] + share * dy
    return found, math.dist(found, at)
