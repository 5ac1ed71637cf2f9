"""What a wire may carry, against print: by the table, and as a plan with so much current is told.

FAA: Advisory Circular 43.13-1B, table 11-9, page 11-23, copper wire of 105 °C in a bundle. Handbook: the
column "power transmission" of the Handbook of Electronic Tables and Formulas, 700 circular mils an ampere,
rounded there to three digits. VDE: DIN VDE 0298-4 for household flex of two cores at 30 °C, as a cable
maker's catalogue has it.
"""

import pytest
from support.findings import rules
from support.networks import draw, stiff

from wiring.standards.conductors import SIZES
from wiring.standards.current_limits import current_limit_a
from wiring.standards.wire_size import read_size

FAA = {24: 2.5, 22: 3, 20: 4, 18: 6, 16: 7, 14: 10, 12: 13, 10: 17}
HANDBOOK = {26: 0.361, 28: 0.226, 30: 0.142, 32: 0.091}


@pytest.mark.parametrize(("gauge", "amps"), FAA.items())
def test_wires_from_24_awg_have_the_bundle_limit(gauge, amps):
    assert current_limit_a(f"{gauge} AWG") == amps


@pytest.mark.parametrize(("gauge", "amps"), HANDBOOK.items())
def test_thinner_wires_have_the_handbook_limit(gauge, amps):
    """Within 2 %: 32 AWG is printed with two digits."""
    assert current_limit_a(f"{gauge} AWG") == pytest.approx(amps, rel=0.02)


@pytest.mark.parametrize(("gauge", "amps"), [*FAA.items(), *HANDBOOK.items()])
def test_a_plan_is_told_of_a_wire_that_carries_more_and_of_none_that_carries_less(gauge, amps):
    """The wire is short, so that nothing else is wrong with it; 3 % either side, more than print is off."""
    for share, told in ((0.97, 0), (1.03, 1)):
        load = ("constant-current-light", {"set_a": share * amps, "min_v": 3.0})
        short = {"length_m": 0.2, "size": f"{gauge} AWG"}
        plan = draw({"G": stiff(12.0), "E": load}, [("G:+", "E:+", short), ("E:-", "G:-", short)])
        assert rules(plan)["wire-current"] == told


def test_a_thicker_wire_never_carries_less_however_its_size_is_written():
    limits = [current_limit_a(size) for size in sorted(SIZES, key=lambda s: read_size(s).area_mm2)]
    assert limits == sorted(limits)


@pytest.mark.parametrize(("area", "amps"), [(0.75, 6), (1.0, 10), (1.5, 16), (2.5, 25)])
def test_metric_limits_are_on_the_safe_side_of_household_flex(area, amps):
    assert current_limit_a(f"{area} mm²") <= amps
