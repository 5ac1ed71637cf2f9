"""A linear system x' = A x + b, solved exactly: its states, their squares' sums, and when one crosses nought.

Eigen-decomposition: every state is a rest value plus a sum of exponentials, so nothing is stepped. Where two
eigenvalues fall together and no full set of eigenvectors exists, the first diagonal entry is shifted by
one part in 1e10: the answer then is that of a circuit whose parts differ by so much.
"""

from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]
Complexes = NDArray[np.complex128]

WORST_BASIS = 1e6  # condition of the eigenvectors from which rounding would show
SHIFT = 1e-10
PANELS = 240
_GAUSS_AT, _GAUSS_WEIGHT = np.polynomial.legendre.leggauss(4)
REFINED = 8  # times 64: down to rounding


class LinearPhase(NamedTuple):
    """x(t) = rest + Re sum_k parts[:, k] exp(rates[k] t), for one start."""

    rates: Complexes
    parts: Complexes  # a row a state, a column an exponential
    rest: Floats

    def at(self, times_s: Floats | float) -> Floats:
        """Return the states, a row a state and a column a time."""
        times = np.atleast_1d(np.asarray(times_s, dtype=np.float64))
        return np.asarray((self.parts @ np.exp(np.outer(self.rates, times))).real + self.rest[:, None])

    def integral_of_square(self, state: int, until_s: float) -> float:
        """Return the integral of one state's square from 0 to a time.

        Gauss's rule on the panels of a fine grid: summing the products of all pairs of exponentials would be
        exact too, but cancels badly where two rates nearly fall together.
        """
        edges = grid_s(self, until_s, PANELS)
        halves, middles = 0.5 * np.diff(edges), 0.5 * (edges[1:] + edges[:-1])
        times = middles[:, None] + halves[:, None] * _GAUSS_AT[None, :]
        squares = self.at(times.ravel())[state].reshape(times.shape) ** 2
        return float(halves @ (squares @ _GAUSS_WEIGHT))

    def falls_through(
        self, weights: Floats, offset: float, until_s: float, points: int = 400
    ) -> float | None:
        """Return the first time at which weights · x + offset falls below nought; None for never.

        0 when it starts there and stays there: then another state changed at the very same moment.
        Looked for on a grid that is finer at the start, then on ever finer ones between two of its points.
        """
        times = grid_s(self, until_s, points)
        values = weights @ self.at(times) + offset
        if values[0] <= 0.0 and values[1] < 0.0:
            return 0.0
        below = np.flatnonzero((values[1:] < 0.0) & (values[:-1] >= 0.0))
        if not len(below):
            return None
        low, high = float(times[below[0]]), float(times[below[0] + 1])
        for _ in range(REFINED):
            inner = np.linspace(low, high, 65)
            first = int(np.argmax(weights @ self.at(inner) + offset < 0.0))
            if first == 0:
                break
            low, high = float(inner[first - 1]), float(inner[first])
        return high


def solved_phase(matrix: Floats, push: Floats, start: Floats) -> LinearPhase:
    """Return the solution of x' = matrix x + push from a start; the matrix must have an inverse."""
    rest = np.asarray(-np.linalg.solve(matrix, push))
    rates, basis = np.linalg.eig(matrix)
    if np.linalg.cond(basis) > WORST_BASIS:
        shifted = matrix.copy()
        shifted[0, 0] *= 1.0 + SHIFT
        rates, basis = np.linalg.eig(shifted)
    rates, basis = rates.astype(np.complex128), basis.astype(np.complex128)
    shares = np.linalg.solve(basis, (start - rest).astype(np.complex128))
    return LinearPhase(rates, basis * shares, rest)


def grid_s(phase: LinearPhase, until_s: float, points: int) -> Floats:
    """Return times from 0 to the end: half spread evenly, half by ratio from the fastest change on."""
    fastest_s = 1.0 / max(float(np.max(np.abs(phase.rates))), 1.0 / until_s)
    early = np.geomspace(min(0.01 * fastest_s, 0.1 * until_s), until_s, points // 2)
    return np.unique(np.concatenate(([0.0], early, np.linspace(0.0, until_s, points - points // 2))))
