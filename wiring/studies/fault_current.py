"""What a supply pushes through a short."""

import math

from wiring.catalogue.kind import Kind
from wiring.plan.part import Part
from wiring.standards.cells import CELLS
from wiring.studies.settings import number, text


def fault_current_a(part: Part, kind: Kind) -> float:
    """Return the most a supply can push for longer than a moment, in amperes; infinite where nothing says.

    A supply with a limit pushes its limit; others what their inner resistance lets through.
    """
    if kind.behaviour in ("supply_regulated", "converter"):
        return number(part, kind, "limit_a")
    if kind.behaviour in ("supply_unregulated", "supply_ac"):
        open_v = number(part, kind, "open_v")
        sag_v = open_v - number(part, kind, "rated_v")
        return number(part, kind, "rated_a") * open_v / sag_v if sag_v > 0 else math.inf
    if kind.behaviour == "battery":
        cell = CELLS.get(text(part, kind, "cell"))
        limit_a = number(part, kind, "limit_a") or math.inf
        if cell is None:
            return limit_a
        typed_ah = number(part, kind, "capacity")
        scale = typed_ah / cell.rated_ah if typed_ah > 0 else 1.0
        return min(scale * max(number(part, kind, "in_parallel"), 1.0) * cell.fresh_v / cell.r0_ohm, limit_a)
    return math.inf
