"""What each assumption changes, against what a builder would expect."""

from datetime import date

import pytest

from tests.support.networks import draw, kinds, lamp_street
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
