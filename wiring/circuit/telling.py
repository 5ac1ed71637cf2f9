"""Which of a part's branches tells its figures."""

from collections.abc import Sequence
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from wiring.circuit.linear import Ints
from wiring.circuit.part_table import PartTable
from wiring.circuit.reading import Reading

TELLING = frozenset({"main", "coil", "source", "alternating"})  # roles of branches that tell a part's figures
ALIKE = 1.0 - 1e-6
Flags = NDArray[np.bool_]


class Telling(NamedTuple):
    """Which parts have branches that tell their figures, and which; those with others beside, from to."""

    single: Flags
    branch: Ints
    signed: Flags
    several: Sequence[tuple[int, int, int]]
    choices: Sequence[tuple[int, tuple[int, ...]]]  # parts of which one of several branches tells


def telling(roles: Sequence[str], table: PartTable) -> Telling:
    """Return which branches tell, from the role of each."""
    first, end = table.first_branch, table.first_branch + table.branches
    tells = np.flatnonzero(np.array([role in TELLING for role in roles]))
    begin = np.searchsorted(tells, first)
    counts = np.searchsorted(tells, end) - begin
    told = counts >= 1
    single = told | (table.branches == 1)
    branch = np.where(told, np.append(tells, 0)[begin], first) * single
    choices = [
        (row, tuple(tells[begin[row] : begin[row] + counts[row]].tolist()))
        for row in np.flatnonzero(counts > 1).tolist()
    ]
    rows = np.flatnonzero(single & (table.branches > 1))
    several = list(zip(rows.tolist(), first[rows].tolist(), end[rows].tolist(), strict=True))
    return Telling(single, branch, table.polarised | table.feeds, several, choices)


def chosen(tell: Telling, reading: Reading) -> Ints:
    """Return the branch that tells of each part, where several may."""
    branch = tell.branch.copy()
    for row, among in tell.choices:
        amps, volts = reading.amps[list(among)].tolist(), reading.volts[list(among)].tolist()
        branch[row] = among[telling_branch(amps, volts)]
    return branch


def telling_branch(amps: Sequence[float], volts: Sequence[float]) -> int:
    """Return which of a part's branches tells its figures: the one with the most current, or else volts."""
    most_a = max(map(abs, amps))
    alike = [n for n, one in enumerate(amps) if abs(one) >= most_a * ALIKE]  # not by the last digits
    return max(alike, key=lambda n: round(abs(volts[n]), 9)) if len(alike) > 1 else alike[0]
