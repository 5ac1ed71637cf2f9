"""The linear step: a weighted graph Laplacian, factored for each set of branch slopes."""

from collections.abc import Callable
from typing import Any

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]
Ints = NDArray[np.intp]
DENSE_BELOW = 40  # nodes; small systems are quicker as full matrices
ROUNDING = 1e-13  # of the stiffest branch: beneath it a node counts as held by nothing
SHUNT_S = 1e-15  # in the matrix only, never in the equations: keeps a node that nothing holds from failing


class Pattern:
    """Where the entries of one island's matrix lie; nodes from `free` upwards are held at given volts."""

    def __init__(self, a: Ints, b: Ints, free: int) -> None:
        self.free = free
        inner_a, inner_b = a < free, b < free
        both = inner_a & inner_b
        branch = np.arange(len(a))
        rows = np.concatenate((a[inner_a], b[inner_b], a[both], b[both], np.arange(free)))
        cols = np.concatenate((a[inner_a], b[inner_b], b[both], a[both], np.arange(free)))
        self._branch = np.concatenate((branch[inner_a], branch[inner_b], branch[both], branch[both]))
        self._sign = np.concatenate((np.ones(inner_a.sum() + inner_b.sum()), -np.ones(2 * both.sum())))
        self._where, self._slot = np.unique(cols * free + rows, return_inverse=True)

    def solver(self, slopes: Floats, shunt_s: float = SHUNT_S) -> Callable[[Floats], Floats]:
        """Return a function that solves J x = right for these branch slopes; raises ArithmeticError."""
        try:
            return self._factored(slopes, shunt_s)
        except ArithmeticError:
            return self._factored(slopes, max(shunt_s, ROUNDING * float(np.max(slopes, initial=0.0))))

    def _factored(self, slopes: Floats, shunt_s: float) -> Callable[[Floats], Floats]:
        weights = np.concatenate((self._sign * slopes[self._branch], np.full(self.free, shunt_s)))
        data = np.bincount(self._slot, weights, len(self._where)).astype(np.float64)
        return self._dense(data) if self.free < DENSE_BELOW else self._sparse(data)

    def _dense(self, data: Floats) -> Callable[[Floats], Floats]:
        matrix = np.zeros(self.free * self.free)
        matrix[self._where] = data
        try:
            inverse = np.linalg.inv(matrix.reshape(self.free, self.free))
        except np.linalg.LinAlgError as error:
            raise ArithmeticError(str(error)) from error
        return lambda right: np.asarray(inverse @ right)

    def _sparse(self, data: Floats) -> Callable[[Floats], Floats]:
        from scipy.sparse import csc_matrix
        from scipy.sparse.linalg import splu

        starts = np.searchsorted(self._where, np.arange(self.free + 1) * self.free)
        matrix = csc_matrix((data, self._where % self.free, starts), shape=(self.free, self.free))
        options: dict[str, Any] = {"SymmetricMode": True}
        try:
            solve: Callable[[Floats], Floats] = splu(
                matrix, permc_spec="MMD_AT_PLUS_A", diag_pivot_thresh=0.0, options=options
            ).solve
        except RuntimeError as error:
            raise ArithmeticError(str(error)) from error
        return solve
