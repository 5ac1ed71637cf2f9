"""What is left when rounds no longer help: a few nodes, or a mesh in which every node has many neighbours."""

from collections.abc import Callable
from functools import partial
from typing import Any

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]
Ints = NDArray[np.integer[Any]]
Core = Callable[[Floats], Floats]
MOST_DENSE = 200  # nodes; above, the sparse factors of scipy win
LEAST_SHUNT = 1e-16  # of the heaviest node: the sparse factors fail where nothing holds a node


def core_of(a: Ints, b: Ints, weights: Floats, ground: Floats) -> Core:
    """Return a function that solves the core; ArithmeticError where it has no solution."""
    if len(ground) > MOST_DENSE:
        return _sparse(a, b, weights, ground)
    return _dense(a, b, weights, ground)


def _dense(a: Ints, b: Ints, weights: Floats, ground: Floats) -> Core:
    """Take one node after the other out of a full table of weights, again without subtraction.

    The table's last column is what holds the nodes.
    """
    count = len(ground)
    table = np.zeros((count + 1, count + 1, *weights.shape[1:]))
    table[a, b] = table[b, a] = weights
    table[:count, count] = ground
    inverses = np.zeros_like(ground)
    for node in range(count):
        rest = table[node, node + 1 :]
        total = np.add.reduce(rest)
        inverses[node] = inverse = 1.0 / np.where(total == 0.0, np.inf, total)
        shares = rest * inverse
        table[node + 1 :, node + 1 :] += shares[:, None] * rest
        table[node, node + 1 :] = shares
    return partial(_dense_solve, table, inverses)


def _dense_solve(table: Floats, inverses: Floats, right: Floats) -> Floats:
    x = right.copy()
    count = len(x)
    for node in range(count):
        x[node + 1 :] += table[node, node + 1 : count] * x[node]
    x *= inverses
    for node in range(count - 2, -1, -1):
        x[node] += np.add.reduce(table[node, node + 1 : count] * x[node + 1 :])
    return x


def _sparse(a: Ints, b: Ints, weights: Floats, ground: Floats) -> Core:
    if weights.ndim == 1:
        return _sparse_one(a, b, weights, ground)
    lanes = [_sparse_one(a, b, weights[:, n], ground[:, n]) for n in range(weights.shape[1])]
    return lambda right: np.stack([lane(right[:, n]) for n, lane in enumerate(lanes)], axis=1)


def _sparse_one(a: Ints, b: Ints, weights: Floats, ground: Floats) -> Core:
    from wiring.circuit.elimination.oracle import sparse_solver

    sums = np.bincount(a, weights, len(ground)) + np.bincount(b, weights, len(ground)) + ground
    shunt = LEAST_SHUNT * float(np.max(np.abs(sums), initial=0.0))
    return sparse_solver(a, b, weights, ground + shunt)
