"""How long a wire from place to place would be: along the wireways, or straight across."""

import math
from collections.abc import Callable
from functools import cache
from itertools import pairwise

from wiring.plan.places import Point
from wiring.plan.plan import Plan
from wiring.routing.wireway_graph import WirewayGraph


def way_lengths(plan: Plan) -> Callable[[Point, Point], float]:
    """Return what tells the millimetres from place to place, as `routes` would lead a wire there."""
    if not plan.wireways:
        return math.dist
    graph = WirewayGraph(plan.wireways)

    @cache  # several ways to feed ask for the same places
    def far_mm(start: Point, end: Point) -> float:
        straight = math.dist(start, end)
        into, out_of = graph.entry(start), graph.entry(end)
        if into is None or out_of is None or into.away_mm + out_of.away_mm >= straight:
            return straight
        way = graph.way(into, out_of)
        if way is None:
            return straight
        points = [start, *(point for point, _ in way), end]
        return sum(math.dist(a, b) for a, b in pairwise(points))

    return far_mm
