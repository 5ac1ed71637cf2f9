"""The linear step: a weighted graph Laplacian, made ready for each set of branch slopes."""

from collections.abc import Callable
from functools import cached_property

import numpy as np
from numpy.typing import NDArray

from wiring.circuit.elimination.factor import Factor, Plan, plan_of
from wiring.circuit.elimination.rounds import order_of
from wiring.circuit.elimination.sums import Summing

Floats = NDArray[np.float64]
Ints = NDArray[np.intp]


class Pattern:
    """Which nodes the branches of a network join; nodes from `free` upwards are held at given volts."""

    def __init__(self, a: Ints, b: Ints, free: int) -> None:
        self.free = free
        low, high = np.minimum(a, b), np.maximum(a, b)
        self._inner = np.flatnonzero((high < free) & (low != high))
        self._a, self._b = a[self._inner], b[self._inner]
        self._outer = np.flatnonzero((low < free) & (high >= free))
        self._held = Summing(low[self._outer], free)

    @cached_property
    def plan(self) -> Plan:
        """The order in which nodes are taken out, worked out when it is first asked for."""
        return plan_of(order_of(self._a, self._b, self.free))

    def solver(self, slopes: Floats, shunt_s: float = 0.0) -> Callable[[Floats], Floats]:
        """Return a function that solves J x = right for these branch slopes; raises ArithmeticError.

        One column a network where `slopes` has two axes. `shunt_s` joins every node to the held ones besides.
        """
        ground = self._held(slopes[self._outer])
        if shunt_s:
            ground += shunt_s
        return Factor(self.plan, slopes[self._inner], ground).solve
