"""What stands across an open switch: with no current nothing drops elsewhere, so it is all the supply gives.

Common practice, no source: it is how a builder finds an open joint with a meter.
"""

import pytest
from support.networks import draw

from wiring.catalogue.shelf import builtin_kinds
from wiring.circuit.solve import solve

PARTS = {
    "G1": ("supply-regulated", {"volts": 12.0}),
    "S1": "toggle-on-off",
    "R1": ("resistor", {"resistance": 470.0}),
}
WIRES = [("G1:+", "S1:13"), ("S1:14", "R1:1"), ("R1:2", "G1:-")]


def read(plan, designation, **positions):
    ids = {p.designation: p.id for p in plan.parts.values()}
    figures = solve(plan, builtin_kinds(), {ids[k]: v for k, v in positions.items()})
    return figures.parts[ids[designation]]


def test_open_switch_has_all_of_the_volts():
    plan = draw(PARTS, WIRES)
    assert read(plan, "S1", S1="off").volts_v == pytest.approx(12.0, abs=1e-6)
    assert read(plan, "S1", S1="off").current_a == 0.0
    assert read(plan, "S1", S1="on").volts_v < 0.01


def test_open_switch_that_leads_nowhere_reads_nothing():
    plan = draw(PARTS, WIRES[:1])
    assert read(plan, "S1", S1="off").volts_v == 0.0
