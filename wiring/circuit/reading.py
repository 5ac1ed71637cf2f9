"""What the branches of a solved plan read, as arrays."""

from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from wiring.circuit.branch_arrays import Assembly
from wiring.circuit.linear import Floats


class Reading(NamedTuple):
    """Per branch and node; RMS where the island is alternating. Parts nothing feeds read nought."""

    volts: Floats
    amps: Floats
    mean_amps: Floats
    power: Floats
    nodes: Floats
    failed: NDArray[np.bool_]  # per branch: no operating point was found
    residual_a: Floats  # per node: the largest breach of Kirchhoff's law in the island it is the reference of
    direct: Floats  # per node behind a rectifier: the volts a DC meter shows against its minus; else NaN


def resting(assembly: Assembly) -> Reading:
    """Return the reading of a plan in which nothing flows."""
    size = len(assembly.a)
    volts, amps, mean_amps, power = np.zeros((4, size))
    nodes, residual_a = np.zeros((2, assembly.node_count))
    failed, direct = np.zeros(size, dtype=np.bool_), np.full(assembly.node_count, np.nan)
    return Reading(volts, amps, mean_amps, power, nodes, failed, residual_a, direct)
