"""Networks solved by elimination in rounds are those that dense and sparse factors give."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from wiring.circuit.elimination.factor import Factor, plan_of
from wiring.circuit.elimination.oracle import sparse_solver
from wiring.circuit.elimination.rounds import MOST_NEIGHBOURS, order_of
from wiring.circuit.linear import Pattern

OFTEN = settings(max_examples=60)


def random_network(seed: int, most: int = 70) -> tuple[np.ndarray, np.ndarray, int, np.random.Generator]:
    """A tree with cross ties, few or many, and some links side by side."""
    rng = np.random.default_rng(seed)
    count = int(rng.integers(1, most))
    parents = np.array([int(rng.integers(0, node)) for node in range(1, count)], dtype=np.intp)
    ties = rng.integers(0, count, (int(rng.integers(0, 3 * count)), 2))
    ties = ties[ties[:, 0] != ties[:, 1]]
    a, b = np.concatenate((parents, ties[:, 0])), np.concatenate((np.arange(1, count), ties[:, 1]))
    renamed = rng.permutation(count)
    return renamed[a], renamed[b], count, rng


def exact(a: np.ndarray, b: np.ndarray, weights: np.ndarray, ground: np.ndarray, right: np.ndarray) -> list:
    """Node voltages in rational numbers: no rounding at all."""
    from fractions import Fraction

    count = len(ground)
    table = [[Fraction(0)] * (count + 1) for _ in range(count)]
    for node in range(count):
        table[node][node], table[node][count] = Fraction(ground[node]), Fraction(right[node])
    for one, other, weight in zip(a.tolist(), b.tolist(), weights.tolist(), strict=True):
        w = Fraction(weight)
        table[one][one] += w
        table[other][other] += w
        table[one][other] -= w
        table[other][one] -= w
    for k in range(count):
        for row in range(k + 1, count):
            share = table[row][k] / table[k][k]
            if share:
                for column in range(k, count + 1):
                    table[row][column] -= share * table[k][column]
    x = [Fraction(0)] * count
    for k in reversed(range(count)):
        x[k] = (table[k][count] - sum(table[k][j] * x[j] for j in range(k + 1, count))) / table[k][k]
    return [float(value) for value in x]


@OFTEN
@given(st.integers(0, 2**32))
def test_it_is_the_dense_solution(seed: int) -> None:
    a, b, count, rng = random_network(seed)
    weights, ground = rng.uniform(0.1, 10, len(a)), rng.uniform(0.1, 1, count)
    right = rng.uniform(0.0, 1.0, count)
    matrix = np.diag(ground)
    for one, other, weight in zip(a, b, weights, strict=True):
        matrix[[one, other], [one, other]] += weight
        matrix[one, other] -= weight
        matrix[other, one] -= weight
    found = Factor(plan_of(order_of(a, b, count)), weights, ground).solve(right)
    assert found == pytest.approx(np.linalg.solve(matrix, right), rel=1e-12)


@settings(OFTEN, max_examples=15)
@given(st.integers(0, 2**32))
def test_twelve_decades_of_conductance_cost_no_digits(seed: int) -> None:
    a, b, count, rng = random_network(seed, 26)
    weights = 10.0 ** rng.uniform(-6, 6, len(a))
    ground = np.where(rng.random(count) < 0.1, 10.0 ** rng.uniform(-6, 6, count), 0.0)
    ground[0] = 1.0
    right = rng.uniform(0.0, 1.0, count)
    found = Factor(plan_of(order_of(a, b, count)), weights, ground).solve(right)
    assert found == pytest.approx(exact(a, b, weights, ground, right), rel=1e-12)


@OFTEN
@given(st.integers(0, 2**32))
def test_columns_are_networks_of_their_own(seed: int) -> None:
    a, b, count, rng = random_network(seed)
    weights, ground = 10.0 ** rng.uniform(-3, 3, (len(a), 5)), rng.uniform(0.1, 1, (count, 5))
    right = rng.uniform(-1.0, 1.0, (count, 5))
    plan = plan_of(order_of(a, b, count))
    together = Factor(plan, weights, ground).solve(right)
    for n in range(5):
        alone = Factor(plan, weights[:, n].copy(), ground[:, n].copy()).solve(right[:, n].copy())
        assert together[:, n] == pytest.approx(alone, rel=1e-11, abs=1e-13)


@pytest.mark.parametrize("lanes", [0, 3])
def test_a_mesh_that_does_not_shrink_goes_to_the_core(lanes: int) -> None:
    rng = np.random.default_rng(5)
    count = 600
    a = np.repeat(np.arange(count), 12)
    b = (a + rng.integers(1, count, len(a))) % count
    shape = (lanes,) if lanes else ()
    weights, ground = rng.uniform(0.1, 10, (len(a), *shape)), rng.uniform(0.1, 1, (count, *shape))
    right = rng.uniform(0.0, 1.0, (count, *shape))
    order = order_of(a, b, count)
    assert order.core > 200
    found = Factor(plan_of(order), weights, ground).solve(right)
    if lanes:
        weights, ground, right, found = (array[:, 1] for array in (weights, ground, right, found))
    assert found == pytest.approx(sparse_solver(a, b, weights, ground)(right), rel=1e-9)


@OFTEN
@given(st.integers(0, 2**32))
def test_nodes_of_a_round_are_no_neighbours(seed: int) -> None:
    a, b, count, _ = random_network(seed)
    order = order_of(a, b, count)
    assert sorted(order.nodes.tolist()) == list(range(count))
    for step in order.rounds:
        assert np.all(step.others >= 0)
        assert np.bincount(step.own, minlength=1).max() <= MOST_NEIGHBOURS


def test_what_nothing_holds_rests_at_nought() -> None:
    a, b = np.array([0, 1, 3]), np.array([1, 2, 4])
    x = Factor(plan_of(order_of(a, b, 5)), np.ones(3), np.array([1.0, 0, 0, 0, 0])).solve(np.zeros(5))
    assert np.all(x == 0.0)
    assert np.all(np.isfinite(x))


def test_held_nodes_and_branches_side_by_side() -> None:
    a, b = np.array([0, 0, 1, 1, 1]), np.array([1, 1, 2, 3, 1])
    solve = Pattern(a, b, 2).solver(np.array([1.0, 1.0, 0.5, 0.5, 7.0]))
    assert solve(np.array([1.0, 0.0])) == pytest.approx([1.5, 1.0])
