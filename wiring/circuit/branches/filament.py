"""A filament lamp by the re-rating exponent, with a finite resistance when cold.

i = Ir x / (x^2 + e^2)^((1 - n) / 2), x = v / Vr, scaled to give exactly the rated current at the rated
voltage. The small e is where the power law hands over to the cold resistance, a tenth of the hot one.
"""

from wiring.circuit.branches.law import Curve, Floats, Law, number
from wiring.standards.rerating import CURRENT_EXPONENT

# Tungsten lamps draw about ten times their rated current when cold: common practice, no source.
COLD_OVER_HOT = 0.1
HALF = (1.0 - CURRENT_EXPONENT) / 2.0
EDGE_SQUARED = (COLD_OVER_HOT ** (1.0 / (1.0 - CURRENT_EXPONENT))) ** 2
SCALE = (1.0 + EDGE_SQUARED) ** HALF


def _curve(p: Floats) -> Curve:
    rated_v, scale_a = p[0], p[1] * SCALE

    def curve(v: Floats) -> tuple[Floats, Floats]:
        x = v / rated_v
        square = x * x + EDGE_SQUARED
        per_x = scale_a * square**-HALF
        return per_x * x, per_x * (1.0 - 2.0 * HALF * x * x / square) / rated_v

    return curve


def _spice(name: str, a: str, b: str, values: tuple[float, ...]) -> tuple[str, ...]:
    rated_v, rated_a = values[:2]
    x = f"(v({a},{b})/{number(rated_v)})"
    bend = f"exp({number(HALF)}*ln({x}*{x}+{number(EDGE_SQUARED)}))"
    return (f"B{name} {a} {b} i={number(rated_a * SCALE)}*{x}/{bend}",)


FILAMENT = Law("filament", ("rated_v", "rated_a"), _curve, _spice)
