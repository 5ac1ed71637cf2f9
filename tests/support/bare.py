"""Branches between named nodes, solved without a plan: for circuits no catalogue part makes up."""

from collections.abc import Sequence

import numpy as np

from wiring.circuit.branches.laws import LAW_NUMBER, WIDTH
from wiring.circuit.network import Network
from wiring.circuit.newton import newton

Branch = tuple[str, str, str, tuple[float, ...]]


def solve_branches(branches: Sequence[Branch], ground: str = "0") -> tuple[dict[str, float], list[float]]:
    """Node voltages against ground, and the current of every branch."""
    names = sorted({name for _, a, b, _ in branches for name in (a, b)} - {ground})
    place = {**{name: n for n, name in enumerate(names)}, ground: len(names)}
    rows = np.array([values + (0.0,) * (WIDTH - len(values)) for *_, values in branches])
    network = Network(
        np.array([LAW_NUMBER[law] for law, *_ in branches]),
        np.array([place[a] for _, a, _, _ in branches]), np.array([place[b] for _, _, b, _ in branches]),
        rows, len(names), np.zeros(1),
    )  # fmt: skip
    solved = newton(network)
    assert solved.converged
    assert solved.residual_a <= 1e-8 * max(1.0, float(np.max(np.abs(solved.amps))))
    return {name: float(solved.x[place[name]]) for name in names}, solved.amps.tolist()


def ohms(a: str, b: str, value: float) -> Branch:
    return "resistor", a, b, (value,)


def volts(plus: str, minus: str, emf_v: float, ohms_: float = 1e-6) -> Branch:
    """A source that takes current back too; ideal but for a microhm unless told."""
    return "source", plus, minus, (emf_v, ohms_, float("inf"), 1.0)


def load(a: str, b: str, amps: float, least_v: float) -> Branch:
    return "constant_current", a, b, (amps, least_v)
