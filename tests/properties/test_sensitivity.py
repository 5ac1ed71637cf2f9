"""What each assumption changes, against what a builder would expect."""

from datetime import date

import pytest
from support.networks import draw, kinds, lamp_street

from wiring.plan.battery_log import MEASURED, BatteryReading
from wiring.plan.positions import in_use
from wiring.studies.forecast import forecast
from wiring.studies.sensitivity import sensitivities

TODAY = date(2026, 3, 1)


def effects(plan):
    return {e.assumption: e for e in sensitivities(plan, kinds(), in_use(plan, kinds()), "G1", TODAY)}


@pytest.fixture(scope="module")
def lamps():
    return lamp_street(4, "lamp-12v", ("battery-alkaline", {}))


def test_the_first_is_the_forecast_itself(lamps):
    usual = forecast(lamps, kinds(), in_use(lamps, kinds()), "G1", None, TODAY)
    first = next(iter(effects(lamps).values()))
    assert first.sessions == pytest.approx(usual.sessions.typical, rel=1e-9)
    assert first.change == 0


def test_each_changes_it_the_way_one_expects(lamps):
    found = effects(lamps)
    for shorter in ("poor cells", "a tenth less charge in them", "a tenth more current",
                    "inner resistance half as much again", "twice as many sessions a month"):  # fmt: skip
        assert found[shorter].change < 0, shorter
    for longer in ("the best cells", "dimmer light put up with"):
        assert found[longer].change > 0, longer
    assert found["less dim light minded"].change <= 0
    assert found["twice as many sessions a month"].change == pytest.approx(-0.5, abs=0.05)


def test_the_largest_comes_first(lamps):
    changes = [abs(e.change) for e in effects(lamps).values()][1:]
    assert changes == sorted(changes, reverse=True)


def test_a_battery_nothing_hangs_on_has_none():
    assert effects(draw({"G1": ("battery-9v", {})}, [])) == {}


def test_a_reading_is_of_the_room_as_it_is(lamps):
    """The volts read say how much is left; a colder room does not make that more."""
    reading = BatteryReading(battery="G1", day="2026-02-01", event=MEASURED, volts_v=9.6)
    found = effects(lamps.with_changes(battery_log=(reading,)))
    assert found["a room 10 degrees colder"].change < 0 < found["a room 10 degrees warmer"].change
    assert found["inner resistance half as much again"].change < 0
    assert found["a tenth less charge in them"].change < 0


@pytest.mark.parametrize("key", ["battery-nimh", "battery-li-ion", "battery-lead-acid"])
def test_rechargeables_fade_and_how_much_is_told_as_a_band(key):
    found = effects(lamp_street(4, "lamp-12v", (key, {})))
    little, much = (
        found[f"after 200 more charges, if they fade {word}"].change for word in ("little", "much")
    )
    assert much < little < 0
    assert much > -0.5


def test_dry_cells_do_not_fade(lamps):
    assert not any("charges" in name for name in effects(lamps))
