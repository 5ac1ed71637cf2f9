"""How much current a wire may carry for ever, tied up with others.

From 24 to 10 AWG the column for 105 °C wire of FAA AC 43.13-1B table 11-9 (verified; 70 °C around it,
bundles of 33 or more, a fifth of them loaded). Thinner than 24 AWG there is no such table, so the handbook
rule of 700 circular mils an ampere stands in (verified for even gauges): it is far on the safe side. Metric
sizes are read off the same column by their area, so that a thicker wire never has a lower limit whichever
way its size is written.
"""

import math
from functools import cache
from itertools import pairwise

from wiring.standards.wire_size import read_size

BUNDLE = {24: 2.5, 22: 3.0, 20: 4.0, 18: 6.0, 16: 7.0, 14: 10.0, 12: 13.0, 10: 17.0}
CIRCULAR_MILS_PER_AMPERE = 700.0
MM2_PER_CIRCULAR_MIL = math.pi / 4.0 * 0.0254**2


@cache
def current_limit_a(size: str) -> float:
    """Return the largest lasting current in amperes; NotUnderstood when the text is no wire size."""
    wire = read_size(size)
    if wire.gauge in BUNDLE:
        return BUNDLE[wire.gauge]
    by_rule = wire.area_mm2 / MM2_PER_CIRCULAR_MIL / CIRCULAR_MILS_PER_AMPERE
    points = [(read_size(f"{gauge} AWG").area_mm2, amps) for gauge, amps in BUNDLE.items()]
    if wire.area_mm2 < points[0][0]:
        return by_rule
    for (thin, low), (thick, high) in pairwise(points):
        if wire.area_mm2 <= thick:
            share = math.log(wire.area_mm2 / thin) / math.log(thick / thin)
            return float(low * (high / low) ** share)
    return max(by_rule, points[-1][1])
