"""A source of voltage behind its own resistance, with a current limit, from plus (a) to minus (b).

A source that does not sink, such as a supply behind a rectifier, lets only a bleeder's current back in.
"""

import numpy as np

from wiring.circuit.branches.knee import bend, bent_expression
from wiring.circuit.branches.law import Curve, Floats, Law, number

BLEEDER_S = 1e-6
LEAST_SPAN_V = 1.0


def _curve(p: Floats) -> Curve:
    emf, ohms, limit, sinks = p[0], p[1], p[2], p[3]
    per_ohm = 1.0 / ohms
    if np.all(np.isinf(limit) & (sinks != 0)):
        return lambda v: ((v - emf) * per_ohm, per_ohm)
    bent, bleeds = bend(limit * ohms, np.maximum(np.abs(emf), LEAST_SPAN_V)), sinks == 0

    def curve(v: Floats) -> tuple[Floats, Floats]:
        lost = emf - v
        y, slope = bent(lost)
        pushed = (lost < 0) & bleeds
        return -np.where(pushed, lost * BLEEDER_S, y * per_ohm), np.where(pushed, BLEEDER_S, slope * per_ohm)

    return curve


def _spice(name: str, a: str, b: str, values: tuple[float, ...]) -> tuple[str, ...]:
    emf, ohms, limit, sinks = values[:4]
    inner = f"{a}_{name}"
    ideal = f"V{name} {inner} {b} {number(emf)}"
    if limit == float("inf") and sinks:
        return ideal, f"R{name} {inner} {a} {number(ohms)}"
    lost = f"v({inner},{a})"
    gives = lost
    if limit != float("inf"):
        gives = bent_expression(lost, limit * ohms, max(abs(emf), LEAST_SPAN_V))
    gives = f"({gives})/{number(ohms)}"
    if not sinks:
        gives = f"{lost} < 0 ? {lost}*{BLEEDER_S!r} : {gives}"
    return ideal, f"B{name} {inner} {a} i={gives}"


SOURCE = Law("source", ("emf_v", "ohms", "limit_a", "sinks"), _curve, _spice)
