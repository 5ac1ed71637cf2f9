"""Feeding what has wires already: at the free end of its leads; strips, discharge units, reversers."""

import pytest
from support.editing import KINDS, done

from wiring.circuit.solve import solve
from wiring.edits.connect import connect
from wiring.edits.edit import EditRefused
from wiring.edits.feed import feed
from wiring.edits.place_part import place
from wiring.plan.names import TerminalRef
from wiring.plan.plan import Plan
from wiring.plan.positions import in_use
from wiring.plan.soundness import unsound
from wiring.studies.feeding import feeding_volts, groups, has_bare_leds


def placed(*kinds: str, **given) -> Plan:
    """Return a plan with a 12 V supply as p1 and those parts in a row as p2, p3 ..."""
    plan = place(KINDS["supply-regulated"], 0, 300).apply(Plan())
    for i, kind in enumerate(kinds):
        plan = place(KINDS[kind], 150 + 130 * i, 80 + 70 * (i % 2), 0, given.get(kind, {})).apply(plan)
    return plan


def joined(plan: Plan, *pairs: str) -> Plan:
    """Return the plan with wires, each told as "p2:A p3:1"."""
    ends = [[TerminalRef(*ref.split(":")) for ref in pair.split(" ")] for pair in pairs]
    return done(plan, *(connect(a, b) for a, b in ends))


def fed(plan: Plan, ids=(), manner="chain", found=()) -> Plan:
    there = feed(ids or list(plan.parts), manner, found, kinds=KINDS).apply(plan)
    assert unsound(there, KINDS) == ()
    return there


def added(plan: Plan, there: Plan) -> set[frozenset[str]]:
    new = [w for i, w in there.wires.items() if i not in plan.wires]
    return {frozenset(f"{r.part}:{r.terminal}" for r in (w.start, w.end)) for w in new}


def pair(one: str, other: str) -> frozenset[str]:
    return frozenset((one, other))


def lit(plan: Plan, part: str, **thrown: str) -> float:
    return solve(plan, KINDS, {**in_use(plan, KINDS), **thrown}).parts[part].light or 0.0


COTTAGE = ("p2:A p3:2", "p3:1 p4:1a", "p2:K p4:2a")  # a building, its resistor, its plug


@pytest.mark.parametrize("ids", [(), ("p1", "p4"), ("p1", "p2")])
def test_a_building_on_a_plug_is_fed_at_the_far_side_of_its_plug(ids):
    plan = joined(placed("building-led", "resistor", "plug-2"), *COTTAGE)
    there = fed(plan, ids)
    assert added(plan, there) == {pair("p1:+", "p4:1b"), pair("p1:-", "p4:2b")}
    assert lit(there, "p2") > 0.3


def test_a_plug_turned_round_still_gets_plus_where_the_lamp_has_it():
    plan = joined(placed("building-led", "plug-2"), "p2:A p3:2b", "p2:K p3:1b")
    assert added(plan, fed(plan)) == {pair("p1:+", "p3:2a"), pair("p1:-", "p3:1a")}


def test_a_plug_on_a_fed_strip_needs_no_more_than_the_two_of_them_selected():
    plan = joined(placed("building-led", "resistor", "plug-2", "terminal-strip-4"), *COTTAGE)
    plan = joined(plan, "p1:+ p5:1", "p1:- p5:2")
    assert added(plan, fed(plan, ("p4", "p5"))) == {pair("p5:1", "p4:1b"), pair("p5:2", "p4:2b")}


def test_a_bare_led_with_its_resistor_soldered_on_gets_no_second_one():
    plan = joined(
        placed("led-red-bare", "led-red-bare", "resistor", resistor={"resistance": 1000.0}), "p2:A p4:2"
    )
    ids = list(plan.parts)
    assert has_bare_leds(plan, KINDS, ids)
    found = groups(plan, KINDS, ids, feeding_volts(plan, KINDS, ids))
    assert [g.parts for g in found] == [("p3",)]
    there = fed(plan, found=found)
    assert not any(w.end == TerminalRef("p2", "A") for i, w in there.wires.items() if i not in plan.wires)
    assert lit(there, "p2") > 0.3 and lit(there, "p3") > 0.3


@pytest.mark.parametrize("fed_too", [False, True])
def test_a_resistor_of_another_led_on_the_same_block_protects_nobody_else(fed_too):
    plan = placed("led-red-bare", "distribution-block-6", "led-red-bare", "resistor")
    plan = joined(plan, "p2:K p3:1", "p3:2 p5:1", "p5:2 p4:K")
    if fed_too:
        plan = joined(plan, "p1:- p3:3")
    ids = ["p1", "p2", "p4"]
    found = groups(plan, KINDS, ids, 12.0)
    assert [g.parts for g in found] == [("p2",)] and found[0].ohms > 500


def test_lamps_joined_to_each_other_are_fed_once():
    plan = joined(
        placed("lamp-12v", "lamp-12v", "lamp-12v"), "p2:1 p3:1", "p3:1 p4:1", "p2:2 p3:2", "p3:2 p4:2"
    )
    there = fed(plan)
    assert len(added(plan, there)) == 2
    assert all(lit(there, p) > 0.9 for p in ("p2", "p3", "p4"))


def test_lamps_joined_in_series_are_fed_at_the_outer_ends_and_never_between():
    plan = joined(placed("led-warm-white", "led-warm-white"), "p2:K p3:A")
    assert added(plan, fed(plan)) == {pair("p1:+", "p2:A"), pair("p1:-", "p3:K")}


def test_a_lamp_behind_its_own_switch_is_fed_before_the_switch():
    plan = joined(placed("toggle-on-off", "lamp-12v"), "p2:14 p3:1")
    there = fed(plan)
    assert added(plan, there) == {pair("p1:+", "p2:13"), pair("p1:-", "p3:2")}
    assert lit(there, "p3", p2="on") > 0.9 and lit(there, "p3", p2="off") == 0.0


def test_a_strip_without_wires_is_put_between_supply_and_lamps():
    plan = placed("fuse", "toggle-on-off", "terminal-strip-4", "lamp-12v", "lamp-12v")
    there = fed(plan)
    wires = added(plan, there)
    assert {pair("p3:14", "p4:1"), pair("p1:-", "p4:2")} <= wires
    assert not any("p1:-" in w and w != pair("p1:-", "p4:2") for w in wires)
    assert all(lit(there, p, p3="on") > 0.9 and lit(there, p, p3="off") == 0.0 for p in ("p5", "p6"))


def test_a_strip_wired_to_nothing_that_feeds_is_refused():
    plan = joined(placed("terminal-strip-4", "toggle-on-off", "lamp-12v"), "p2:1 p3:13")
    with pytest.raises(EditRefused, match="-X1 is joined to no supply yet"):
        fed(plan, ("p1", "p2", "p4"))


def test_coils_draw_their_pulse_from_a_discharge_unit():
    plan = placed("discharge-unit", "push-to-make", "push-to-make", "twin-coil")
    there = fed(plan)
    wires = added(plan, there)
    assert {pair("p1:+", "p2:+"), pair("p1:-", "p2:-"), pair("p5:C", "p1:-")} <= wires
    outs = [w for w in there.wires.values() if TerminalRef("p2", "O") in (w.start, w.end)]
    assert {r.part for w in outs for r in (w.start, w.end)} == {"p2", "p3"} and outs[0].colour != "RD"
    assert not any("p1:+" in w and "p2:+" not in w for w in wires)


def test_two_discharge_units_are_refused():
    plan = placed("discharge-unit", "discharge-unit", "push-to-make", "push-to-make", "twin-coil")
    with pytest.raises(EditRefused, match="would both feed these coils"):
        fed(plan)


def test_stall_motors_are_turned_round_by_the_changeovers_beside_them():
    plan = placed("stall-motor", "stall-motor", "toggle-on-on-2p", "toggle-on-on-2p", "lamp-12v")
    there = fed(plan)
    assert {pair("p5:11", "p3:M1"), pair("p4:11", "p2:M1")} <= added(plan, there)
    for motor, toggle in (("p2", "p4"), ("p3", "p5")):
        for position, high, low in (("up", "M1", "M2"), ("down", "M2", "M1")):
            volts = solve(there, KINDS, {**in_use(there, KINDS), toggle: position}).terminals
            assert volts[TerminalRef(motor, high)] - volts[TerminalRef(motor, low)] > 11
    assert lit(there, "p6") > 0.9  # and no toggle stands before the lamp


def test_a_single_changeover_for_two_motors_feeds_both_as_before():
    plan = placed("stall-motor", "stall-motor", "toggle-on-on-2p")
    assert pair("p1:+", "p4:11") in added(plan, fed(plan))
