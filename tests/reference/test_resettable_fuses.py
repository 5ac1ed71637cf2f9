"""Resettable fuses against makers' sheets."""

import pytest
from support.networks import kinds

from wiring.standards.resettable_fuses import hold_share

# A maker's sheet of a radial family, 23 °C: hold A, trip A, least Ω when new, most Ω once tripped.
FAMILY = [
    (0.10, 0.20, 2.50, 7.50), (0.25, 0.50, 1.00, 3.00), (0.50, 1.00, 0.41, 1.17), (0.90, 1.80, 0.14, 0.47),
    (1.10, 2.20, 0.10, 0.27), (1.85, 3.70, 0.040, 0.11), (3.00, 6.00, 0.020, 0.08), (5.00, 10.0, 0.010, 0.05),
]  # fmt: skip

# A holds at an ambient temperature in °C: a maker's sheet of a radial 99 V type.
HOLDS_A = {-40: 0.85, -20: 0.75, 0: 0.65, 20: 0.55, 40: 0.45, 50: 0.40, 60: 0.35, 70: 0.30, 85: 0.22}


def test_the_one_in_the_catalogue_is_of_the_family():
    values = kinds()["resettable-fuse"].values({})
    ((trip_a, least_ohm, most_ohm),) = [row[1:] for row in FAMILY if row[0] == values["hold_a"]]
    assert values["trip_a"] == trip_a
    assert least_ohm < values["cold_ohm"] < most_ohm


@pytest.mark.parametrize(("celsius", "amps"), HOLDS_A.items())
def test_they_hold_less_in_a_warm_place(celsius, amps):
    assert 0.55 * hold_share(celsius) == pytest.approx(amps, abs=0.005)


def test_between_and_beyond_the_printed_temperatures():
    assert hold_share(30) == pytest.approx(0.91)
    assert hold_share(-60) == 1.55 and hold_share(999) == 0.40
