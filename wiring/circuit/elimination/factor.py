"""The numbers of an elimination: weights only, never diagonals, so nothing is lost by subtraction.

All arrays may have a second axis, one column a network of the same shape.
"""

from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from wiring.circuit.elimination.core import Core, core_of
from wiring.circuit.elimination.rounds import Ints, Order, Round
from wiring.circuit.elimination.sums import Summing

Floats = NDArray[np.float64]


class Taken(NamedTuple):
    """One round's numbers: each leaving node's share towards the other end of each link, one over its sum."""

    shares: Floats
    inverse: Floats


class Plan(NamedTuple):
    """An order with its sums made ready."""

    order: Order
    start: Summing
    by_node: tuple[Summing, ...]  # of links, to the leaving node
    to_others: tuple[Summing, ...]  # of links, to the nodes left
    merging: tuple[Summing, ...]


def plan_of(order: Order) -> Plan:
    """Return an order made ready for numbers."""
    total, rounds = len(order.nodes), order.rounds
    return Plan(
        order,
        Summing(order.slots, order.before),
        tuple(Summing(r.own, r.end - r.begin) for r in rounds),
        tuple(Summing(r.others, total - r.end) for r in rounds),
        tuple(Summing(r.slots, r.after) for r in rounds),
    )


class Factor:
    """A network made ready for right sides."""

    def __init__(self, plan: Plan, weights: Floats, ground: Floats) -> None:
        """Take the weight of every link between two nodes, and every node's to the held ones."""
        self._plan = plan
        self._taken: list[Taken] = []
        now = plan.start(weights)
        held = ground[plan.order.nodes]
        for place, step in enumerate(plan.order.rounds):
            now = self._take(place, step, now, held)
        self._core: Core | None = None
        begin = len(held) - plan.order.core
        if plan.order.core:
            self._core = core_of(plan.order.core_a, plan.order.core_b, now, held[begin:])

    def _take(self, place: int, step: Round, now: Floats, held: Floats) -> Floats:
        links = now[step.links]
        mine = held[step.begin : step.end]
        total = self._plan.by_node[place](links) + mine
        total[total == 0.0] = np.inf  # held by nothing: rests at nought
        inverse = 1.0 / total
        shares = links * inverse[step.own]
        held[step.end :] += self._plan.to_others[place](shares * mine[step.own])
        self._taken.append(Taken(shares, inverse))
        between = shares[step.one] * links[step.other]
        return self._plan.merging[place](np.concatenate((now[step.kept], between)))

    def solve(self, right: Floats) -> Floats:
        """Return the node voltages for currents pushed into the nodes; a node held by nothing gets nought."""
        order, plan = self._plan.order, self._plan
        x = right[order.nodes]
        for place, (step, taken) in enumerate(zip(order.rounds, self._taken, strict=True)):
            pushed = x[step.begin : step.end]
            x[step.end :] += plan.to_others[place](taken.shares * pushed[step.own])
        if self._core is not None:
            begin = len(x) - order.core
            x[begin:] = self._core(x[begin:])
        for place in range(len(order.rounds) - 1, -1, -1):
            step, taken = order.rounds[place], self._taken[place]
            mine = x[step.begin : step.end]
            mine *= taken.inverse
            mine += plan.by_node[place](taken.shares * x[step.end :][step.others])
        return x[order.place]


def factored(plan: Plan, weights: Floats, ground: Floats) -> Factor:
    """Return a network's factor; ArithmeticError where its core has no solution."""
    return Factor(plan, weights, ground)


__all__ = ["Factor", "Ints", "Plan", "factored", "plan_of"]
