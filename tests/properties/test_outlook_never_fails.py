"""Whatever is set on batteries, scenes and log, a forecast answers, soon and with numbers that make sense."""

import math
from datetime import date

import msgspec
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from support.networks import draw, kinds, resistor

from wiring.plan.battery_log import EVENTS, BatteryReading
from wiring.plan.positions import in_use
from wiring.plan.scene import Scene, UsePattern
from wiring.studies.cells.bank import Bank
from wiring.studies.forecast import forecast
from wiring.studies.sensitivity import sensitivities

KIND_KEYS = [k.key for k in kinds().values() if k.behaviour == "battery"]
TODAY = date(2026, 3, 1)
MOST_STEPS = 3000  # of the wells, about two seconds; an ordinary bank takes 1000

uses = st.builds(
    UsePattern,
    st.floats(0, 24),
    st.one_of(st.just(0.0), st.floats(0.01, 1000)),
    st.lists(st.integers(1, 12), max_size=12).map(tuple),
    st.integers(0, 1000),
)
days = st.dates(date(1990, 1, 1), date(2090, 12, 31)).map(date.isoformat)
readings = st.builds(
    BatteryReading,
    battery=st.sampled_from(["G1", "G9"]),
    day=days,
    event=st.sampled_from(EVENTS),
    volts_v=st.floats(0, 100),
    under_load=st.booleans(),
)


@st.composite
def batteries(draw_):
    kind = kinds()[draw_(st.sampled_from(KIND_KEYS))]
    return kind.key, {
        "cell": draw_(st.sampled_from([*kind.setting("cell").choices, "potato"])),
        "in_series": float(draw_(st.integers(1, 24))),
        "in_parallel": float(draw_(st.integers(1, 20))),
        "capacity": draw_(st.sampled_from([0.0, 1e-3, 1.0, 1000.0])),
        "weakest": draw_(st.sampled_from([0.05, 0.7, 1.0])),
        "limit_a": draw_(st.sampled_from([0.0, 1e-3, 5.0])),
        "fitted": draw_(st.one_of(st.just(""), days)),
    }


LOADS = [resistor(0.5), resistor(300.0), resistor(1e6), "lamp-12v", "led-white", "sound-module", "flasher"]


@st.composite
def plans(draw_):
    ends = {"sound-module": "+-", "flasher": "+-", "led-white": "AK"}
    parts, wires, scenes = {"G1": draw_(batteries())}, [], {}
    if draw_(st.booleans()):
        parts["G2"] = draw_(batteries())
        wires += [("G1:+", "G2:+"), ("G1:-", "G2:-")]
    for i, load in enumerate(draw_(st.lists(st.sampled_from(LOADS), max_size=3))):
        plus, minus = ends.get(load, "12") if isinstance(load, str) else "12"
        parts[f"E{i}"] = load
        wires += [("G1:+", f"E{i}:{plus}"), (f"E{i}:{minus}", "G1:-")]
        scenes[f"s{i}"] = Scene(id=f"s{i}", name=f"s{i}", use=draw_(uses))
    plan = draw(parts, wires)
    placed = {
        k: msgspec.structs.replace(p, scene=f"s{k[1:]}") if f"s{k[1:]}" in scenes and k[0] == "E" else p
        for k, p in plan.parts.items()
    }
    return plan.with_changes(
        parts=placed,
        scenes=scenes,
        use=draw_(uses),
        battery_log=tuple(draw_(st.lists(readings, max_size=3))),
        habits=msgspec.structs.replace(
            plan.habits, ambient_c=draw_(st.floats(-40, 80)), dim_lightness=draw_(st.floats(1, 100))
        ),
    )


@settings(max_examples=20, deadline=8000, suppress_health_check=[HealthCheck.too_slow])
@given(plans())
def test_a_forecast_answers(plan):
    seen = forecast(plan, kinds(), in_use(plan, kinds()), "G1", None, TODAY)
    for span in (seen.hours, seen.sessions, seen.days):
        assert all(math.isfinite(v) and v >= 0 for v in span)
        assert span.low <= span.typical <= span.high
    assert seen.words and seen.end_reason.endswith(".")
    assert all(note.endswith(".") and "\n" not in note for note in seen.notes)
    assert all(math.isfinite(v) for row in seen.curve[:4] for v in row)
    assert len(seen.curve.hours) == len(seen.curve.volts) == len(seen.curve.days)


def test_a_nearly_dead_cell_in_one_of_two_unlike_strings_takes_few_steps(monkeypatch):
    """The fuller string lifts the other over its end session after session."""
    cells = {"in_series": 24.0, "in_parallel": 8.0, "capacity": 1.0, "weakest": 0.05}
    parts = {
        "G1": ("battery-alkaline", {"cell": "alkaline D", **cells}),
        "G2": ("battery-li-ion", {"in_series": 12.0, "in_parallel": 9.0, "weakest": 0.05}),
        "E1": "sound-module",
    }
    wires = [("G1:+", "G2:+"), ("G1:-", "G2:-"), ("G1:+", "E1:+"), ("E1:-", "G1:-")]
    plan = draw(parts, wires).with_changes(use=UsePattern(16.6, 269.5, (1, 3)))
    steps, after = [], Bank.after
    monkeypatch.setattr(Bank, "after", lambda *given: steps.append(1) or after(*given))
    seen = forecast(plan, kinds(), in_use(plan, kinds()), "G1", None, TODAY)
    assert seen.hours.low > 0 and len(steps) < MOST_STEPS


@settings(max_examples=4, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(plans())
def test_so_do_its_assumptions(plan):
    for effect in sensitivities(plan, kinds(), in_use(plan, kinds()), "G1", TODAY):
        assert math.isfinite(effect.change) and effect.days >= 0
