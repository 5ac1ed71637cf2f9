"""Rechargeables fade with the charges that are logged; loads heavier than what was measured are told."""

import re
from datetime import date, timedelta

import pytest
from msgspec.structs import replace
from support.networks import draw, kinds, lamp_street, resistor

from wiring.plan.battery_log import CHARGED, SWAPPED, BatteryReading
from wiring.plan.positions import in_use
from wiring.plan.scene import UsePattern
from wiring.standards.cells import CELLS
from wiring.studies.battery_part import MOST_FADED, battery_part
from wiring.studies.forecast import forecast

TODAY = date(2026, 9, 1)


def charged(times, key="battery-nimh", more=()):
    plan = lamp_street(4, "lamp-12v", (key, {"fitted": "2024-01-01"}))
    start = date(2024, 1, 2)
    entries = [
        BatteryReading(battery="G1", day=(start + timedelta(days=n)).isoformat(), event=CHARGED)
        for n in range(times)
    ]
    return plan.with_changes(battery_log=(*entries, *more))


def outlook(plan):
    return forecast(plan, kinds(), in_use(plan, kinds()), "G1", None, TODAY)


def test_more_charges_never_make_it_last_longer():
    hours = [outlook(charged(n)).hours.typical for n in (0, 1, 100, 400)]
    assert hours == sorted(hours, reverse=True)
    assert hours[1] == pytest.approx(hours[0], rel=0.002)
    least, most = CELLS["nimh AA"].fade
    assert hours[3] == pytest.approx(hours[0] * (1 - 400 * (least + most) / 2), rel=0.05)


def test_the_band_widens_with_wear():
    new, worn = outlook(charged(0)).hours, outlook(charged(400)).hours
    assert worn.low / worn.typical < new.low / new.typical
    assert worn.high / worn.typical > new.high / new.typical


def test_wear_is_told_once_it_is_more_than_the_spread_hides():
    assert not any("Charged" in note for note in outlook(charged(3)).notes)
    assert any("Charged 100 times so far" in note for note in outlook(charged(100)).notes)


def test_new_cells_begin_anew():
    swap = BatteryReading(battery="G1", day="2026-08-01", event=SWAPPED)
    plan = charged(300, more=(swap,))
    assert battery_part(plan, kinds(), "G1").charged == 0
    assert outlook(plan).hours.typical == pytest.approx(outlook(charged(0)).hours.typical, rel=1e-3)


def test_dry_cells_have_nothing_to_fade_and_no_battery_fades_to_nothing():
    assert battery_part(charged(9, "battery-alkaline"), kinds(), "G1").faded("low") == 0
    assert battery_part(charged(9000), kinds(), "G1").faded("low") == MOST_FADED


def charge_note(use: UsePattern, key: str = "battery-nimh") -> str:
    plan = lamp_street(4, "lamp-12v", (key, {"fitted": "2024-01-01"})).with_changes(use=use)
    (note,) = [note for note in outlook(plan).notes if "such charges" in note]
    return note


def test_years_of_charges_are_told_until_age_ends_the_cells():
    """A NiMH cell stands 500 full charges: some years of them daily, longer than it keeps once a month."""
    daily, monthly = charge_note(UsePattern(3.0, 30.0)), charge_note(UsePattern(0.5, 1.0))
    assert re.search(r"stand some 500 such charges, about \d+ (years|months) at this use\.", daily)
    assert monthly == "Its cells stand some 500 such charges, so age will end it, not use."


def test_charged_before_it_is_empty_it_stands_more_charges_that_hold_less():
    """The same charge in all: a quarter taken out each time, four times as often."""
    use = UsePattern(1.0, 30.0)
    plan = lamp_street(4, "lamp-12v", ("battery-nimh", {"fitted": "2024-01-01"})).with_changes(use=use)
    every = int(outlook(plan).sessions.typical // 4)
    assert every >= 1
    shallow = charge_note(replace(use, sessions_per_charge=every))
    depth = every / outlook(plan).sessions.typical
    assert int(re.search(r"some (\d+) such", shallow)[1]) == pytest.approx(500 / depth, rel=0.02)


def test_a_load_far_beyond_what_was_measured_is_called_rough():
    def loaded(ohms):
        block = ("battery-9v", {})
        return outlook(draw({"G1": block, "R1": resistor(ohms)}, [("G1:+", "R1:1"), ("R1:2", "G1:-")]))

    assert any("take the hours as rough" in note for note in loaded(60.0).notes)
    assert not any("rough" in note for note in loaded(300.0).notes)


@pytest.mark.parametrize("key", ["battery-lead-acid", "battery-nimh", "battery-alkaline"])
def test_the_typical_end_is_where_the_course_ends(key):
    """Also where a warm room takes more than good cells give, as it does from a battery hardly used."""
    seldom = lamp_street(2, "led-warm-white", (key, {})).with_changes(use=UsePattern(1.0, 20.0))
    known = outlook(seldom)
    assert known.hours.typical == pytest.approx(known.curve.hours[-1], rel=1e-6)
    assert known.days.typical == pytest.approx(known.curve.days[-1], rel=1e-6)
    assert known.hours.low <= known.hours.typical <= known.hours.high
