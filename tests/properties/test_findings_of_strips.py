"""A strip takes what each of its sections takes, and may: told by the section, whatever its length."""

import pytest
from support.findings import found, rules, situation
from support.networks import draw, kinds, stiff

from wiring.plan.plan import Plan


def strip(volts: float, length_m: float) -> Plan:
    parts = {"G": stiff(volts), "E": ("led-strip-warm-white", {"length": length_m})}
    return draw(parts, [("G:+", "E:+"), ("E:-", "G:-")])


@pytest.mark.parametrize(("length_m", "sections"), [(0.05, 1), (0.5, 10), (2.0, 40)])
def test_sections_share_the_current_and_bear_it_together(length_m, sections):
    values = kinds()["led-strip-warm-white"].values({})
    well = situation(strip(12.0, length_m))
    taken_a = well.figures.parts["E"].current_a
    assert taken_a == pytest.approx(sections * values["forward_a"], rel=0.05)
    assert "led-current" not in rules(strip(12.0, length_m))
    told = found(strip(16.0, length_m), "led-current")
    most_a = sections * values["max_a"]
    shown = f"{1000 * most_a:.3g} mA" if most_a < 1.0 else f"{most_a:.3g} A"
    assert f"no more than {shown} is allowed" in told.what
