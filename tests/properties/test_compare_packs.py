"""The same scene on other packs: the order, the reasons, the cost, and putting one into the plan."""

import math
import re
from datetime import date

import msgspec
import pytest
from support.networks import draw, kinds, lamp_street, resistor

from wiring.edits.edit import EditRefused
from wiring.edits.set_plan import set_plan
from wiring.edits.swap_pack import swap_for_mains, swap_pack
from wiring.files.decode import decode
from wiring.files.encode import encode
from wiring.plan.positions import in_use
from wiring.plan.soundness import unsound
from wiring.studies.compare_packs import compare
from wiring.studies.forecast import forecast

TODAY = date(2026, 3, 1)


def street(battery=("battery-alkaline", {})):
    return lamp_street(6, "led-warm-white", battery).with_changes(next_number=1000)


def compared(plan):
    return compare(plan, kinds(), in_use(plan, kinds()), "G1", TODAY)


def test_one_is_there_and_its_life_is_that_of_the_forecast():
    plan = street()
    (there,) = [c for c in compared(plan) if c.there]
    assert (there.cell, there.in_series) == ("alkaline AA", 8)
    alone = forecast(plan, kinds(), in_use(plan, kinds()), "G1", None, TODAY)
    assert there.outlook.sessions.typical == pytest.approx(alone.sessions.typical, rel=0.01)


def test_larger_cells_of_a_type_come_before_smaller_ones():
    order = [c.cell for c in compared(street()) if c.cell.startswith("alkaline") and c.lights]
    assert order[:4] == ["alkaline D", "alkaline C", "alkaline AA", "alkaline AAA"]


def test_what_cannot_light_the_scene_comes_last_with_its_reason():
    seen = compared(
        draw({"G1": ("battery-alkaline", {}), "R1": resistor(6.0)}, [("G1:+", "R1:1"), ("R1:2", "G1:-")])
    )
    lights = [c.lights for c in seen]
    assert lights == sorted(lights, reverse=True) and not all(lights)
    assert all(c.reasons for c in seen)


def test_no_candidate_gives_many_more_volts_than_there_are():
    for battery in (("battery-9v", {}), ("battery-alkaline", {"in_series": 4}), ("battery-li-ion", {})):
        seen = compared(draw({"G1": battery, "R1": resistor(300.0)}, [("G1:+", "R1:1"), ("R1:2", "G1:-")]))
        fresh = next(c for c in seen if c.there).nominal_v
        assert all(c.nominal_v <= 1.45 * fresh for c in seen)
        assert len(seen) >= 4


def test_cost_is_known_where_prices_are_and_decides_when_all_have_one():
    plan = street()
    assert all(c.cost_a_year is None for c in compared(plan))
    prices = {c.cell: 1.0 for c in compared(plan) if c.cell} | {"mains kWh": 0.3, "alkaline D": 90.0}
    seen = [c for c in compared(set_plan(prices=prices).apply(plan)) if c.lights]
    costs = [c.cost_a_year for c in seen]
    assert None not in costs and costs == sorted(costs)
    assert "Costs the least a year." in seen[0].reasons
    aa = next(c for c in seen if c.cell == "alkaline AA")
    assert aa.cost_a_year == pytest.approx(8 * aa.swaps_a_year)


def test_mains_never_needs_swapping_and_leads_without_prices():
    first = compared(street())[0]
    assert first.outlook is None and first.swaps_a_year == 0
    assert "Never needs swapping" in first.reasons[0]


def test_each_pack_is_measured_against_what_the_plan_has():
    seen = [c for c in compared(street()) if c.lights and c.cell]
    (there,) = [c for c in seen if c.there]
    forms = set()
    for one in seen:
        if one.there:
            assert "This is what the plan has." in one.reasons
            continue
        ratio = there.swaps_a_year / one.swaps_a_year
        (told,) = [r for r in one.reasons if "what the plan has" in r]
        times, share = re.search(r"([\d.]+) times", told), re.search(r"(\d+)%", told)
        assert (times is not None) == (ratio >= 1.3)
        assert ("only" in told) == (ratio <= 0.75)
        if times or share:
            said = float(times[1]) if times else int(share[1]) / 100
            assert said == pytest.approx(ratio, abs=0.051)
        forms.add("times" if times else "only" if "only" in told else "near")
    assert {"times", "only"} <= forms


def test_the_smallest_of_the_packs_that_light_the_scene_is_told():
    seen = [c for c in compared(street()) if c.lights and c.size_mm is not None]
    least = min(math.prod(c.size_mm) for c in seen)
    smallest = [c for c in seen if "Takes the least room." in c.reasons]
    assert len(seen) > 3 and smallest
    assert [c for c in seen if math.prod(c.size_mm) == least] == smallest


def test_every_candidate_can_be_put_into_the_plan():
    plan = street()
    for candidate in compared(plan):
        if candidate.cell:
            edit = swap_pack("G1", candidate.cell, candidate.in_series, candidate.in_parallel)
        else:
            edit = swap_for_mains("G1", candidate.nominal_v, 2.0)
        new = edit.apply(plan)
        assert new.parts["G1"].kind == candidate.kind
        assert unsound(new, kinds()) == () and decode(encode(new)) == new
        assert new.wires is plan.wires
        if candidate.cell and not candidate.there:
            alone = forecast(new, kinds(), in_use(new, kinds()), "G1", None, TODAY)
            assert alone.first_load_a == pytest.approx(candidate.outlook.first_load_a, rel=0.02)
            # Its own fresh light is no more than what it is compared with, or lamps end it no sooner.
            assert alone.sessions.typical >= 0.97 * candidate.outlook.sessions.typical


def test_lamps_that_are_dim_beside_the_pack_there_is_do_not_count_as_lit():
    plan = lamp_street(6, "lamp-12v", ("battery-alkaline", {}))
    strict = msgspec.structs.replace(plan.habits, dim_lightness=85.0)
    seen = compared(plan.with_changes(habits=strict))
    low = next(c for c in seen if c.nominal_v < 8)
    assert not low.lights and "too few volts" in low.reasons[0]


def test_swapping_for_what_is_there_changes_nothing_and_forgets_the_old_cells():
    plan = street()
    assert swap_pack("G1", "alkaline AA", 8).apply(plan) == plan
    worn = street(("battery-alkaline", {"capacity": 1.5, "weakest": 0.5, "fitted": "2024-01-01"}))
    assert swap_pack("G1", "alkaline AA", 8, fitted=TODAY).apply(worn).parts["G1"].settings == {
        "fitted": "2026-03-01"
    }


@pytest.mark.parametrize(
    "edit", [swap_pack("E1", "alkaline AA", 8), swap_pack("G1", "potato", 8), swap_pack("G9", "nimh AA", 8),
             swap_pack("G1", "nimh AA", 99), swap_for_mains("G1", 900.0)]
)  # fmt: skip
def test_swaps_that_make_no_sense_are_refused(edit):
    with pytest.raises(EditRefused):
        edit.apply(street())
