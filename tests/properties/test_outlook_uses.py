"""Several scenes on one battery, months off, always-on loads, charging, weak cells and readings."""

import time
from datetime import date, timedelta

import msgspec
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from support.networks import draw, kinds, resistor

from wiring.edits.log_battery import log_battery
from wiring.plan.positions import in_use
from wiring.plan.scene import Scene, UsePattern
from wiring.studies.cells.timeline import Pattern, slices
from wiring.studies.forecast import forecast

NINE = ("battery-9v", {"fitted": "2026-03-01"})
EIGHT_AA = ("battery-alkaline", {"fitted": "2026-03-01"})


def two_lamps(one=None, other=None, battery=EIGHT_AA, lamp="lamp-12v"):
    """Two lamps on one battery, each in a scene with hours of its own."""
    wires = [("G1:+", f"{e}:1") for e in ("E1", "E2")] + [(f"{e}:2", "G1:-") for e in ("E1", "E2")]
    plan = draw({"G1": battery, "E1": lamp, "E2": lamp}, wires)
    scenes, parts = {}, dict(plan.parts)
    for name, part, use in (("s1", "E1", one), ("s2", "E2", other)):
        if use is not None:
            scenes[name] = Scene(id=name, name=f"Scene {name[1]}", use=use)
            parts[part] = msgspec.structs.replace(parts[part], scene=name)
    return plan.with_changes(scenes=scenes, parts=parts)


def outlook(plan, today=date(2026, 3, 1)):
    return forecast(plan, kinds(), in_use(plan, kinds()), "G1", None, today)


def without(plan, part):
    parts = {k: v for k, v in plan.parts.items() if k != part}
    wires = {k: w for k, w in plan.wires.items() if part not in (w.start.part, w.end.part)}
    return plan.with_changes(parts=parts, wires=wires)


def test_equal_hours_are_one_pattern():
    use = UsePattern(2.0, 8.0)
    both = outlook(two_lamps(use, use))
    none = two_lamps().with_changes(use=use)
    assert both.sessions == outlook(none).sessions
    assert both.notes == ()


def test_a_scene_that_is_never_lit_draws_nothing():
    plan = two_lamps(UsePattern(3.0, 4.0), UsePattern(3.0, 0.0))
    alone = without(plan, "E2")
    assert outlook(plan).sessions.typical == pytest.approx(outlook(alone).sessions.typical, rel=1e-6)
    assert "-E1" in outlook(plan).end_reason


def test_a_second_scene_shortens_it_but_less_than_the_same_hours_would():
    long, short = UsePattern(3.0, 8.0), UsePattern(1.0, 8.0)
    alone = outlook(without(two_lamps(long), "E2"))
    both = outlook(two_lamps(long, short))
    same = outlook(two_lamps(long, long))
    assert same.days.typical < both.days.typical < alone.days.typical
    assert "2 ways of use" in both.notes[0] and "Scene 1" in both.notes[0]


def test_charge_of_two_scenes_adds_up():
    # Small loads on large cells: each lamp takes its share, so lives add as rates do.
    cells = ("battery-alkaline", {"cell": "alkaline D"})
    load = resistor(1500.0)
    wires = [
        ("G1:+", "E1:1"),
        ("E1:2", "R1:1"),
        ("R1:2", "G1:-"),
        ("G1:+", "E2:1"),
        ("E2:2", "R2:1"),
        ("R2:2", "G1:-"),
    ]
    plan = draw({"G1": cells, "E1": "lamp-12v", "R1": load, "E2": "lamp-12v", "R2": load}, wires)

    def days(one, other):
        scenes = {"a": Scene(id="a", name="a", use=one), "b": Scene(id="b", name="b", use=other)}
        parts = {
            **plan.parts,
            "E1": msgspec.structs.replace(plan.parts["E1"], scene="a"),
            "E2": msgspec.structs.replace(plan.parts["E2"], scene="b"),
        }
        seen = outlook(plan.with_changes(scenes=scenes, parts=parts))
        return seen.days.typical

    often, seldom, never = UsePattern(20.0, 30.0), UsePattern(10.0, 30.0), UsePattern(1.0, 0.0)
    rates = 1 / days(often, never) + 1 / days(never, seldom)
    assert 1 / days(often, seldom) == pytest.approx(rates, rel=0.1)


def test_sessions_far_more_frequent_than_others_are_quick_and_right():
    often, seldom = UsePattern(0.01, 1000.0), UsePattern(3.0, 0.05)
    started = time.process_time()
    both = outlook(two_lamps(often, seldom))
    assert time.process_time() - started < 1.0  # seconds of a busy machine; some 0.05 on a quiet one
    alone = outlook(without(two_lamps(often), "E2"))
    # One session of the other lamp takes some 0.18 of 3.25 Ah.
    assert both.days.typical == pytest.approx(0.945 * alone.days.typical, rel=0.03)


def test_months_off_make_it_last_longer_in_days_and_not_in_hours():
    always = two_lamps(UsePattern(3.0, 4.0), UsePattern(3.0, 4.0))
    summer_off = UsePattern(3.0, 4.0, months_off=(4, 5, 6, 7, 8, 9))
    winter = outlook(two_lamps(summer_off, summer_off))
    year_round = outlook(always)
    assert winter.days.typical > year_round.days.typical + 100
    assert winter.hours.typical == pytest.approx(year_round.hours.typical, rel=0.1)
    assert winter.swap_on.month not in summer_off.months_off


def test_what_is_always_on_counts_days_not_sessions_and_is_said():
    always = UsePattern(24.0, 31.0)
    seen = outlook(two_lamps(UsePattern(3.0, 4.0), always))
    assert any("always on" in note for note in seen.notes)
    alone = outlook(without(two_lamps(UsePattern(3.0, 4.0)), "E2"))
    assert seen.days.typical < 0.2 * alone.days.typical
    only = outlook(without(two_lamps(always), "E2"))
    assert only.hours.typical == pytest.approx(24 * only.days.typical, rel=1e-6)


@settings(max_examples=30, deadline=None)
@given(
    st.lists(st.tuples(st.floats(0.1, 24.0), st.floats(1.0, 200.0)), min_size=1, max_size=3),
    st.sets(st.integers(1, 12), max_size=11),
)
def test_slices_fill_the_time_and_hold_each_patterns_hours(given_patterns, months):
    patterns = [Pattern(min(s, p), p) for s, p in given_patterns]
    patterns[0] = patterns[0]._replace(months_off=frozenset(months))
    horizon = 2000.0
    pieces = list(slices(patterns, horizon, date(2026, 1, 1)))
    assert sum(p.hours for p in pieces) == pytest.approx(horizon, rel=1e-9)
    for i, pattern in enumerate(patterns):
        lit = sum(p.hours for p in pieces if p.on >> i & 1)
        expected = horizon * pattern.session_h / pattern.period_h
        if i == 0 and months:
            assert lit <= expected + pattern.session_h + 1e-6
        else:
            assert lit == pytest.approx(expected, abs=pattern.session_h + 1e-6)


def test_a_reading_starts_the_forecast_where_it_was_taken():
    plan = two_lamps()
    fresh = outlook(plan)
    half = len(fresh.curve.volts) // 2
    day = date(2026, 3, 1) + timedelta(days=fresh.curve.days[half])
    read = log_battery("G1", "measured", day, fresh.curve.volts[half]).apply(plan)
    seen = outlook(read, day)
    assert seen.measured and seen.counted_from == day
    assert abs(seen.swap_on - fresh.swap_on) <= timedelta(days=20)
    assert "left" in seen.words and "measured" in seen.notes[0]


def test_a_lower_reading_never_leaves_more():
    plan = two_lamps()
    left = []
    for volts in (12.5, 11.5, 10.5, 9.5, 8.0):
        read = log_battery("G1", "measured", date(2026, 4, 1), volts).apply(plan)
        left.append(outlook(read).sessions.typical)
    assert left == sorted(left, reverse=True)
    assert left[-1] < 1


def test_a_swap_after_a_reading_makes_it_fresh_again():
    plan = log_battery("G1", "measured", date(2026, 4, 1), 9.0).apply(two_lamps())
    plan = log_battery("G1", "swapped", date(2026, 5, 1)).apply(plan)
    seen = outlook(plan)
    assert not seen.measured and seen.counted_from == date(2026, 5, 1)
    assert seen.sessions == outlook(two_lamps()).sessions


def test_a_reading_without_load_is_taken_as_open_volts():
    loaded = log_battery("G1", "measured", date(2026, 4, 1), 11.0).apply(two_lamps())
    rested = log_battery("G1", "measured", date(2026, 4, 1), 11.0, under_load=False).apply(two_lamps())
    assert outlook(rested).sessions.typical < outlook(loaded).sessions.typical


@pytest.mark.parametrize(("every", "words"), [(1, "in hand"), (100, "too late")])
def test_charging_after_so_many_sessions_is_judged(every, words):
    use = UsePattern(3.0, 4.0, sessions_per_charge=every)
    seen = outlook(two_lamps(use, use, battery=("battery-nimh", {})))
    assert any(words in note for note in seen.notes)
    assert any("such charges" in note for note in seen.notes)


def test_a_weak_cell_shortens_it_and_is_said():
    good = outlook(two_lamps(battery=("battery-nimh", {})))
    weak = outlook(two_lamps(battery=("battery-nimh", {"weakest": 0.6})))
    assert weak.sessions.typical == pytest.approx(0.6 * good.sessions.typical, rel=0.15)
    assert any("weak cell" in note for note in weak.notes)


def test_protection_that_trips_is_told_from_an_empty_pack():
    seen = outlook(two_lamps(battery=("battery-lipo", {"limit_a": 0.05})))
    assert "protection switches off" in seen.end_reason and seen.words == "not even one session"


def test_the_curve_says_when_sessions_were():
    use = UsePattern(3.0, 4.0)
    seen = outlook(two_lamps(use, use))
    bands = seen.curve.sessions
    assert len(bands) == -(-seen.sessions.typical // 1)
    assert sum(end - start for start, end in bands) * 24 == pytest.approx(seen.hours.typical, rel=1e-6)
    assert bands[1][0] - bands[0][0] == pytest.approx(365.25 / 48, rel=1e-6)


def test_the_band_gives_earliest_and_latest_day():
    seen = outlook(two_lamps())
    low, high = seen.swap_between
    assert low < seen.swap_on <= high
