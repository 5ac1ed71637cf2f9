"""What cold takes from a battery, against the published statements the types were set to or can be held to.

Lithium-ion: the plot of a maker's 18650 sheet at 1 It as read by others, 3.34, 3.28, 3.01, 2.89 and 2.60 Ah
at 40, 25, 0, -10 and -20 °C (the type was set to it), and another maker's lower limits, 80, 75 and 60 % at
0, -10 and -20 °C. Alkaline and lithium AA: a maker's sheets as quoted by a third party, "at zero degrees
and 1000 mA about seven times the energy of an alkaline one" (set to it) and, for room temperature, three to
four times (not). Alkaline below freezing: a battery dealer's "about half, or better" between -20 and 0 °C.
Nothing was found in figures for NiMH and zinc-carbon: their warmth is from memory. Lead-acid stands with
its discharges.
"""

import pytest
from support.cell_runs import current, life

from wiring.standards.cells import CELLS
from wiring.studies.cells.pack import Grade, packed

TYPICAL = Grade(0.92)


def given_ah(key, amps, end_v, celsius, grade=Grade()):  # noqa: B008 - a frozen value
    return life("", current(amps), end_v, pack=packed(CELLS[key], celsius=celsius, grade=grade)).delivered_ah


def energy_wh(key, amps, celsius, grade=Grade()):  # noqa: B008 - a frozen value
    run = life("", current(amps), 0.8, pack=packed(CELLS[key], celsius=celsius, grade=grade))
    pairs = zip(run.samples, run.samples[1:], strict=False)
    return sum((b.lit_h - a.lit_h) * amps * (a.volts_v + b.volts_v) / 2 for a, b in pairs)


@pytest.mark.parametrize(("celsius", "charge_ah"), [(40, 3.34), (0, 3.01), (-10, 2.89), (-20, 2.60)])
def test_lithium_ion_as_its_sheet_says(celsius, charge_ah):
    share = given_ah("li-ion 18650", 2.5, 2.5, celsius) / given_ah("li-ion 18650", 2.5, 2.5, 25)
    assert share == pytest.approx(charge_ah / 3.28, abs=0.02)


@pytest.mark.parametrize(("celsius", "least"), [(0, 0.80), (-10, 0.75), (-20, 0.60)])
def test_lithium_ion_above_another_makers_limits(celsius, least):
    assert given_ah("li-ion 18650", 0.5, 2.5, celsius) / given_ah("li-ion 18650", 0.5, 2.5, 25) > least


@pytest.mark.parametrize(("celsius", "low", "high"), [(0, 6.0, 8.0), (25, 3.0, 4.0)])
def test_energy_of_a_lithium_cell_over_that_of_an_alkaline_one_at_an_ampere(celsius, low, high):
    alkaline_wh = energy_wh("alkaline AA", 1.0, celsius, TYPICAL)
    assert low < energy_wh("lithium AA", 1.0, celsius) / alkaline_wh < high


@pytest.mark.parametrize("celsius", [0, -10, -20])
def test_alkaline_below_freezing_gives_about_half_or_better_on_light_loads(celsius):
    assert given_ah("alkaline AA", 0.025, 0.8, celsius) / given_ah("alkaline AA", 0.025, 0.8, 20) > 0.5
    assert given_ah("alkaline AA", 0.1, 0.8, celsius) / given_ah("alkaline AA", 0.1, 0.8, 20) > 0.4


@pytest.mark.parametrize("key", ["nimh AA", "zinc-carbon AA", "lithium AA", "lipo 1 cell"])
def test_cold_takes_more_the_colder_it_is(key):
    amps = CELLS[key].rated_ah / 10
    found = [given_ah(key, amps, CELLS[key].floor_v, celsius) for celsius in (20, 0, -20)]
    assert found[0] > found[1] > found[2] > 0
