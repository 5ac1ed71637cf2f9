"""A plan's arrays with every filament cold: a resistor, and nothing that alternates."""

from typing import Any, NamedTuple

import numpy as np

from wiring.circuit.branch_arrays import Assembly
from wiring.circuit.branches.laws import LAW_NUMBER
from wiring.circuit.islands import Islands, swinging_only
from wiring.circuit.linear import Ints

RESISTOR, FILAMENT = LAW_NUMBER["resistor"], LAW_NUMBER["filament"]


class ColdLamps(NamedTuple):
    """The laws of all branches then, and the islands."""

    laws: Ints
    islands: Islands


def cold_lamps(assembly: Assembly, islands: Islands) -> ColdLamps:
    """Return a plan with its filaments cold; worked out once for the same wiring.

    Islands without filaments count as alternating, which are passed over: nothing is asked of them.
    """
    return assembly.kept.of(cold_question(assembly, islands), lambda: _cold_lamps(assembly, islands))


def cold_question(assembly: Assembly, islands: Islands) -> tuple[Any, ...]:
    """Return by what that is known."""
    return "cold lamps", islands, assembly.laws


def _cold_lamps(assembly: Assembly, islands: Islands) -> ColdLamps:
    lamps = assembly.laws == FILAMENT
    passed_over = np.ones(len(islands.references) + 1, dtype=np.bool_)
    passed_over[islands.of_node[assembly.a[lamps]]] = False  # the last is for what nothing feeds: -1
    laws = np.where(lamps, RESISTOR, assembly.laws)
    return ColdLamps(laws, swinging_only(assembly, islands, passed_over[:-1]))
