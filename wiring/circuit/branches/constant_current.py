"""A module that takes one current above its drop-out voltage, less below it, and nothing in reverse."""

import numpy as np

from wiring.circuit.branches.knee import bend, bent_expression
from wiring.circuit.branches.law import Curve, Floats, Law, number

BLOCKED_S = 1e-9
FLAT = 100.0  # the current rises by a hundredth over so many times the drop-out voltage


def _curve(p: Floats) -> Curve:
    set_a, min_v = p[0], p[1]
    per_volt, bent = set_a / min_v, bend(min_v, FLAT * min_v)

    def curve(v: Floats) -> tuple[Floats, Floats]:
        y, slope = bent(v)
        blocked = v < 0
        return np.where(blocked, BLOCKED_S * v, per_volt * y), np.where(blocked, BLOCKED_S, per_volt * slope)

    return curve


def _spice(name: str, a: str, b: str, values: tuple[float, ...]) -> tuple[str, ...]:
    set_a, min_v = values[:2]
    v = f"v({a},{b})"
    takes = f"{number(set_a / min_v)}*{bent_expression(v, min_v, FLAT * min_v)}"
    return (f"B{name} {a} {b} i={v} < 0 ? {BLOCKED_S!r}*{v} : {takes}",)


CONSTANT_CURRENT = Law("constant_current", ("set_a", "min_v"), _curve, _spice)
