"""Feeding many parts in one step: everything lights, nothing lies on anything, names and colours by rule."""

import math
from itertools import combinations, pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from support.editing import KINDS, done

from wiring.edits.connect import connect
from wiring.edits.edit import EditRefused
from wiring.edits.feed import feed
from wiring.edits.feed_colours import feed_colours
from wiring.edits.lay_anew import lay_anew
from wiring.edits.place_part import place
from wiring.edits.poles import poles
from wiring.edits.run_order import run_order
from wiring.findings.situation import examine
from wiring.plan.lengths import wire_path
from wiring.plan.names import TerminalRef
from wiring.plan.plan import Plan
from wiring.plan.soundness import unsound
from wiring.standards.preferred import next_e24_up
from wiring.studies.feeding import feeding_volts, groups, has_bare_leds


def placed(*rows) -> Plan:
    return done(Plan(), *(place(KINDS[kind], x, y, 0, given) for kind, x, y, given in rows))


def street(lamps=8, kind="led-warm-white") -> tuple:
    return tuple((kind, 130 + 136 * i, 330, {}) for i in range(lamps))


PACK = ("battery-alkaline", 150, 470, {"in_series": 8})
QUAY = (PACK, ("fuse", 300, 470, {}), ("toggle-on-off", 610, 560, {}), *street())
BLOCKS = (("distribution-block-12", 510, 470, {}), ("distribution-block-12", 720, 470, {}))


def lights(plan) -> dict:
    figures = examine(plan, KINDS, outlooks=False).figures
    return {plan.parts[i].designation: f.light for i, f in figures.parts.items() if f.light is not None}


def stretches(plan):
    for wire in plan.wires.values():
        for a, b in pairwise(wire_path(plan, KINDS, wire)):
            yield wire.label, a, b


def lie_together(one, other) -> bool:
    """Whether two stretches run in one line for more than a millimetre."""
    (_, a, b), (_, c, d) = one, other
    for along, across in ((0, 1), (1, 0)):
        values = (a[across], b[across], c[across], d[across])
        if max(values) - min(values) < 1.0:
            ends = sorted((a[along], b[along])), sorted((c[along], d[along]))
            if min(ends[0][1], ends[1][1]) - max(ends[0][0], ends[1][0]) > 1.0:
                return True
    return False


def on_each_other(plan) -> list:
    pairs = combinations(stretches(plan), 2)
    return [(a[0], b[0]) for a, b in pairs if a[0] != b[0] and lie_together(a, b)]


@pytest.mark.parametrize("manner", ["chain", "star"])
def test_battery_fuse_switch_blocks_and_lamps_are_wired_in_one_step(manner):
    plan = placed(*QUAY, *BLOCKS)
    fed = feed(list(plan.parts), manner, kinds=KINDS).apply(plan)
    assert unsound(fed, KINDS) == ()
    found = examine(fed, KINDS, outlooks=False)
    assert [f.what for f in found.findings] == []
    assert len(lights(fed)) == 8 and all(0.9 < light < 1.2 for light in lights(fed).values())
    assert on_each_other(fed) == []
    assert max(len(fed.wires_at(ref)) for w in fed.wires.values() for ref in (w.start, w.end)) <= 2


def test_a_chain_of_n_lamps_takes_n_wires_a_side_beside_those_to_the_switch():
    plan = placed(*QUAY)
    fed = feed(list(plan.parts), kinds=KINDS).apply(plan)
    assert len(fed.wires) == 2 + 8 + 8  # to the fuse, on to the switch, then both sides
    assert [fed.wires[w].colour for w in fed.wires].count("BK") == 8
    assert [fed.wires[w].colour for w in fed.wires].count("RDWH") == 8  # striped behind the switch
    order = [fed.parts[w.end.part].designation for w in fed.wires.values() if w.colour == "BK"]
    assert order in ([f"E{i}" for i in range(1, 9)], [f"E{i}" for i in range(8, 0, -1)])


def test_every_bare_led_gets_the_e24_resistor_that_ohms_law_asks_for():
    plan = placed(("supply-regulated", 60, 300, {"volts": 12.0}), *street(5, "led-white-bare"))
    ids = list(plan.parts)
    assert has_bare_leds(plan, KINDS, ids) and feeding_volts(plan, KINDS, ids) == 12.0
    fed = feed(ids, "chain", groups(plan, KINDS, ids, 12.0), kinds=KINDS).apply(plan)
    values = KINDS["led-white-bare"].values({})
    wanted = (12.0 - values["forward_v"]) / values["forward_a"]
    resistors = [p.settings["resistance"] for p in fed.parts.values() if p.kind == "resistor"]
    assert len(resistors) == 5
    assert set(resistors) == {next_e24_up(wanted)}
    assert all(0.8 < light <= 1.02 for light in lights(fed).values())
    assert on_each_other(fed) == []


def test_strings_share_a_resistor_and_are_as_long_as_the_volts_allow():
    plan = placed(("supply-regulated", 60, 300, {"volts": 12.0}), *street(7, "led-red-bare"))
    ids = list(plan.parts)
    found = groups(plan, KINDS, ids, 12.0, in_series=True)
    forward_v = KINDS["led-red-bare"].values({})["forward_v"]
    longest = int(12.0 * 0.8 / forward_v)
    assert [len(g.parts) for g in found] == [longest] * (7 // longest) + [7 % longest] * (7 % longest > 0)
    fed = feed(ids, "chain", found, kinds=KINDS).apply(plan)
    assert all(0.8 < light <= 1.1 for light in lights(fed).values())
    assert sum(p.kind == "resistor" for p in fed.parts.values()) == len(found)


def test_a_switch_that_is_fed_already_leads_on_from_its_far_side():
    plan = placed(PACK, ("toggle-on-off", 400, 470, {}), *street(3))
    plan = connect(TerminalRef("p1", "+"), TerminalRef("p2", "13"), colour="OG").apply(plan)
    fed = feed(["p2", "p3", "p4", "p5"], kinds=KINDS).apply(plan)
    assert len(fed.wires_at(TerminalRef("p2", "14"))) == 1
    assert len(fed.wires_at(TerminalRef("p2", "13"))) == 1
    assert all(light > 0.9 for light in lights(fed).values())


def test_a_single_block_takes_the_return_to_the_supply_behind_it():
    plan = placed(PACK, BLOCKS[0], *street(2))
    plan = connect(TerminalRef("p1", "+"), TerminalRef("p2", "1"), colour="OG").apply(plan)
    fed = feed(["p2", "p3", "p4"], kinds=KINDS).apply(plan)
    assert len(fed.wires_at(TerminalRef("p1", "-"))) == 1
    assert {w.colour for w in fed.wires.values()} == {"OG", "BK"}  # one net keeps one colour
    assert all(light > 0.9 for light in lights(fed).values())


def test_wires_laid_anew_no_longer_lie_on_each_other_and_join_what_they_joined():
    plan = placed(PACK, *street(3))
    for name, side, colour in (("A", "+", "RD"), ("K", "-", "BK")):
        for lamp in ("p2", "p3", "p4"):
            plan = connect(
                TerminalRef("p1", side), TerminalRef(lamp, name), [(190, 330)], colour=colour
            ).apply(plan)
    assert on_each_other(plan)
    there = lay_anew(plan.wires, kinds=KINDS).apply(plan)
    assert on_each_other(there) == []
    assert [(w.start, w.end) for w in there.wires.values()] == [(w.start, w.end) for w in plan.wires.values()]


def test_what_is_fed_already_is_left_alone():
    plan = placed(*QUAY)
    fed = feed(list(plan.parts), kinds=KINDS).apply(plan)
    with pytest.raises(EditRefused, match="Nothing selected needs feeding"):
        feed(list(fed.parts), kinds=KINDS).apply(fed)


def test_refusals_say_what_to_do():
    lamps = placed(*street(2))
    with pytest.raises(EditRefused, match="Select what is to feed them"):
        feed(list(lamps.parts), kinds=KINDS).apply(lamps)
    two = placed(PACK, PACK, *street(2))
    with pytest.raises(EditRefused, match="-G1 and -G2 would both feed"):
        feed(list(two.parts), kinds=KINDS).apply(two)
    many = placed(PACK, *street(8))
    with pytest.raises(EditRefused, match="a star needs 8"):
        feed(list(many.parts), "star", kinds=KINDS).apply(many)
    lone = placed(PACK, PACK, BLOCKS[0], *street(2))
    with pytest.raises(EditRefused, match="Select what is to feed them"):
        feed(["p3", "p4", "p5"], kinds=KINDS).apply(lone)


def test_supplies_get_colours_of_their_own():
    plan = placed(PACK, PACK, ("supply-ac", 0, 0, {}))
    pairs = [feed_colours(plan, KINDS, p)[:2] for p in plan.parts]
    assert all(len(set(feed_colours(plan, KINDS, p))) == 3 for p in plan.parts)
    assert pairs == [("RD", "BK"), ("OG", "GY"), ("BU", "BUWH")]


def test_poles_are_told_through_contacts_and_not_through_lamps():
    plan = placed(PACK, ("toggle-on-on", 400, 470, {}), *street(1))
    plan = done(
        plan,
        connect(TerminalRef("p1", "+"), TerminalRef("p2", "11")),
        connect(TerminalRef("p2", "12"), TerminalRef("p3", "A")),
    )
    known = poles(plan, KINDS)
    assert known[TerminalRef("p3", "A")].is_plus and known[TerminalRef("p2", "14")].is_plus
    assert TerminalRef("p3", "K") not in known and not known[TerminalRef("p1", "-")].is_plus


def way_length(points, order) -> float:
    return sum(math.dist(points[a], points[b]) for a, b in pairwise(order))


PLACES = st.lists(st.tuples(st.integers(0, 40), st.integers(0, 25)), min_size=1, max_size=14, unique=True)


@given(PLACES, st.sampled_from(["chain", "star"]))
@settings(max_examples=25, deadline=None)
def test_lamps_anywhere_are_lit_and_undoing_is_the_old_plan(places, manner):
    rows = [("led-warm-white", 300 + 30 * x, 30 * y, {}) for x, y in places]
    plan = placed(("supply-regulated", 0, 300, {"volts": 12.0}), *(BLOCKS if manner == "star" else ()), *rows)
    before = plan
    try:
        fed = feed(list(plan.parts), manner, kinds=KINDS).apply(plan)
    except EditRefused as refusal:
        assert manner == "star" and "room for" in str(refusal)
        return
    assert unsound(fed, KINDS) == () and plan is before
    found = lights(fed)
    assert len(found) == len(places) and all(light > 0.9 for light in found.values())


@given(PLACES)
@settings(max_examples=60, deadline=None)
def test_a_run_visits_every_place_once_and_gains_nothing_by_turning_one_leg_round(places):
    points = [(float(x), float(y)) for x, y in places]
    order = run_order(points)
    assert sorted(order) == list(range(len(points)))
    length = way_length(points, order)
    for i in range(1, len(order)):
        swapped = [*order[: i - 1], order[i], order[i - 1], *order[i + 1 :]]
        assert length <= way_length(points, swapped) + 1e-6


def test_a_row_is_run_from_the_end_nearer_to_the_feed():
    row = [(float(x), 0.0) for x in (300, 100, 200, 0)]
    assert run_order(row, (310.0, 50.0)) == [0, 2, 1, 3]
    assert run_order(row, (-10.0, 50.0)) == [3, 1, 2, 0]
