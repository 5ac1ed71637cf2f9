"""Sums of values by group, for one column or many at once."""

from typing import Any

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]
FEW = 20_000  # values: fewer are added up without scipy, which takes long to load


class Summing:
    """Adds up rows that belong to the same group; `count` groups."""

    def __init__(self, groups: NDArray[np.integer[Any]], count: int) -> None:
        self.groups, self.count = groups, count
        self._matrix: Any = None
        self._flat = np.zeros(0, dtype=np.intp)

    def __call__(self, values: Floats) -> Floats:
        """Return the sum of each group."""
        if values.ndim == 1:
            return np.asarray(np.bincount(self.groups, values, self.count), dtype=np.float64)
        if values.size <= FEW:
            return self._of_few(values)
        if self._matrix is None:
            from scipy.sparse import csr_array

            size = len(self.groups)
            places = (self.groups.astype(np.int32), np.arange(size, dtype=np.int32))
            self._matrix = csr_array((np.ones(size), places), shape=(self.count, size))
        return np.asarray(self._matrix @ values)

    def _of_few(self, values: Floats) -> Floats:
        columns = values.shape[1]
        if len(self._flat) != values.size:
            self._flat = (self.groups[:, None] * columns + np.arange(columns)).ravel()
        total = np.bincount(self._flat, values.ravel(), self.count * columns)
        return total.astype(np.float64, copy=False).reshape(self.count, columns)
