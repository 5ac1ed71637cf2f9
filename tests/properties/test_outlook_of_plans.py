"""The outlook of a battery in a plan: its band, its reason, its words and its swap date."""

import time
from datetime import date, timedelta

import msgspec
import pytest
from support.findings import situation
from support.networks import draw, kinds, lamp_street, resistor

from wiring.plan.positions import in_use
from wiring.plan.scene import Scene, UsePattern
from wiring.studies.forecast import forecast
from wiring.studies.forecast_words import rounded
from wiring.studies.time_words import time_words

NINE = ("battery-9v", {"fitted": "2026-03-01"})


def on_battery(battery=NINE, load=None, first="1", second="2"):
    return draw(
        {"G1": battery, "E1": load or resistor(620)}, [("G1:+", f"E1:{first}"), ("G1:-", f"E1:{second}")]
    )


def outlook(plan, use=None, today=None):
    return forecast(plan, kinds(), in_use(plan, kinds()), "G1", use, today)


def test_band_holds_the_typical_value_and_dates_follow_from_it():
    seen = outlook(on_battery())
    for span in (seen.hours, seen.sessions, seen.days):
        assert 0 < span.low < span.typical < span.high
    assert seen.swap_on == date(2026, 3, 1) + timedelta(days=seen.days.typical)
    assert seen.hours.typical / 3.0 == pytest.approx(seen.sessions.typical, rel=1e-6)


def test_nine_volt_block_on_620_ohm_lasts_as_its_maker_says():
    # A maker's data sheet: 49 h at 2 h a day to 5.4 V for a good cell; ordinary ones hold 0.92 of that.
    curve = outlook(on_battery(), UsePattern(2.0, 365.25 / 12)).curve
    hours = next(h for h, v in zip(curve.hours, curve.volts, strict=True) if v < 5.4)
    assert hours == pytest.approx(0.92 * 49.0, rel=0.08)


def test_the_scene_of_the_battery_decides_how_it_is_used():
    plan = on_battery()
    scene = Scene(id="s", name="quay", use=UsePattern(1.0, 8.0))
    placed = msgspec.structs.replace(plan.parts["G1"], scene="s")
    plan = plan.with_changes(scenes={"s": scene}, parts={**plan.parts, "G1": placed})
    seen = outlook(plan)
    assert seen.hours.typical == pytest.approx(seen.sessions.typical * 1.0, rel=1e-6)
    assert seen.days.typical == pytest.approx(seen.sessions.typical * 365.25 / 12 / 8, rel=0.15)


def test_words_name_the_month_when_a_fitting_date_is_known():
    words = outlook(on_battery()).words
    assert words.startswith("about ")
    assert "swap around" in words
    assert "2026" in words


def test_words_name_a_time_when_no_fitting_date_is_known():
    seen = outlook(on_battery(("battery-9v", {})))
    assert seen.swap_on is None
    assert "months" in seen.words


def test_words_say_when_a_swap_was_due():
    assert "was due" in outlook(on_battery(), today=date(2027, 6, 1)).words


def test_a_date_that_is_none_is_left_out():
    assert outlook(on_battery(("battery-9v", {"fitted": "last spring"}))).swap_on is None


def test_filament_lamps_end_it_by_their_light():
    seen = outlook(on_battery(("battery-alkaline", {}), "lamp-12v"))
    assert "-E1" in seen.end_reason
    assert "dimmer" in seen.end_reason
    assert seen.curve.lightness[0] == pytest.approx(100.0, abs=0.5)
    assert seen.curve.lightness[-1] == pytest.approx(50.0, abs=2.0)
    assert list(seen.curve.hours) == sorted(seen.curve.hours)


def test_a_less_demanding_eye_makes_it_last_longer():
    plan = on_battery(("battery-alkaline", {}), "lamp-12v")
    easy = plan.with_changes(habits=msgspec.structs.replace(plan.habits, dim_lightness=30.0))
    assert outlook(easy).hours.typical >= outlook(plan).hours.typical


def test_a_module_that_drops_out_ends_it():
    seen = outlook(on_battery(("battery-alkaline", {}), ("sound-module", {"min_v": 9.0}), "+", "-"))
    assert "-E1 no longer gets the volts" in seen.end_reason
    assert seen.curve.volts[-1] == pytest.approx(9.0, abs=0.1)


def test_rechargeables_end_where_their_cells_must_be_spared():
    assert "charged" in outlook(on_battery(("battery-nimh", {}), resistor(120))).end_reason


def test_a_battery_nothing_hangs_on_has_a_shelf_life():
    plan = draw({"G1": NINE}, [])
    seen = outlook(plan)
    assert seen.sessions.typical == 0
    # 2.5 % a year: a fifth is lost after ln(1 / 0.8) / 0.025 = 8.9 years.
    assert seen.days.typical / 365.25 == pytest.approx(8.93, rel=0.01)
    assert "on the shelf" in seen.words


def test_a_pack_that_cannot_carry_the_load_says_so():
    seen = outlook(on_battery(("battery-9v", {}), resistor(1.0)))
    assert seen.sessions.typical < 0.2
    assert seen.words == "not even one session"


def test_a_load_of_next_to_nothing_ends_by_age():
    seen = outlook(on_battery(("battery-alkaline", {}), resistor(1e6)))
    assert "age" in seen.end_reason
    assert "ten years" in seen.words


def test_a_switch_that_is_off_saves_the_battery_and_a_held_button_does_not_spend_it():
    plan = draw(
        {"G1": NINE, "S1": "toggle-on-off", "S2": "push-to-make", "E1": resistor(620), "E2": resistor(20)},
        [
            ("G1:+", "S1:13"),
            ("S1:14", "E1:1"),
            ("E1:2", "G1:-"),
            ("G1:+", "S2:13"),
            ("S2:14", "E2:1"),
            ("E2:2", "G1:-"),
        ],
    )
    usual = situation(plan).outlooks["G1"]
    assert situation(plan, {"S1": "off"}).outlooks["G1"].sessions.typical == 0
    assert situation(plan, {"S2": "pressed"}).outlooks["G1"].sessions == usual.sessions


def test_more_capacity_lasts_longer():
    small = outlook(on_battery(("battery-nimh", {"capacity": 1.0}), "lamp-12v"))
    large = outlook(on_battery(("battery-nimh", {"capacity": 2.0}), "lamp-12v"))
    assert large.hours.typical == pytest.approx(2 * small.hours.typical, rel=0.15)


def test_times_and_counts_are_worded_no_finer_than_they_are_known():
    assert [rounded(n) for n in (1.2, 7.4, 13.7, 43, 118, 430)] == ["1", "7", "14", "45", "120", "450"]
    assert [time_words(d) for d in (0.3, 1, 12, 34, 90, 800)] == [
        "7 hours", "24 hours", "12 days", "5 weeks", "3 months", "2 years",
    ]  # fmt: skip


def test_ten_lamps_on_a_battery_are_forecast_quickly():
    plan = lamp_street(10, "led-warm-white", ("battery-alkaline", {}))
    outlook(plan)
    times = []
    for _ in range(3):
        start = time.process_time()
        outlook(plan)
        times.append(time.process_time() - start)
    assert min(times) < 0.3  # 0.06 s on a quiet core; the rest is for a busy machine
