"""Wires that share a wireway: how full its holes are, and what hole they need."""

import math
from typing import NamedTuple

from wiring.plan.names import WireId
from wiring.plan.plan import Plan
from wiring.plan.wireway import Wireway
from wiring.standards.conductors import insulated_diameter_mm

# Share of the hole that one, two, or more wires may fill: NFPA 70 (NEC), chapter 9, table 1, for conduits,
# verified. A hole in a joist is no conduit, but a fuller one lets no bundle be pulled through by hand.
FILL = {1: 0.53, 2: 0.31}
FILL_OF_MANY = 0.40
# Drills and hole saws that shops keep; common practice, no source.
DRILLS_MM = (
    3, 4, 5, 6, 8, 10, 12, 14, 16, 18, 20, 22, 25, 28, 32, 35, 38, 44, 51, 57, 64, 76, 100,
)  # fmt: skip


class Bundle(NamedTuple):
    """The wires in one wireway, the share of its hole they fill, and the drill that leaves them room."""

    wireway: Wireway
    wires: tuple[WireId, ...]
    fill: float
    allowed: float
    hole_mm: float

    @property
    def fits(self) -> bool:
        """Whether the wires fill no more of the hole than they may."""
        return self.fill <= self.allowed


def bundles(plan: Plan) -> tuple[Bundle, ...]:
    """Return the bundle of every wireway that holds wires, in plan order."""
    found = []
    for wireway in plan.wireways.values():
        wires = [w for w in plan.wires.values() if wireway.id in w.along]
        if not wires:
            continue
        area_mm2 = sum(math.pi / 4 * insulated_diameter_mm(w.size, solid=w.solid) ** 2 for w in wires)
        allowed = FILL.get(len(wires), FILL_OF_MANY)
        fill = area_mm2 / (math.pi / 4 * wireway.hole_mm**2)
        needed_mm = math.sqrt(area_mm2 / allowed / (math.pi / 4))
        hole_mm = next((float(d) for d in DRILLS_MM if d >= needed_mm), math.ceil(needed_mm))
        found.append(Bundle(wireway, tuple(w.id for w in wires), fill, allowed, float(hole_mm)))
    return tuple(found)
