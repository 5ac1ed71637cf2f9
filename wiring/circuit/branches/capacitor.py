"""A smoothing capacitor: open on DC but for its leak; on AC the cycle around it is solved as a whole.

Where alternating current flows it is its charge that matters, and the branch is a source of the volts it
holds at each moment, behind its own resistance; see wiring.circuit.smoothing.
"""

import numpy as np

from wiring.circuit.branches.law import Curve, Floats, Law, number

LEAK_S = 1e-9


def _curve(p: Floats) -> Curve:
    return lambda v: (LEAK_S * v, np.full_like(v, LEAK_S))


def _spice(name: str, a: str, b: str, values: tuple[float, ...]) -> tuple[str, ...]:
    farads, ohms = values[:2]
    inner = f"{a}_{name}"
    return (
        f"R{name} {a} {inner} {number(ohms)}",
        f"C{name} {inner} {b} {number(farads)}",
        f"Rleak{name} {a} {b} {number(1.0 / LEAK_S)}",
    )


CAPACITOR = Law("capacitor", ("farads", "ohms"), _curve, _spice)
