"""Filament lamps off their rating, limits of wires, fuse gates and low-voltage limits against print."""

import math

import pytest

from wiring.standards import low_voltage, rerating
from wiring.standards.conductors import SIZES, current_limit_a, read_size
from wiring.standards.current_limits import current_limit_source
from wiring.standards.fuses import RATINGS_A, holds_for_s, opens_within_s, rating_down, rating_up
from wiring.standards.resettable_fuses import FAMILY, hold_share

# V/V0: current, light (exponent 3.4), life (exponent −12). Computed from the exponents printed by the
# encyclopaedia page "Lamp rerating" after Fink & Beaty, Standard Handbook for Electrical Engineers, 11th
# ed. 1978, p. 22-8.
RERATED = {
    0.70: (0.822, 0.297, 72.0), 0.80: (0.885, 0.468, 14.6), 0.90: (0.944, 0.699, 3.54),
    0.95: (0.972, 0.840, 1.85), 1.05: (1.027, 1.180, 0.557), 1.10: (1.054, 1.383, 0.319),
}  # fmt: skip

# A in a bundle, 105 °C wire: FAA AC 43.13-1B table 11-9.
FAA_BUNDLE = {24: 2.5, 22: 3, 20: 4, 18: 6, 16: 7, 14: 10, 12: 13, 10: 17}
# A, "power transmission": Handbook of Electronic Tables and Formulas, 700 circular mils an ampere; rounded
# there.
HANDBOOK = {26: 0.361, 28: 0.226, 30: 0.142, 32: 0.091}


@pytest.mark.parametrize(("ratio", "printed"), RERATED.items())
def test_lamps_follow_the_rerating_table(ratio, printed):
    assert rerating.relative_current(ratio) == pytest.approx(printed[0], abs=6e-4)
    assert rerating.relative_light(ratio) == pytest.approx(printed[1], abs=6e-4)
    assert rerating.relative_life(ratio) == pytest.approx(printed[2], rel=0.005)


def test_power_exponent_rounds_to_the_printed_one():
    assert round(rerating.POWER_EXPONENT + 0.01, 1) == 1.6  # printed 1.6, from 1 + 0.55


@pytest.mark.parametrize(("gauge", "amps"), FAA_BUNDLE.items())
def test_wires_from_24_awg_have_the_bundle_limit(gauge, amps):
    assert current_limit_a(f"{gauge} AWG") == amps
    assert "FAA" in current_limit_source(f"{gauge} AWG")


@pytest.mark.parametrize(("gauge", "amps"), HANDBOOK.items())
def test_thinner_wires_have_the_handbook_limit(gauge, amps):
    assert current_limit_a(f"{gauge} AWG") == pytest.approx(amps, rel=0.02)
    assert "handbook" in current_limit_source(f"{gauge} AWG")


def test_a_thicker_wire_never_carries_less_however_its_size_is_written():
    limits = [current_limit_a(size) for size in sorted(SIZES, key=lambda s: read_size(s).area_mm2)]
    assert limits == sorted(limits)


# A for two loaded cores of household flex, 30 °C: DIN VDE 0298-4 as a cable maker's catalogue has it.
@pytest.mark.parametrize(("area", "amps"), [(0.75, 6), (1.0, 10), (1.5, 16), (2.5, 25)])
def test_metric_limits_are_on_the_safe_side_of_household_flex(area, amps):
    assert current_limit_a(f"{area} mm²") <= amps


# IEC 60127-2 sheet 2 (F, 125 mA to 6.3 A) from a maker's 5 × 20 mm data sheet, sheet 3 (T) from another
# maker's.
@pytest.mark.parametrize(
    ("speed", "multiple", "not_before_s", "not_after_s"),
    [("fast", 1.5, 3600, math.inf), ("fast", 2.1, 0, 1800), ("fast", 2.75, 0.05, 2),
     ("fast", 4, 0.01, 0.3), ("fast", 10, 0, 0.02), ("slow", 1.5, 3600, math.inf), ("slow", 2.1, 0, 120),
     ("slow", 2.75, 0.6, 10),
     ("slow", 4, 0.15, 3), ("slow", 10, 0.02, 0.3)],
)  # fmt: skip
def test_fuses_have_the_gates_of_their_standard(speed, multiple, not_before_s, not_after_s):
    assert opens_within_s(1.0, multiple, speed) == not_after_s
    assert holds_for_s(1.0, multiple, speed) >= not_before_s
    if not_before_s:
        assert holds_for_s(1.0, multiple, speed) == not_before_s
        assert holds_for_s(1.0, multiple * 1.001, speed) < not_before_s


def test_ratings_are_found_from_both_sides():
    assert rating_up(0.9) == 1.0 and rating_up(1.0) == 1.0 and rating_up(11.0) is None
    assert rating_down(0.9) == 0.8 and rating_down(1.0) == 1.0 and rating_down(0.01) is None
    assert list(RATINGS_A) == sorted(set(RATINGS_A))


def test_resettable_fuses_trip_at_twice_their_hold_current():
    # A maker's sheet of a radial family: trip = 2 × hold throughout.
    assert all(f.trip_a == pytest.approx(2 * f.hold_a) for f in FAMILY)
    assert hold_share(20) == 1.0 and hold_share(30) == pytest.approx(0.91) and hold_share(999) == 0.40


def test_limited_power_sources():
    # IEC 60950-1 tables 2B and 2C: 12 V 60 VA and 5 A fuse; 24 V 100 VA, 4.17 A fuse, 41.7 A worst fault.
    twelve, fused = low_voltage.limited_by_itself(12.0), low_voltage.limited_by_fuse(24.0)
    assert twelve == (8.0, 60.0, 0.0)
    assert fused is not None and fused.fuse_a == pytest.approx(4.17, abs=0.01)
    assert fused.short_circuit_a == pytest.approx(41.7, abs=0.05)
    assert low_voltage.limited_by_itself(61.0) is None
