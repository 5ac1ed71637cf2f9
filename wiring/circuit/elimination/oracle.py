"""The same networks by the sparse factors of scipy (SuperLU): for large meshes, and to check against."""

from collections.abc import Callable
from typing import Any

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]
Ints = NDArray[np.integer[Any]]


def sparse_solver(a: Ints, b: Ints, weights: Floats, ground: Floats) -> Callable[[Floats], Floats]:
    """Return a function that solves for node voltages; ArithmeticError where there is no solution."""
    from scipy.sparse import csc_matrix
    from scipy.sparse.linalg import splu

    count = len(ground)
    nodes = np.arange(count)
    rows = np.concatenate((a, b, a, b, nodes))
    columns = np.concatenate((a, b, b, a, nodes))
    data = np.concatenate((weights, weights, -weights, -weights, ground))
    matrix = csc_matrix((data, (rows, columns)), shape=(count, count))
    try:
        solve: Callable[[Floats], Floats] = splu(
            matrix, permc_spec="MMD_AT_PLUS_A", diag_pivot_thresh=0.0, options={"SymmetricMode": True}
        ).solve
    except RuntimeError as error:
        raise ArithmeticError(str(error)) from error
    return solve
