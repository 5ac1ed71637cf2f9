"""Several switches in one feed stand side by side: each makes and breaks its own loads and no other's."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from support.editing import KINDS, done

from wiring.circuit.solve import solve
from wiring.edits.edit import EditRefused
from wiring.edits.feed import feed
from wiring.edits.place_part import place
from wiring.plan.plan import Plan
from wiring.plan.positions import in_use

SWITCHES = ("toggle-on-off", "toggle-on-on", "push-to-make", "toggle-on-off-2p")


def bench(*switches: str, lamps: int = 0, more: tuple[str, ...] = ()) -> Plan:
    """Return a supply p1, switches p2 ... in a row, a lamp above each of the first, and what else."""
    plan = done(Plan(), place(KINDS["supply-regulated"], 0, 400))
    for i, kind in enumerate(switches):
        plan = done(plan, place(KINDS[kind], 200 + 150 * i, 300))
    for i in range(lamps):
        plan = done(plan, place(KINDS["lamp-12v"], 200 + 150 * i, 100))
    return done(plan, *(place(KINDS[kind], 100 + 60 * i, 500) for i, kind in enumerate(more)))


def closed(plan: Plan, part: str) -> str:
    """Return the position in which a switch feeds what is behind it."""
    kind = KINDS[plan.parts[part].kind]
    return next(p.name for p in kind.positions if {("13", "14"), ("11", "14")} & set(p.closes))


def opened(plan: Plan, part: str) -> str:
    kind = KINDS[plan.parts[part].kind]
    return next(p.name for p in kind.positions if not {("13", "14"), ("11", "14")} & set(p.closes))


def wires_of(plan: Plan, part: str) -> list[str]:
    return [w.id for w in plan.wires.values() if part in (w.start.part, w.end.part)]


@given(st.lists(st.sampled_from(SWITCHES), min_size=2, max_size=4), st.data())
@settings(max_examples=6, deadline=None)
def test_each_switch_lights_the_lamp_beside_it_whatever_the_others_do(switches, data):
    before = bench(*switches, lamps=len(switches))
    plan = feed(before.parts, kinds=KINDS).apply(before)
    names = [f"p{2 + i}" for i in range(len(switches))]
    on = [data.draw(st.booleans()) for _ in names]
    stands = {n: (closed if yes else opened)(plan, n) for n, yes in zip(names, on, strict=True)}
    figures = solve(plan, KINDS, {**in_use(plan, KINDS), **stands})
    lamps = [p for p in plan.parts.values() if p.kind == "lamp-12v"]
    assert [abs(figures.parts[lamp.id].current_a) > 1e-3 for lamp in lamps] == on


def test_switches_alone_are_fed_from_the_supply_and_no_wire_goes_through_one_to_the_next():
    before = bench("toggle-on-off", "toggle-on-off", "toggle-on-off")
    plan = feed(before.parts, kinds=KINDS).apply(before)
    ends = {(w.start.part, w.start.terminal, w.end.part, w.end.terminal) for w in plan.wires.values()}
    assert {t for a, t, _, _ in ends if a != "p1"} | {t for _, _, _, t in ends} == {"13"}
    assert len(plan.wires) == 3


def test_behind_a_fuse_and_in_series_when_it_is_wished():
    before = bench("toggle-on-off", "toggle-on-off", lamps=2, more=("fuse",))
    plan = feed(before.parts, kinds=KINDS).apply(before)
    fuse = next(p.id for p in plan.parts.values() if p.kind == "fuse")
    behind = [w for w in plan.wires.values() if fuse in (w.start.part, w.end.part)]
    assert (
        len(behind) == 2 and len([w for w in plan.wires.values() if "p1" in (w.start.part, w.end.part)]) == 2
    )
    row = feed(before.parts, in_series=True, kinds=KINDS).apply(before)
    both = solve(row, KINDS, {**in_use(row, KINDS), "p2": "on", "p3": "off"})
    assert all(abs(both.parts[p.id].current_a) < 1e-3 for p in row.parts.values() if p.kind == "lamp-12v")


def test_one_switch_without_anything_behind_it_needs_no_feeding():
    before = bench("toggle-on-off")
    with pytest.raises(EditRefused, match="Nothing selected needs feeding"):
        feed(before.parts, kinds=KINDS).apply(before)
