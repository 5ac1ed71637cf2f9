"""Copper wires: size, resistance and how much current they carry.

AWG gauges by the formula of ASTM B258, d = 0.127 mm × 92^((36 − n) / 39), with the copper of NBS Handbook
100 (1/58 Ω·mm²/m at 20 °C); the formula agrees with the printed table of gauges 10 to 32 within 0.04 %.
Stranded wires are 2 % longer inside (NEC chapter 9 table 8 has 2.0 to 2.6 %). Metric wires have the largest
resistance IEC 60228 allows: class 5 (fine strands) and class 1 (solid) from 0.5 mm², below that a maker's
extract of VDE 0295. All verified against reprints. The temperature coefficient 0.00393 per °C, from memory,
takes the 20 °C table to the NEC's 75 °C table.
"""

import math
from functools import cache

from wiring.standards.wire_size import WireSize, read_size

OHM_MM2_PER_M = 1.0 / 58.0
PER_CELSIUS = 0.00393
LAY_FACTOR = 1.02
STRAND_SPREAD = 3.0 / math.sqrt(7.0)  # seven strands: three lie across, seven fill
CELSIUS_RANGE = (-60.0, 200.0)  # the straight line is not copper's beyond it

# mm²: largest Ω/km at 20 °C, plain copper
_FINE_STRANDS = {
    0.08: 243.0, 0.14: 138.0, 0.25: 79.0, 0.34: 57.0, 0.5: 39.0, 0.75: 26.0, 1.0: 19.5, 1.5: 13.3, 2.5: 7.98,
    4.0: 4.95, 6.0: 3.30, 10.0: 1.91,
}  # fmt: skip
_SOLID = {0.5: 36.0, 0.75: 24.5, 1.0: 18.1, 1.5: 12.1, 2.5: 7.41, 4.0: 4.61, 6.0: 3.08, 10.0: 1.83}

SIZES: tuple[str, ...] = (
    "12 AWG", "14 AWG", "16 AWG", "18 AWG", "20 AWG", "22 AWG", "24 AWG", "26 AWG", "28 AWG", "30 AWG",
    "2.5 mm²", "1.5 mm²", "1 mm²", "0.75 mm²", "0.5 mm²", "0.34 mm²", "0.25 mm²", "0.14 mm²", "0.08 mm²",
)  # fmt: skip


@cache
def ohm_per_m(size: str, *, solid: bool = False, celsius: float = 20.0) -> float:
    """Return the resistance of one conductor; NotUnderstood for what is no size.

    A temperature beyond CELSIUS_RANGE counts as the end of it.
    """
    wire = read_size(size)
    held = min(max(celsius, CELSIUS_RANGE[0]), CELSIUS_RANGE[1])
    return _ohm_per_m_at_20(wire, solid=solid) * (1.0 + PER_CELSIUS * (held - 20.0))


def _ohm_per_m_at_20(wire: WireSize, *, solid: bool) -> float:
    if wire.is_awg:
        return OHM_MM2_PER_M / wire.area_mm2 * (1.0 if solid else LAY_FACTOR)
    table = _SOLID if solid else _FINE_STRANDS
    if wire.area_mm2 in table:
        return table[wire.area_mm2] / 1000.0
    # Between the sizes of the table: the area times the poorest copper it allows anywhere.
    worst = max(area * ohms for area, ohms in table.items()) / 1000.0
    return worst / wire.area_mm2


def bare_diameter_mm(size: str, *, solid: bool = False) -> float:
    """Return the diameter of the copper; strands lie as seven do, 1.134 times as wide as a solid wire."""
    diameter = math.sqrt(4.0 / math.pi * read_size(size).area_mm2)
    return diameter if solid else diameter * STRAND_SPREAD


def insulated_diameter_mm(size: str, *, solid: bool = False) -> float:
    """Return the diameter over the insulation: 0.4 mm of PVC to 1 mm², 0.8 mm above.

    UL 758, style 1638, has 15 mils (0.38 mm) from 28 to 16 AWG, verified; the thicker wall is from memory.
    """
    wall = 0.4 if read_size(size).area_mm2 <= 1.0 else 0.8
    return bare_diameter_mm(size, solid=solid) + 2.0 * wall
