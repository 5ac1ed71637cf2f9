"""Converters in many sets of positions at once: each column is set anew by its last solve until all rest."""

from collections.abc import Callable

import numpy as np

from wiring.circuit.behaviours.converter import INPUT, OUTPUT
from wiring.circuit.behaviours.feeding import SHUT_OFF_OHMS
from wiring.circuit.branch_arrays import Assembly
from wiring.circuit.converting import Reads, Stand, next_stand
from wiring.circuit.linear import Floats
from wiring.circuit.side_by_side import Columns
from wiring.plan.names import PartId

MOST_ROUNDS = 60


def converters(assembly: Assembly) -> tuple[PartId, ...]:
    """Return the converters of a plan that could be compiled."""
    return tuple(
        part
        for part, compiled in assembly.parts.items()
        if compiled.kind.behaviour == "converter" and assembly.spans[part]
    )


def converted(assembly: Assembly, read: Columns, solve: Callable[[Floats], Columns]) -> Columns:
    """Return some sets with their converters at rest; those that do not come to rest count as not found.

    `read` is the first solve of them, `solve` solves them with other values.
    """
    parts, count = converters(assembly), len(read.sets)
    stands = {
        part: [Stand(0.0, float(read.values[assembly.spans[part][OUTPUT], 0, n])) for n in range(count)]
        for part in parts
    }
    moved = np.ones(count, dtype=np.bool_)
    for _ in range(MOST_ROUNDS):
        values, moved = read.values.copy(), np.zeros(count, dtype=np.bool_)
        for part, column in stands.items():
            for n in range(count):
                column[n], changed = next_stand(
                    assembly.parts[part].values, column[n], _reads(assembly, part, read, n)
                )
                moved[n] |= changed
                _set(assembly, part, column[n], values[:, :, n])
        if not moved.any():
            return read
        read = solve(values)
    lost = read.found.copy()
    lost[:, moved] = False
    return read._replace(found=lost)


def _reads(assembly: Assembly, part: PartId, read: Columns, n: int) -> Reads:
    span = assembly.spans[part]
    output, into = span[OUTPUT], span[INPUT]
    out_v, out_a = float(read.volts[output, n]), float(read.amps[output, n])
    return Reads(
        float(read.volts[into, n]), max(-out_v * out_a, 0.0), max(-out_a, 0.0), not read.found[output, n]
    )


def _set(assembly: Assembly, part: PartId, stand: Stand, values: Floats) -> None:
    span = assembly.spans[part]
    values[span[INPUT], 0] = stand.in_w
    values[span[OUTPUT], 0] = stand.emf_v
    if stand.off:
        values[span[OUTPUT], :4] = 0.0, SHUT_OFF_OHMS, np.inf, 1.0
