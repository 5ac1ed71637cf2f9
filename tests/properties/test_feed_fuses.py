"""Several fuses in one feed stand side by side: each guards its own loads, none is behind another."""

import msgspec
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from support.editing import KINDS, done

from wiring.circuit.solve import solve
from wiring.edits.connect import connect
from wiring.edits.feed import feed, shares
from wiring.edits.place_part import place
from wiring.edits.scenes import add_scene
from wiring.edits.wireways import add_wireway
from wiring.findings.situation import examine
from wiring.plan.names import TerminalRef
from wiring.plan.plan import Plan
from wiring.plan.positions import in_use
from wiring.routing.way_length import way_lengths

LAMP, FUSE, SWITCH, BLOCK = "lamp-12v", "fuse", "toggle-on-off", "distribution-block-12"


def placed(*rows) -> Plan:
    """A supply p1 with little to push, and parts of those kinds at those places: p2, p3 ..."""
    plan = done(Plan(), place(KINDS["supply-regulated"], 0, 400, settings={"limit_a": 3.0}))
    return done(plan, *(place(KINDS[kind], x, y) for kind, x, y in rows))


def of(plan: Plan, kind: str) -> list[str]:
    return [p.id for p in plan.parts.values() if p.kind == kind]


def lit(plan: Plan, **thrown: str) -> set[str]:
    figures = solve(plan, KINDS, {**in_use(plan, KINDS), **thrown})
    return {p for p in of(plan, LAMP) if abs(figures.parts[p].current_a) > 1e-3}


def share_of(plan: Plan) -> dict[str, set[str]]:
    """The lamps that go dark with each fuse."""
    return {fuse: set(of(plan, LAMP)) - lit(plan, **{fuse: "blown"}) for fuse in of(plan, FUSE)}


@given(
    st.integers(2, 4), st.lists(st.integers(0, 14), min_size=3, max_size=8, unique=True), st.integers(0, 3)
)
@settings(max_examples=5, deadline=None)
def test_every_lamp_hangs_behind_one_fuse_whatever_else_is_selected(fuses, places, switches):
    rows = [(FUSE, 150 + 250 * i, 400) for i in range(fuses)]
    rows += [(SWITCH, 150 + 250 * i, 300) for i in range(switches)]
    plan = placed(*rows, *((LAMP, 130 + 60 * x, 100) for x in places))
    told = shares(plan, plan.parts, kinds=KINDS)
    new = feed(plan.parts, kinds=KINDS).apply(plan)
    on = dict.fromkeys(of(new, SWITCH), "on")
    assert lit(new, **on) == set(of(new, LAMP))
    dark = share_of(new.with_changes(parts={i: _on(p) for i, p in new.parts.items()}))
    assert sum(map(len, dark.values())) == len(places)  # no lamp hangs on two fuses, or on none
    for share in told:
        (fuse,) = [gate for gate in share.via if gate in dark]
        assert set(share.loads) <= dark[fuse]
    assert sorted(i for share in told for i in share.loads) == sorted(of(new, LAMP))
    found = {f.rule for f in examine(new, KINDS, outlooks=False).findings}
    assert not found & {"fuse-missing", "shorted", "terminal-crowded"} or switches == 1


def _on(part):
    return msgspec.structs.replace(part, position="on") if part.kind == SWITCH else part


def test_two_fuses_are_fed_from_the_supply_and_none_from_the_other():
    plan = placed((FUSE, 200, 400), (FUSE, 600, 400), *((LAMP, 150 + 150 * i, 100) for i in range(4)))
    new = feed(plan.parts, kinds=KINDS).apply(plan)
    ins = [w for w in new.wires.values() if {w.start.terminal, w.end.terminal} == {"1", "2"}]
    outs = {r for w in new.wires.values() for r in (w.start, w.end) if r.part in of(new, FUSE)}
    between = [w for w in ins if {w.start.part, w.end.part} == set(of(new, FUSE))]
    assert not between and {r.terminal for r in outs} == {"1", "2"}
    assert share_of(new) == {"p2": {"p4", "p5"}, "p3": {"p6", "p7"}}


def test_one_switch_beside_several_fuses_is_before_all_of_them():
    plan = placed((SWITCH, 100, 500), (FUSE, 200, 400), (FUSE, 600, 400), (LAMP, 200, 100), (LAMP, 600, 100))
    new = feed(plan.parts, kinds=KINDS).apply(plan)
    assert lit(new, p2="on") == {"p5", "p6"} and lit(new, p2="off") == set()
    assert share_of(new.with_changes(parts={i: _on(p) for i, p in new.parts.items()})) == {
        "p3": {"p5"},
        "p4": {"p6"},
    }


def test_as_many_switches_as_fuses_stand_one_behind_each():
    plan = placed((FUSE, 200, 500), (FUSE, 300, 500), (SWITCH, 210, 400), (SWITCH, 260, 400),
                  (LAMP, 150, 100), (LAMP, 500, 100))  # fmt: skip
    new = feed(plan.parts, kinds=KINDS).apply(plan)
    on = new.with_changes(parts={i: _on(p) for i, p in new.parts.items()})
    assert share_of(on) == {"p2": {"p6"}, "p3": {"p7"}}
    assert lit(new, p4="on", p5="off") == {"p6"} and lit(new, p4="off", p5="on") == {"p7"}


def test_from_a_block_each_fuse_is_fed_and_the_return_goes_to_the_second_block():
    plan = placed((BLOCK, 150, 600), (BLOCK, 500, 600), (FUSE, 200, 400), (FUSE, 600, 400),
                  (LAMP, 200, 100), (LAMP, 600, 100))  # fmt: skip
    new = feed(plan.parts, "star", kinds=KINDS).apply(plan)
    at = {
        ref.part for w in new.wires.values() if "p2" in (w.start.part, w.end.part) for ref in (w.start, w.end)
    }
    assert at == {"p1", "p2", "p4", "p5"} and share_of(new) == {"p4": {"p6"}, "p5": {"p7"}}


def wired(*rows, joints) -> Plan:
    plan = placed(*rows)
    return done(plan, *(connect(TerminalRef(*a), TerminalRef(*b), colour="RD") for a, b in joints))


def test_a_fuse_that_is_wired_to_a_block_feeds_what_is_near_it_from_that_block():
    plan = wired(
        (FUSE, 200, 500), (BLOCK, 300, 400), (FUSE, 700, 500), (BLOCK, 800, 400),
        (LAMP, 280, 100), (LAMP, 330, 100), (LAMP, 820, 100),
        joints=[(("p1", "+"), ("p2", "1")), (("p2", "2"), ("p3", "1")),
                (("p1", "+"), ("p4", "1")), (("p4", "2"), ("p5", "1"))],
    )  # fmt: skip
    for chosen in (plan.parts, [i for i in plan.parts if i not in ("p3", "p5")]):
        new = feed(chosen, kinds=KINDS).apply(plan)
        assert share_of(new) == {"p2": {"p6", "p7"}, "p4": {"p8"}}
        first = [w for w in new.wires.values() if "p3" in (w.start.part, w.end.part)]
        assert len(first) == 2 and {w.colour for w in first} == {"RD"}


def test_lamps_that_hang_on_a_block_behind_a_new_fuse_stay_behind_it():
    """The second fuse stands nearer to them, and still they hang where they were wired."""
    plan = wired(
        (FUSE, 200, 500), (BLOCK, 800, 400), (FUSE, 700, 500), (LAMP, 780, 100), (LAMP, 650, 100),
        joints=[(("p2", "2"), ("p3", "1")), (("p3", "2"), ("p5", "1"))],
    )  # fmt: skip
    new = feed(plan.parts, kinds=KINDS).apply(plan)
    assert share_of(new) == {"p2": {"p5"}, "p4": {"p6"}}


def test_a_new_fuse_beside_one_that_is_fed_has_its_own_loads():
    plan = wired((FUSE, 200, 500), (FUSE, 700, 500), (LAMP, 200, 100), (LAMP, 700, 100),
                 joints=[(("p1", "+"), ("p2", "1"))])  # fmt: skip
    assert share_of(feed(plan.parts, kinds=KINDS).apply(plan)) == {"p2": {"p4"}, "p3": {"p5"}}


def test_two_switches_that_are_fed_already_share_the_new_lamps_too():
    plan = wired((SWITCH, 200, 500), (SWITCH, 700, 500), (LAMP, 200, 100), (LAMP, 700, 100),
                 joints=[(("p1", "+"), ("p2", "13")), (("p1", "+"), ("p3", "13"))])  # fmt: skip
    new = feed(plan.parts, kinds=KINDS).apply(plan)
    assert lit(new, p2="on", p3="off") == {"p4"} and lit(new, p2="off", p3="on") == {"p5"}


def test_the_way_along_the_wireways_counts_where_there_is_one():
    """The lamp stands 300 mm from the second switch across a gap, but its wireway passes the first one only.

    By hand: to the first 600 mm along the beam and two short leads, to the second 1 m round the corner.
    """
    plan = placed((SWITCH, 100, 100), (SWITCH, 700, 330), (LAMP, 700, 50))
    plan = done(plan, add_wireway([(60, 80), (740, 80)]))
    bent = done(plan, add_wireway([(700, 80), (1100, 80), (1100, 300), (700, 300)]))
    chosen = shares(bent, bent.parts, kinds=KINDS, far=way_lengths(bent))
    far = way_lengths(bent)
    assert far((100, 100), (700, 50)) == pytest.approx(600 + 20 + 30, abs=1)
    assert far((700, 330), (700, 50)) > 1000
    assert [share.loads for share in chosen] == [("p4",), ()]
    assert [share.loads for share in shares(plan, plan.parts, kinds=KINDS)] == [(), ("p4",)]


def scened(*rows) -> Plan:
    """Two scenes side by side, the quay up to x = 500 and the yard beyond; parts p2, p3 ... in them."""
    return done(placed(*rows), add_scene("Quay", 0, 0, 500, 250), add_scene("Yard", 500, 0, 500, 250))


def test_a_switch_that_feeds_the_scene_already_is_preferred_to_one_that_is_nearer():
    """The lamp at the edge of the quay is nearer to the yard's switch, and lights with the quay."""
    plan = scened((SWITCH, 100, 400), (SWITCH, 560, 400), (LAMP, 60, 100))
    first = feed(["p1", "p2", "p4"], kinds=KINDS).apply(plan)
    there = connect(TerminalRef("p1", "+"), TerminalRef("p3", "13"))
    second = done(first, there, place(KINDS[LAMP], 480, 100))
    lamp = of(second, LAMP)[-1]
    told = shares(second, ["p2", "p3", lamp], kinds=KINDS)
    assert [(s.via, s.loads, s.by_scene) for s in told] == [(("p2",), (lamp,), (lamp,)), (("p3",), (), ())]
    new = feed(["p2", "p3", lamp], kinds=KINDS).apply(second)
    assert lit(new, p2="on", p3="off") == {"p4", lamp}


def test_a_panel_that_feeds_the_scene_already_is_preferred():
    """S3 on the quay's panel feeds nothing yet, but its neighbour there does; S4 on the yard's is nearer."""
    plan = scened((SWITCH, 100, 400), (SWITCH, 200, 400), (SWITCH, 560, 400), (LAMP, 60, 100))
    panels = {"p2": "quay", "p3": "quay", "p4": "yard"}
    parts = {i: msgspec.structs.replace(p, panel=panels.get(i, "")) for i, p in plan.parts.items()}
    first = feed(["p1", "p2", "p5"], kinds=KINDS).apply(plan.with_changes(parts=parts))
    second = done(first, place(KINDS[LAMP], 480, 100))
    lamp = of(second, LAMP)[-1]
    told = shares(second, ["p1", "p3", "p4", lamp], kinds=KINDS)
    assert {s.via: s.loads for s in told} == {("p3",): (lamp,), ("p4",): ()}


def test_a_switch_that_stands_in_the_scene_is_preferred_too_and_nothing_is_balanced():
    plan = scened((SWITCH, 420, 200), (SWITCH, 560, 200), *((LAMP, 495 - i, 40 + 10 * i) for i in range(3)))
    assert [len(s.loads) for s in shares(plan, plan.parts, kinds=KINDS)] == [3, 0]


def test_fuses_on_which_loads_hang_already_are_fed_side_by_side():
    plan = wired((FUSE, 200, 500), (FUSE, 700, 500), (LAMP, 200, 100), (LAMP, 700, 100), (LAMP, 400, 100),
                 joints=[(("p2", "2"), ("p4", "1")), (("p3", "2"), ("p5", "1"))])  # fmt: skip
    new = feed(plan.parts, kinds=KINDS).apply(plan)
    assert share_of(new) == {"p2": {"p4"}, "p3": {"p5"}} and lit(new) == {"p4", "p5", "p6"}
    told = {s.via: s.loads for s in shares(plan, plan.parts, kinds=KINDS)}
    assert told == {(): ("p6",), ("p2",): ("p4",), ("p3",): ("p5",)}
