"""The battery log, prices and use patterns in the plan: edits, refusals, and the way to the file and back."""

import json
from datetime import date

import pytest
from support.editing import quay

from wiring.edits.edit import EditRefused
from wiring.edits.log_battery import log_battery, strike_reading
from wiring.edits.set_plan import set_plan
from wiring.files.decode import decode
from wiring.files.encode import encode
from wiring.files.refusals import NotReadable
from wiring.plan.changes import changes_between
from wiring.plan.scene import UsePattern

DAY = date(2026, 3, 1)


def battery_of(plan):
    return next(p.id for p in plan.parts.values() if p.kind.startswith("battery"))


def logged():
    plan = quay()
    battery = battery_of(plan)
    plan = log_battery(battery, "measured", date(2026, 5, 1), 8.2, note="evening").apply(plan)
    return log_battery(battery, "fitted", DAY).apply(plan)


def test_entries_stand_in_order_of_days_and_once():
    plan = logged()
    assert [e.event for e in plan.battery_log] == ["fitted", "measured"]
    assert log_battery(plan.battery_log[0].battery, "fitted", DAY).apply(plan) is plan


def test_an_entry_can_be_struck_out_once():
    plan = logged()
    edit = strike_reading(plan.battery_log[0])
    shorter = edit.apply(plan)
    assert [e.event for e in shorter.battery_log] == ["measured"]
    with pytest.raises(EditRefused):
        edit.apply(shorter)


@pytest.mark.parametrize(
    ("event", "volts"), [("measured", 0.0), ("measured", -1.0), ("lost", 1.0), ("measured", float("nan"))]
)
def test_entries_that_make_no_sense_are_refused(event, volts):
    plan = quay()
    with pytest.raises(EditRefused):
        log_battery(battery_of(plan), event, DAY, volts).apply(plan)


def test_an_entry_for_a_battery_that_is_gone_is_refused():
    with pytest.raises(EditRefused):
        log_battery("p999", "fitted", DAY).apply(quay())


def test_log_prices_and_use_come_back_from_the_file_byte_for_byte():
    plan = set_plan(
        prices={"alkaline AA": 0.9, "mains kWh": 0.3},
        use=UsePattern(2.0, 6.0, months_off=(6, 7, 8), sessions_per_charge=4),
    ).apply(logged())
    data = encode(plan)
    assert decode(data) == plan
    assert encode(decode(data)) == data
    assert changes_between(quay(), plan).rest


def test_a_plan_without_them_is_written_as_before():
    data = encode(quay())
    assert b"battery_log" not in data and b"prices" not in data and b"months_off" not in data


@pytest.mark.parametrize(
    ("name", "value", "words"),
    [
        ("battery_log", [{"battery": "p2", "day": "1 March", "event": "fitted"}], "is no date"),
        ("battery_log", [{"battery": "p2", "day": "2026-03-01", "event": "lost"}], "must be one of"),
        ("battery_log", [{"battery": "p2", "day": "2026-03-01", "event": "fitted", "v": 1}], "check its"),
        ("prices", {"alkaline AA": -1}, "must lie between"),
        ("use", {"months_off": [13]}, "from 1 (January) to 12"),
        ("use", {"sessions_per_charge": -1}, "must lie between"),
    ],
)
def test_bad_ones_in_a_file_are_named(name, value, words):
    raw = json.loads(encode(quay()))
    raw[name] = value
    with pytest.raises(NotReadable, match=words.replace("(", r"\(").replace(")", r"\)")):
        decode(json.dumps(raw).encode())
