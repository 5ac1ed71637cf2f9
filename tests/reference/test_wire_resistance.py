"""Resistance of copper wires against printed tables."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from wiring.quantities.not_understood import NotUnderstood
from wiring.standards.conductors import SIZES, bare_diameter_mm, insulated_diameter_mm, ohm_per_m
from wiring.standards.current_limits import current_limit_a
from wiring.standards.wire_size import read_size

FOOT_M = 0.3048

# Ω per 1000 ft, solid, 20 °C: reprint of the "Handbook of Electronic Tables and Formulas" wire table; two
# further reprinted 0–40 AWG tables agree.
AWG_OHM_PER_1000_FT = {
    10: 0.9989, 11: 1.260, 12: 1.588, 13: 2.003, 14: 2.525, 15: 3.184, 16: 4.016, 17: 5.064, 18: 6.385,
    19: 8.051, 20: 10.15, 21: 12.80, 22: 16.14, 23: 20.36, 24: 25.67, 25: 32.37, 26: 40.81, 27: 51.47,
    28: 64.90,
    29: 81.83, 30: 103.2, 31: 130.1, 32: 164.1,
}  # fmt: skip

# Diameter in mm and area in circular mils: the same tables.
AWG_SIZE = {
    10: (2.588, 10383),
    16: (1.291, 2583),
    18: (1.024, 1624),
    22: (0.6438, 642),
    28: (0.3211, 159.8),
    32: (0.2019, 63.2),
}

# Ω/km at 20 °C, largest allowed, plain copper: IEC 60228 tables as four cable makers print them; 0.08 to
# 0.34 mm² from the VDE 0295 extract of a cable maker's data sheet.
CLASS_5 = {
    0.08: 243,
    0.14: 138,
    0.25: 79,
    0.34: 57,
    0.5: 39.0,
    0.75: 26.0,
    1: 19.5,
    1.5: 13.3,
    2.5: 7.98,
    4: 4.95,
    6: 3.30,
    10: 1.91,
}
CLASS_1 = {0.5: 36.0, 0.75: 24.5, 1: 18.1, 1.5: 12.1, 2.5: 7.41, 4: 4.61, 6: 3.08, 10: 1.83}

# Ω per 1000 ft at 75 °C, uncoated copper, (solid, seven strands): NFPA 70 (NEC) chapter 9 table 8, two
# copies.
NEC_75_C = {18: (7.77, 7.95), 16: (4.89, 4.99), 14: (3.07, 3.14), 12: (1.93, 1.98), 10: (1.21, 1.24)}


@pytest.mark.parametrize(("gauge", "printed"), AWG_OHM_PER_1000_FT.items())
def test_solid_awg_agrees_with_the_printed_table(gauge, printed):
    assert ohm_per_m(f"{gauge} AWG", solid=True) * 1000 * FOOT_M == pytest.approx(printed, rel=1e-3)


@pytest.mark.parametrize(("gauge", "printed"), AWG_SIZE.items())
def test_awg_diameter_and_area_agree_with_the_printed_table(gauge, printed):
    size = read_size(f"{gauge} AWG")
    assert bare_diameter_mm(size.label, solid=True) == pytest.approx(printed[0], rel=5e-4)
    assert size.area_mm2 / 0.00050670748 == pytest.approx(printed[1], rel=2e-3)


@pytest.mark.parametrize(("area", "printed"), CLASS_5.items())
def test_stranded_metric_wire_has_the_value_of_class_5(area, printed):
    assert ohm_per_m(f"{area} mm²") * 1000 == pytest.approx(printed, rel=1e-9)


@pytest.mark.parametrize(("area", "printed"), CLASS_1.items())
def test_solid_metric_wire_has_the_value_of_class_1(area, printed):
    assert ohm_per_m(f"{area} mm²", solid=True) * 1000 == pytest.approx(printed, rel=1e-9)


def test_class_5_is_not_the_nominal_area_of_ideal_copper():
    assert ohm_per_m("1.5 mm²") * 1000 > 1.13 * 1000 / 58 / 1.5


@pytest.mark.parametrize(("gauge", "printed"), NEC_75_C.items())
def test_warm_wires_agree_with_the_nec_table(gauge, printed):
    # The table rounds to three digits, and its stranding factor runs from 2.0 to 2.6 %.
    for solid, value in zip((True, False), printed, strict=True):
        per_1000_ft = ohm_per_m(f"{gauge} AWG", solid=solid, celsius=75.0) * 1000 * FOOT_M
        assert per_1000_ft == pytest.approx(value, rel=0.008)


# R at 20 °C over R at a temperature: IEC 60228 annex, 250 / (230 + t) rounded to three digits, reprinted by
# a cable maker; exact copper differs from it by 0.3 % at 75 °C.
@pytest.mark.parametrize(
    ("celsius", "factor"), [(5, 1.064), (10, 1.042), (30, 0.962), (50, 0.893), (75, 0.820)]
)
def test_temperature_factor_agrees_with_iec_60228(celsius, factor):
    assert ohm_per_m("1 mm²") / ohm_per_m("1 mm²", celsius=celsius) == pytest.approx(factor, rel=5e-3)


def test_thicker_wire_of_one_make_has_less_resistance():
    for metric in (False, True):
        offered = sorted(
            (s for s in SIZES if s.endswith("mm²") is metric), key=lambda s: read_size(s).area_mm2
        )
        ohms = [ohm_per_m(size) for size in offered]
        assert ohms == sorted(ohms, reverse=True)


@pytest.mark.parametrize(
    ("typed", "label"),
    [("22 AWG", "22 AWG"), ("awg22", "22 AWG"), ("#22", "22 AWG"), ("22 ga", "22 AWG"),
    ("0,5 mm²", "0.5 mm²"),
     ("0.5mm2", "0.5 mm²"), ("1.0 mm²", "1 mm²"), (".75 sq mm", "0.75 mm²")],
)  # fmt: skip
def test_sizes_are_read_as_people_write_them(typed, label):
    assert read_size(typed).label == label


@pytest.mark.parametrize("typed", ["", "22", "AWG", "99 AWG", "0 mm²", "1e3 mm²", "22 AWG 3", "x" * 10_000])
def test_what_is_no_size_is_refused_in_a_sentence(typed):
    with pytest.raises(NotUnderstood, match=r"type for example 22 AWG or 0\.5 mm²\.$"):
        read_size(typed)


@settings(deadline=None)
@given(st.text(max_size=50) | st.from_regex(r"[#0-9., ]{0,6}(AWG|awg|ga|mm²|mm2|sq mm)?", fullmatch=True))
def test_reading_a_size_never_fails_otherwise(typed):
    try:
        size = read_size(typed)
    except NotUnderstood:
        return
    assert read_size(size.label) == size
    assert 1e-4 < ohm_per_m(size.label) < 10.0
    assert current_limit_a(size.label) > 0.0
    assert insulated_diameter_mm(size.label) > bare_diameter_mm(size.label) > 0.0


def test_every_offered_size_reads_back_as_itself():
    assert [read_size(size).label for size in SIZES] == list(SIZES)
