"""How much more current a load takes when it gets more volts: needed to size a wire that will lose fewer."""

from wiring.catalogue.kind import Kind
from wiring.circuit.figures import PartFigure
from wiring.plan.part import Part
from wiring.standards.rerating import CURRENT_EXPONENT
from wiring.studies.settings import number

MOST = 100.0  # times; a load that is all but starved says little about itself


def growth(part: Part, kind: Kind, now: PartFigure, then_v: float) -> float:
    """Return the current at `then_v` over the present one; 1 for what takes the same at any voltage."""
    volts_v, current_a = abs(now.volts_v), abs(now.current_a)
    if volts_v <= 0 or current_a <= 0 or then_v <= volts_v:
        return 1.0
    steady = _STEADY.get(kind.behaviour)
    if steady is not None:
        return min(max(number(part, kind, steady) / current_a, 1.0), MOST)
    if kind.behaviour in ("constant_power", "flasher"):
        return 1.0
    if kind.behaviour == "filament":
        return min(float((then_v / volts_v) ** CURRENT_EXPONENT), MOST)
    knee_v = 0.0
    if kind.behaviour in ("led", "strip"):
        knee_v = number(part, kind, "forward_v") * number(part, kind, "in_series")
    if volts_v <= knee_v:
        return MOST
    return min((then_v - knee_v) / (volts_v - knee_v), MOST)


_STEADY = {"constant_current": "set_a"}
