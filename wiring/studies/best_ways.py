"""The best way from one terminal to every other: past the fewest loads, then at the least cost in wire.

Of equal ways the one of the fewest steps counts, then the one over the terminal and wire that come first in
their order, so that the same one is taken in whatever order wires were drawn. What was found last time is
put right where costs or joints have changed since: a way is the best as long as no step from any other
terminal is better, and that is looked at for all terminals at once.
"""

import heapq
from collections.abc import Mapping, Sequence
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from wiring.circuit.linear import Floats, Ints
from wiring.plan.names import TerminalRef, WireId
from wiring.studies.joints import Joints
from wiring.studies.keeping import kept
from wiring.studies.nets import Net
from wiring.studies.ways import FAR, Labels, Ways

Flags = NDArray[np.bool_]


def ways_from(joints: Joints, start: TerminalRef, through: int, costs: Mapping[WireId, float]) -> Ways:
    """Return the best way to every terminal reached through those links; what is no wire costs nothing.

    A wire without a cost is none: it could not be calculated.
    """
    net = joints.net(through, start)
    return best_ways(net, start, np.array([costs.get(name, np.inf) for name in net.wire_names], dtype=float))


class WireCosts:
    """Costs of wires in rows of their own, infinite for none, as the nets of one plan ask for them."""

    def __init__(self, rows: Mapping[WireId, int], costs: Floats) -> None:
        """Take the row of each wire, the same object as long as it holds the same, and the costs."""
        self._rows, self._costs = rows, np.append(costs, np.inf)
        self._names: Sequence[WireId] = ()
        self._found: Floats = self._costs[:0]

    def of(self, net: Net) -> Floats:
        """Return the costs of a net's wires."""
        if self._names is not net.wire_names:
            self._names = net.wire_names
            self._found = self._costs[kept(_places, net.wire_names, self._rows)]
        return self._found

    def leave(self, ways: Ways) -> bool:
        """Whether ways are as good by these costs: no wire that could be gone along has another."""
        mine = self.of(ways.net)
        if ways.costs is mine:
            return True
        others = np.flatnonzero(ways.costs != mine)
        if not len(others):
            self._found = ways.costs  # so that the next one is told at once
        return not ways.over[others].any()


_known: dict[tuple[TerminalRef, int], tuple[Ways, ...]] = {}  # the last from each start, in other nets
_KNOWN_MOST, _NETS_MOST = 128, 2


def kept_ways(joints: Joints, start: TerminalRef, through: int, costs: WireCosts) -> Ways:
    """Return the same by the costs of all wires, from what was found there last."""
    net = joints.net(through, start)
    known = _known.get((start, through), ())
    last = next((ways for ways in known if ways.net is net), known[0] if known else None)
    if last is not None and last.net is net and costs.leave(last):
        if last is known[0]:
            return last
        found = last
    else:
        found = best_ways(net, start, costs.of(net), last)
    if len(_known) >= _KNOWN_MOST:
        _known.clear()
    _known[start, through] = (found, *(ways for ways in known if ways.net is not found.net))[:_NETS_MOST]
    return found


def _places(names: Sequence[WireId], rows: Mapping[WireId, int]) -> Ints:
    return np.fromiter((rows.get(name, -1) for name in names), dtype=np.intp, count=len(names))


def best_ways(net: Net, start: TerminalRef, costs: Floats, last: Ways | None = None) -> Ways:
    """Return the best ways by costs of the net's wires, infinite for none; `last` only makes it quicker.

    It is what was found from the same start.
    """
    from_here, steps = net.number[start], _steps(net, costs)
    if last is not None and last.net.refs is net.refs and last.net.wire_names is net.wire_names:
        if _as_before(net, steps, last):
            return last
        found = _put_right(net, from_here, steps, costs, last)
        if found is not None:
            return Ways(net, costs, *found)
    size = len(net.refs)
    nowhere = Labels(np.full(size, FAR), np.full(size, np.inf), np.full(size, FAR))
    for column in nowhere:
        column[from_here] = 0
    labels = _walked(net, steps, nowhere, np.flatnonzero(net.head == from_here))
    return Ways(net, costs, labels, _looked_at(net, from_here, steps, labels).back)


class _Steps(NamedTuple):
    """Of each row of a net: loads and cost of the step; a wire that is none leads farther than far."""

    loads: Ints
    cost: Floats


class _Look(NamedTuple):
    back: Ints  # of each terminal the row that leads back
    lost: Flags  # whether it has none though it should
    better: Ints  # rows by which a terminal is reached better


def _steps(net: Net, costs: Floats) -> _Steps:
    cost = np.append(costs, 0.0)[net.wire]
    return _Steps(np.where(np.isfinite(cost), net.load, 2 * FAR), cost)


def _as_before(net: Net, steps: _Steps, last: Ways) -> bool:
    """Whether all steps from what was reached are what they were: nothing else can be reached then."""
    reached, was = last.labels.loads < FAR, last.net
    rows, rows_then = np.flatnonzero(reached[net.tail]), np.flatnonzero(reached[was.tail])
    if len(rows) != len(rows_then):
        return False
    cost = np.append(last.costs, 0.0)[was.wire[rows_then]]
    return np.array_equal(cost, steps.cost[rows]) and all(
        np.array_equal(one[rows_then], other[rows])
        for one, other in (
            (was.tail, net.tail),
            (was.head, net.head),
            (was.wire, net.wire),
            (was.load, net.load),
        )
    )


def _looked_at(net: Net, start: int, steps: _Steps, labels: Labels) -> _Look:
    """Look at every step: a row is taken as one from its head to its tail, for all are there both ways."""
    tail, head = net.tail, net.head
    loads, cost, count = (column[head] for column in labels)
    loads, cost, count = loads + steps.loads, cost + steps.cost, count + 1
    now_loads, now_cost, now_count = (column[tail] for column in labels)
    other_loads, other_cost = loads != now_loads, cost != now_cost
    better = np.where(
        other_loads, loads < now_loads, np.where(other_cost, cost < now_cost, count < now_count)
    )
    same = np.flatnonzero(~(other_loads | other_cost | (count != now_count)) & (loads < FAR))[::-1]
    back = np.full(len(net.refs), -1, dtype=np.intp)
    back[tail[same]] = same  # of several the first, since it is written last
    back[start] = -1
    lost = (back < 0) & (labels.loads < FAR)
    lost[start] = False
    return _Look(back, lost, np.flatnonzero(better))


def _put_right(net: Net, start: int, steps: _Steps, costs: Floats, last: Ways) -> tuple[Labels, Ints] | None:
    """Return what is reached and by which rows, from what was reached last; None if that did not come out.

    The ways of last time are priced anew; where one is no more, all beyond it are looked for again.
    """
    order = np.argsort(last.labels.steps, kind="stable")[1 : len(last)]
    rows = last.back[order]
    walked, before = order.tolist(), last.net.head[rows].tolist()
    cost = last.labels.cost.tolist()
    price = np.append(costs, 0.0)[last.net.wire[rows]].tolist()
    for at, came_from, more in zip(walked, before, price, strict=True):
        cost[at] = cost[came_from] + more
    labels = Labels(last.labels.loads, np.array(cost), last.labels.steps)
    look = _looked_at(net, start, steps, labels)
    if look.lost.any():
        lost = look.lost.tolist()
        for at, came_from in zip(walked, before, strict=True):
            lost[at] = lost[at] or lost[came_from]
        gone = np.array(lost)
        labels = Labels(
            np.where(gone, FAR, labels.loads),
            np.where(gone, np.inf, labels.cost),
            np.where(gone, FAR, labels.steps),
        )
        look = _looked_at(net, start, steps, labels)
    if len(look.better):
        labels = _walked(net, steps, labels, look.better)
        look = _looked_at(net, start, steps, labels)
    return None if look.lost.any() or len(look.better) else (labels, look.back)


def _walked(net: Net, steps: _Steps, labels: Labels, rows: Ints) -> Labels:
    """Return what is reached when those rows are gone along, and all that they make better.

    Dijkstra's algorithm; written out because the order is by loads first, and for speed.
    """
    loads, cost, count = (column.tolist() for column in labels)
    more_loads, more_cost = steps.loads.tolist(), steps.cost.tolist()
    head, first = net.lists
    heap: list[tuple[int, float, int, int]] = []
    push, pop = heapq.heappush, heapq.heappop
    tails = net.tail[rows].tolist()
    for row, at in zip(rows.tolist(), tails, strict=True):
        back = head[row]
        new = loads[back] + more_loads[row], cost[back] + more_cost[row], count[back] + 1
        if new < (loads[at], cost[at], count[at]):
            loads[at], cost[at], count[at] = new
            push(heap, (*new, at))
    while heap:
        now_loads, now_cost, now_count, here = pop(heap)
        if (now_loads, now_cost, now_count) != (loads[here], cost[here], count[here]):
            continue
        for row in range(first[here], first[here + 1]):
            to = head[row]
            new = now_loads + more_loads[row], now_cost + more_cost[row], now_count + 1
            if new < (loads[to], cost[to], count[to]):
                loads[to], cost[to], count[to] = new
                push(heap, (*new, to))
    return Labels(np.array(loads), np.array(cost), np.array(count))
