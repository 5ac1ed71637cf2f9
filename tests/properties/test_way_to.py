"""The way to a part from its supply and back: what a builder follows with a meter, lamp lit or dark."""

from support.editing import KINDS, done

from wiring.edits.connect import connect
from wiring.edits.feed import feed
from wiring.edits.place_part import place
from wiring.edits.throw import keep_position
from wiring.plan.names import TerminalRef
from wiring.plan.plan import Plan
from wiring.studies.way_to import way_to


def placed(*kinds) -> Plan:
    return done(Plan(), *(place(KINDS[kind], 120.0 * i, 60.0 * (i % 2)) for i, kind in enumerate(kinds)))


def joined(plan, *pairs) -> Plan:
    ends = [[TerminalRef(*ref.split(":")) for ref in pair.split(" ")] for pair in pairs]
    return done(plan, *(connect(a, b) for a, b in ends))


def parts_of(plan, one) -> set:
    return {i for i in way_to(plan, KINDS, one) if i in plan.parts}


STREET = ("supply-regulated", "fuse", "toggle-on-off", "lamp-12v", "lamp-12v", "lamp-12v")


def test_it_leads_over_fuse_and_switch_and_leaves_out_what_lies_beyond():
    plan = placed(*STREET)
    plan = feed(list(plan.parts), kinds=KINDS).apply(plan)
    assert parts_of(plan, "p4") == {"p1", "p2", "p3", "p4"}
    assert parts_of(plan, "p6") == {"p1", "p2", "p3", "p4", "p5", "p6"}  # a chain is its neighbours' way too
    wires = {i for i in way_to(plan, KINDS, "p4") if i in plan.wires}
    assert len(wires) == 4  # to the fuse, to the switch, to the lamp, and back


def test_it_is_the_same_however_the_switch_stands():
    plan = placed(*STREET)
    plan = feed(list(plan.parts), kinds=KINDS).apply(plan)
    off = keep_position("p3", "off").apply(plan)
    assert way_to(off, KINDS, "p5") == way_to(plan, KINDS, "p5")


def test_an_led_in_the_middle_of_a_string_is_reached_past_the_others():
    plan = placed("supply-regulated", "resistor", "led-red-bare", "led-red-bare", "led-red-bare")
    plan = joined(plan, "p1:+ p2:1", "p2:2 p3:A", "p3:K p4:A", "p4:K p5:A", "p5:K p1:-")
    assert parts_of(plan, "p4") == {"p1", "p2", "p3", "p4", "p5"}


def test_of_a_switch_and_of_a_wire_only_the_side_without_a_load_is_told():
    plan = placed(*STREET)
    plan = feed(list(plan.parts), kinds=KINDS).apply(plan)
    assert parts_of(plan, "p3") == {"p1", "p2", "p3"}
    wire = next(i for i, w in plan.wires.items() if {w.start.part, w.end.part} == {"p2", "p3"})
    assert parts_of(plan, wire) == {"p1", "p2", "p3"} and wire in way_to(plan, KINDS, wire)


def test_of_two_supplies_the_one_that_feeds_is_taken():
    plan = placed("supply-regulated", "lamp-12v", "supply-regulated", "lamp-12v")
    plan = joined(plan, "p1:+ p2:1", "p1:- p2:2", "p3:+ p4:1", "p3:- p4:2", "p1:- p3:-")
    assert parts_of(plan, "p4") == {"p3", "p4"} and parts_of(plan, "p2") == {"p1", "p2"}


def test_what_no_supply_reaches_has_no_way():
    plan = joined(placed("supply-regulated", "lamp-12v", "lamp-12v"), "p2:1 p3:1")
    assert way_to(plan, KINDS, "p2") == frozenset() and way_to(plan, KINDS, "gone") == frozenset()
