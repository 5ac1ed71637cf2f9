"""Several batteries of the plan on one circuit: side by side, in line, alike and not."""

from datetime import date

import pytest
from support.networks import draw, kinds, resistor

from wiring.edits.swap_pack import swap_pack
from wiring.plan.positions import in_use
from wiring.studies.battery_part import BatteryPart
from wiring.studies.compare_packs import compare
from wiring.studies.forecast import forecast

TODAY = date(2026, 3, 1)
FOUR_AA = ("battery-alkaline", {"in_series": 4})


def outlook(plan, battery="G1"):
    return forecast(plan, kinds(), in_use(plan, kinds()), battery, None, TODAY)


def side_by_side(one, other, ohms=60.0):
    """Each behind a fuse of its own, as they should be."""
    wires = [
        ("G1:+", "F1:1"),
        ("G2:+", "F2:1"),
        ("F1:2", "E1:1"),
        ("F2:2", "E1:1"),
        ("E1:2", "G1:-"),
        ("G1:-", "G2:-"),
    ]
    return draw({"G1": one, "G2": other, "F1": "fuse", "F2": "fuse", "E1": resistor(ohms)}, wires)


def in_line(one, other, ohms=60.0, tap=False):
    wires = [("G1:+", "E1:1"), ("E1:2", "G2:-"), ("G2:+", "G1:-")]
    parts = {"G1": one, "G2": other, "E1": resistor(ohms)}
    if tap:
        parts["E2"] = resistor(200.0)
        wires += [("G2:+", "E2:1"), ("E2:2", "G2:-")]
    return draw(parts, wires)


def alone(battery, ohms=60.0):
    return draw({"G1": battery, "E1": resistor(ohms)}, [("G1:+", "E1:1"), ("E1:2", "G1:-")])


def test_two_alike_side_by_side_are_one_of_two_strings():
    pair = outlook(side_by_side(FOUR_AA, FOUR_AA))
    one = outlook(alone(("battery-alkaline", {"in_series": 4, "in_parallel": 2})))
    assert pair.sessions.typical == pytest.approx(one.sessions.typical, rel=0.02)
    assert "-G2" in pair.notes[0] and "side by side" in pair.notes[0]


def test_both_are_told_the_same():
    plan = side_by_side(FOUR_AA, ("battery-alkaline", {"cell": "alkaline AAA", "in_series": 4}))
    assert outlook(plan, "G1").days.typical == pytest.approx(outlook(plan, "G2").days.typical, rel=0.01)


def test_alike_ones_reckoned_as_one_last_as_long_as_each_by_itself(monkeypatch):
    """The short way against the long one, in which every battery keeps wells of its own."""
    for plan in (side_by_side(FOUR_AA, FOUR_AA), in_line(FOUR_AA, FOUR_AA, 120.0)):
        short = outlook(plan).hours.typical
        monkeypatch.setattr(BatteryPart, "_like", lambda _self, _other: False)
        assert outlook(plan).hours.typical == pytest.approx(short, rel=0.02)
        monkeypatch.undo()


def test_unequal_ones_side_by_side_last_about_as_long_as_their_charge():
    small = ("battery-alkaline", {"cell": "alkaline AAA", "in_series": 4})
    both = outlook(side_by_side(FOUR_AA, small)).sessions.typical
    large, little = outlook(alone(FOUR_AA)).sessions.typical, outlook(alone(small)).sessions.typical
    assert large < both < 1.1 * (large + little) * 1.2


def test_two_alike_in_line_are_one_of_twice_the_cells():
    pair = outlook(in_line(FOUR_AA, FOUR_AA, 120.0))
    one = outlook(alone(("battery-alkaline", {"in_series": 8}), 120.0))
    assert pair.sessions.typical == pytest.approx(one.sessions.typical, rel=0.03)
    assert pair.first_load_a == pytest.approx(one.first_load_a, rel=0.01)
    assert "in line" in pair.notes[0]


def test_the_smaller_one_in_line_decides():
    small = ("battery-nimh", {"cell": "nimh AAA", "in_series": 4})
    large = ("battery-nimh", {"cell": "nimh AA", "in_series": 4})
    mixed = outlook(in_line(large, small, 120.0)).sessions.typical
    weak, strong = (outlook(in_line(b, b, 120.0)).sessions.typical for b in (small, large))
    assert mixed == pytest.approx(weak, rel=0.15) and mixed < 0.7 * strong


def test_a_tap_between_them_makes_them_two_batteries():
    seen = outlook(in_line(FOUR_AA, FOUR_AA, 120.0, tap=True))
    assert not any("in line" in note for note in seen.notes)


def compared(plan):
    return compare(plan, kinds(), in_use(plan, kinds()), "G1", TODAY)


@pytest.fixture(scope="module")
def of_two():
    return {together: compared(together(FOUR_AA, FOUR_AA)) for together in (side_by_side, in_line)}


@pytest.mark.parametrize("together", [side_by_side, in_line])
def test_packs_are_compared_for_all_that_work_together(together, of_two):
    plan, found = together(FOUR_AA, FOUR_AA), of_two[together]
    (there,) = [c for c in found if c.there]
    assert there.outlook.sessions.typical == pytest.approx(outlook(plan).sessions.typical, rel=0.02)
    assert there.title == "8 × Alkaline AA (LR6)" and there.mates == (("G2", 4),)
    assert there.nominal_v == (6.0 if together is side_by_side else 12.0)
    larger = next(c for c in found if c.cell == "alkaline C")
    assert larger.outlook.sessions.typical > 1.5 * there.outlook.sessions.typical
    assert larger.mates == (("G2", 4),)


def test_a_pack_put_into_all_of_them_lasts_as_the_list_said(of_two):
    plan = side_by_side(FOUR_AA, FOUR_AA)
    wanted = next(c for c in of_two[side_by_side] if c.cell == "nimh AA")
    for part, count in (("G1", wanted.in_series), *wanted.mates):
        plan = swap_pack(part, wanted.cell, count, kinds=kinds()).apply(plan)
    assert outlook(plan).sessions.typical == pytest.approx(wanted.outlook.sessions.typical, rel=0.03)


def test_unequal_ones_in_line_keep_their_share_of_the_volts():
    eight = ("battery-alkaline", {"in_series": 8})
    wanted = next(c for c in compared(in_line(FOUR_AA, eight)) if c.cell == "alkaline D")
    assert wanted.in_series == 4 and wanted.mates == (("G2", 8),)


def test_all_cells_of_all_of_them_are_paid_for():
    plan = side_by_side(FOUR_AA, FOUR_AA)
    priced = plan.with_changes(prices={"alkaline AA": 1.0})
    there = next(c for c in compared(priced) if c.there)
    assert there.cost_a_year == pytest.approx(8 * there.swaps_a_year)


def test_the_mains_says_that_the_others_must_go_first(of_two):
    mains = next(c for c in of_two[side_by_side] if c.outlook is None)
    assert any("out before" in reason for reason in mains.reasons)
