"""The best way from one terminal to every other: past the fewest loads, then at the least cost in wire."""

import heapq
from collections.abc import Mapping
from typing import NamedTuple

from wiring.plan.names import TerminalRef, WireId
from wiring.studies.joints import Joints, Link


class Way(NamedTuple):
    """How one terminal is reached."""

    loads: int  # loads passed on the way; a way past fewer of them is the one that feeds
    cost: float
    back: tuple[TerminalRef, str] | None  # where it came from, and the wire ("" for none)


Ways = dict[TerminalRef, Way]


def ways_from(joints: Joints, start: TerminalRef, through: int, costs: Mapping[WireId, float]) -> Ways:
    """Return the best way to every terminal reached through those links; what is no wire costs nothing.

    A wire without a cost is none: it could not be calculated.

    Dijkstra's algorithm; written out because the order is by loads first, and for speed.
    """
    done: Ways = {}
    heap: list[tuple[int, float, TerminalRef, tuple[TerminalRef, str] | None]] = [(0, 0.0, start, None)]
    while heap:
        loads, cost, here, back = heapq.heappop(heap)
        if here in done:
            continue
        done[here] = Way(loads, cost, back)
        for to, link, via in joints.edges.get(here, ()):
            if to in done or not link & through:
                continue
            if link == Link.WIRE:
                if via in costs:
                    heapq.heappush(heap, (loads, cost + costs[via], to, (here, via)))
            else:
                heapq.heappush(heap, (loads + (link == Link.LOAD), cost, to, (here, "")))
    return done


def wires_back(ways: Ways, ref: TerminalRef) -> list[WireId]:
    """Return the wires of the way to a terminal, from there back to the start."""
    wires: list[WireId] = []
    back = ways[ref].back
    while back is not None:
        if back[1]:
            wires.append(back[1])
        back = ways[back[0]].back
    return wires
