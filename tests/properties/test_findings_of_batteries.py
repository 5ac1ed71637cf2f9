"""What is said of a battery that is asked for much: by its type, its size and how many stand side by side."""

import re

import pytest
from support.findings import found, rules
from support.networks import draw

from wiring.plan.plan import Plan
from wiring.standards.cells import CELLS


def asked(amps: float, **battery) -> Plan:
    load = ("constant-current-light", {"set_a": amps, "min_v": 0.5})
    cells = ("battery-alkaline", {"in_series": 4, **battery})
    return draw({"G1": cells, "E1": load}, [("G1:+", "E1:+"), ("E1:-", "G1:-")])


AA = CELLS["alkaline AA"]
WELL_A = 0.25 * AA.fresh_v / AA.r0_ohm  # a quarter of the fresh volts lost inside


@pytest.mark.parametrize(
    ("battery", "times"),
    [
        ({}, 1.0),
        ({"capacity": AA.rated_ah / 4}, 0.25),
        ({"capacity": 2 * AA.rated_ah}, 2.0),
        ({"in_parallel": 2}, 2.0),
    ],
)
def test_what_a_battery_does_well_goes_with_its_capacity_and_its_strings(battery, times):
    most_a = times * WELL_A
    assert "battery-load" not in rules(asked(0.95 * most_a, **battery))
    told = found(asked(1.05 * most_a, **battery), "battery-load")
    value, milli = re.search(r"up to about ([\d.]+) (m?)A", told.what).groups()
    assert float(value) * (1e-3 if milli else 1.0) == pytest.approx(most_a, rel=5e-3)
