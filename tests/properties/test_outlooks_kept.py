"""A forecast that is kept is the one that would be made anew, whatever of the plan is edited."""

from datetime import date
from pathlib import Path

import msgspec
import pytest
from support.cold import cold
from support.networks import kinds

import wiring.studies.forecast as forecasts
from wiring.edits.set_plan import set_plan
from wiring.files.store import load
from wiring.plan.plan import Plan
from wiring.plan.positions import in_use
from wiring.plan.wireway import Wireway
from wiring.studies.outlook import Outlook

QUAY = load(Path(__file__).parents[2] / "demo_layouts" / "quay.underboard")
BATTERY = next(p.id for p in QUAY.parts.values() if kinds()[p.kind].behaviour == "battery")
TODAY = date(2026, 3, 1)


def foretold(plan: Plan) -> Outlook:
    return forecasts.forecast(plan, kinds(), in_use(plan, kinds()), BATTERY, today=TODAY)


def with_habits(**fields) -> Plan:
    return QUAY.with_changes(habits=msgspec.structs.replace(QUAY.habits, **fields))


def with_settings(part: str, **settings) -> Plan:
    changed = msgspec.structs.replace(QUAY.parts[part], settings={**QUAY.parts[part].settings, **settings})
    return QUAY.with_changes(parts={**QUAY.parts, part: changed})


def with_hours(hours: float) -> Plan:
    scene = next(iter(QUAY.scenes.values()))
    use = msgspec.structs.replace(scene.use, hours_per_session=hours)
    return QUAY.with_changes(scenes={**QUAY.scenes, scene.id: msgspec.structs.replace(scene, use=use)})


def with_thin_wires() -> Plan:
    wires = {i: msgspec.structs.replace(w, size="32 AWG") for i, w in QUAY.wires.items()}
    return QUAY.with_changes(wires=wires)


def with_way(drop_mm: float) -> Plan:
    """All wires of the battery lie in a wireway so far below the board."""
    way = Wireway(id="y1", name="Beam", points=((0.0, 0.0), (1000.0, 0.0)), drop_mm=drop_mm)
    mine = [w for w in QUAY.wires.values() if BATTERY in (w.start.part, w.end.part)]
    led = {w.id: msgspec.structs.replace(w, along=("y1",)) for w in mine}
    return QUAY.with_changes(wires={**QUAY.wires, **led}, wireways={"y1": way})


@pytest.mark.parametrize(
    "other",
    [
        with_habits(dim_lightness=85.0),
        with_habits(ambient_c=35.0),
        with_habits(slack_m=3.0),
        with_settings(BATTERY, in_series=9),
        with_hours(1.5),
        with_thin_wires(),
    ],
    ids=["dim", "warm", "slack", "cells", "hours", "wires"],
)
def test_what_a_forecast_follows_from_is_never_taken_as_it_was(other):
    before, now = foretold(QUAY), foretold(other)
    with cold():
        anew = foretold(other)
    assert now == anew
    assert foretold(QUAY) == before
    assert now != before


def test_a_deeper_wireway_makes_the_wires_in_it_longer():
    near = with_way(80.0)
    far = near.with_changes(wireways=with_way(8000.0).wireways)
    before, now = foretold(near), foretold(far)
    with cold():
        anew = foretold(far)
    assert now == anew and now != before


def test_a_title_is_no_reason_to_discharge_it_again(monkeypatch):
    before = foretold(QUAY)
    monkeypatch.setattr(forecasts, "run_of", lambda *_, **__: pytest.fail("it was worked out again"))
    assert foretold(set_plan(title="Another").apply(QUAY)) == before
