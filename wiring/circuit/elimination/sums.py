"""Sums of values by group, for one column or many at once."""

from typing import Any

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]


class Summing:
    """Adds up rows that belong to the same group; `count` groups."""

    def __init__(self, groups: NDArray[np.integer[Any]], count: int) -> None:
        self.groups, self.count = groups, count
        self._matrix: Any = None

    def __call__(self, values: Floats) -> Floats:
        """Return the sum of each group."""
        if values.ndim == 1:
            return np.bincount(self.groups, values, self.count).astype(np.float64, copy=False)
        if self._matrix is None:
            from scipy.sparse import csr_array

            size = len(self.groups)
            places = (self.groups.astype(np.int32), np.arange(size, dtype=np.int32))
            self._matrix = csr_array((np.ones(size), places), shape=(self.count, size))
        return np.asarray(self._matrix @ values)
