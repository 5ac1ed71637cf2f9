"""Routes of wires along the wireways of a plan: shortest path from the nearest entry to the nearest exit."""

import math
from collections.abc import Iterable, Mapping
from itertools import pairwise
from typing import NamedTuple

from wiring.catalogue.kind import Kind
from wiring.plan.lengths import wire_path
from wiring.plan.names import WireId, WirewayId
from wiring.plan.places import Point
from wiring.plan.plan import Plan
from wiring.plan.wire import Wire
from wiring.routing.wireway_graph import WirewayGraph


class Route(NamedTuple):
    """The corners of a wire and the wireways it follows, both from its start to its end."""

    bends: tuple[Point, ...]
    along: tuple[WirewayId, ...]


def routes(plan: Plan, kinds: Mapping[str, Kind], ids: Iterable[WireId]) -> dict[WireId, Route]:
    """Return the route of each of those wires that a wireway serves.

    A wire stays as it is when the ways to and from the wireways are together longer than straight across:
    two neighbouring lamps are not wired by way of a beam two feet off.
    """
    graph = WirewayGraph(plan.wireways)
    found = {}
    for wire_id in ids:
        wire = plan.wires.get(wire_id)
        route = _route(plan, kinds, wire, graph) if wire is not None else None
        if route is not None:
            found[wire_id] = route
    return found


def _route(plan: Plan, kinds: Mapping[str, Kind], wire: Wire, graph: WirewayGraph) -> Route | None:
    path = wire_path(plan, kinds, wire)
    if len(path) < 2:
        return None
    start, end = path[0], path[-1]
    into, out_of = graph.entry(start), graph.entry(end)
    if into is None or out_of is None or into.away_mm + out_of.away_mm >= math.dist(start, end):
        return None
    way = graph.way(into, out_of)
    if way is None:
        return None
    bends = _without_idle((start, *(point for point, _ in way), end))[1:-1]
    along = tuple(dict.fromkeys(wireway for _, wireway in way))
    return Route(bends, along)


def _without_idle(path: tuple[Point, ...]) -> tuple[Point, ...]:
    """Return the path without points that come twice in a row or lie straight between their neighbours."""
    kept = [path[0]]
    for here, after in pairwise(path[1:]):
        before = kept[-1]
        if math.dist(here, before) < 0.01:
            continue
        cross = (here[0] - before[0]) * (after[1] - here[1]) - (here[1] - before[1]) * (after[0] - here[0])
        if abs(cross) > 1e-6 * max(math.dist(before, after), 1.0):
            kept.append(here)
    return (*kept, path[-1])
