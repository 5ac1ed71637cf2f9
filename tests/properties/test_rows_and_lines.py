"""Rows of parts, parts in line, evenly spaced and mirrored."""

import math
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st
from support.editing import KINDS, done

from wiring.edits.align import align
from wiring.edits.connect import connect
from wiring.edits.distribute import distribute
from wiring.edits.edit import EditRefused
from wiring.edits.mirror import mirror
from wiring.edits.place_part import place
from wiring.edits.place_row import place_row, row_places
from wiring.edits.smooth_line import length_mm, smooth_line
from wiring.plan.names import TerminalRef
from wiring.plan.places import terminal_at
from wiring.plan.plan import Plan

LAMP = KINDS["led-warm-white"]
SPOTS = st.tuples(st.floats(-2000, 2000), st.floats(-2000, 2000))


def strewn() -> Plan:
    return done(
        Plan(),
        place(LAMP, 0, 10),
        place(KINDS["building-led"], 300, -20),
        place(LAMP, 90, 30, 90),
        connect(TerminalRef("p1", "A"), TerminalRef("p2", "A"), bends=[(40, 60)]),
    )


def places(plan) -> list:
    return [(p.x_mm, p.y_mm) for p in plan.parts.values()]


@given(SPOTS, SPOTS, st.integers(1, 30))
def test_so_many_are_spread_from_end_to_end(start, end, count):
    found = row_places(start, end, count=count)
    assert len(found) == count and math.dist(found[0], start) < 1e-6
    steps = [math.dist(a, b) for a, b in pairwise(found)]
    if count > 1:
        assert math.dist(found[-1], end) < 1e-6 and max(steps) - min(steps) < 1e-6


@given(SPOTS, SPOTS, st.floats(30, 500))
def test_one_every_so_often_fills_the_row_and_never_leaves_it(start, end, spacing):
    found = row_places(start, end, spacing_mm=spacing)
    length = math.dist(start, end)
    assert (len(found) - 1) * spacing <= length + 1e-3 < len(found) * spacing + 2e-3
    assert all(math.dist(start, p) <= length + 1e-3 for p in found)


def test_a_row_is_one_step_with_designations_in_order():
    plan = place_row(LAMP, (100, 50), (1052, 50), count=8).apply(Plan())
    assert [p.designation for p in plan.parts.values()] == [f"E{i}" for i in range(1, 9)]
    assert [p.x_mm for p in plan.parts.values()] == [100 + 136 * i for i in range(8)]


@pytest.mark.parametrize("asked", [{"count": 0}, {"count": 201}, {"spacing_mm": 0}, {"spacing_mm": 0.001}])
def test_rows_that_cannot_be_are_refused(asked):
    with pytest.raises(EditRefused):
        place_row(LAMP, (0, 0), (100, 0), **asked).apply(Plan())


def test_middles_go_into_a_row_or_a_column():
    plan = strewn()
    assert [y for _, y in places(align(plan.parts, "row").apply(plan))] == [5, 5, 5]
    assert [x for x, _ in places(align(plan.parts, "column").apply(plan))] == [150, 150, 150]


def test_edges_are_those_of_the_bodies():
    plan = strewn()
    there = align(plan.parts, "top").apply(plan)
    building, lamp = KINDS["building-led"], LAMP
    assert there.parts["p2"].y_mm == -20
    assert there.parts["p1"].y_mm == -20 - building.height_mm / 2 + lamp.height_mm / 2
    assert align(plan.parts, "right").apply(plan).parts["p2"].x_mm == 300


def test_parts_are_spaced_evenly_and_the_outermost_stay():
    plan = strewn()
    assert [x for x, _ in places(distribute(plan.parts, "across").apply(plan))] == [0, 300, 150]
    assert [y for _, y in places(distribute(plan.parts, "down").apply(plan))] == [5, -20, 30]


@pytest.mark.parametrize("way", ["across", "down"])
def test_mirroring_twice_is_where_it_began(way):
    plan = strewn()
    once = mirror(plan.parts, way).apply(plan)
    assert once != plan and mirror(once.parts, way).apply(once) == plan


def test_a_lamp_mirrored_across_has_plus_on_the_other_side_and_a_building_keeps_its_front():
    plan = strewn()
    there = mirror(plan.parts, "across").apply(plan)
    lamp, house = there.parts["p1"], there.parts["p2"]
    assert (lamp.x_mm, lamp.turn_deg) == (300, 180) and (house.x_mm, house.turn_deg) == (0, 0)
    assert terminal_at(lamp, LAMP, "A")[0] == 308
    assert there.wires["w4"].bends == ((260, 60),)


@pytest.mark.parametrize("way", ["across", "down"])
def test_square_wires_are_square_after_mirroring(way):
    pack, lamp = KINDS["battery-alkaline"], LAMP
    plan = done(Plan(), place(pack, 0, 0), place(lamp, 200, -150))
    for terminal, other in zip(pack.terminals, lamp.terminals, strict=True):
        (x, y), (to_x, _) = (
            terminal_at(plan.parts["p1"], pack, terminal.name),
            terminal_at(plan.parts["p2"], lamp, other.name),
        )
        plan = done(
            plan,
            connect(TerminalRef("p1", terminal.name), TerminalRef("p2", other.name), bends=[(to_x, y)]),
        )
    there = mirror(plan.parts, way).apply(plan)
    for wire in there.wires.values():
        ((x, y),) = wire.bends
        start = terminal_at(there.parts["p1"], pack, wire.start.terminal)
        end = terminal_at(there.parts["p2"], lamp, wire.end.terminal)
        assert y == pytest.approx(start[1]) and x == pytest.approx(end[0])
    assert mirror(there.parts, way).apply(there) == plan


def test_too_few_parts_are_refused():
    plan = strewn()
    for edit in (align(["p1"], "row"), distribute(["p1", "p2"], "across")):
        with pytest.raises(EditRefused, match="Select at least"):
            edit.apply(plan)


@given(st.lists(SPOTS, min_size=3, max_size=6, unique=True), st.integers(2, 25))
def test_a_curved_row_begins_and_ends_where_it_should_and_stands_on_its_curve(points, count):
    start, *via, end = points
    found = row_places(start, end, via=via, count=count)
    line = smooth_line(points)
    assert len(found) == count
    assert math.dist(found[0], start) < 1e-6 and math.dist(found[-1], end) < 1e-3
    assert all(min(math.dist(p, q) for q in line) < 1e-6 for p in points)
    apart = length_mm(line) / (count - 1)
    assert all(math.dist(a, b) <= apart + 1e-3 for a, b in pairwise(found))


def test_a_row_round_a_quarter_circle_is_spaced_along_the_curve():
    quarter = [
        (1000 * math.sin(a), -1000 * math.cos(a)) for a in (0, math.pi / 8, math.pi / 4, 3 * math.pi / 8)
    ]
    start, *via = quarter
    found = row_places(start, (1000.0, 0.0), via=via, count=9)
    assert all(abs(math.hypot(*p) - 1000) < 15 for p in found)
    chords = [math.dist(a, b) for a, b in pairwise(found)]
    assert max(chords) - min(chords) < 3
    assert sum(chords) == pytest.approx(1000 * math.pi / 2, rel=0.01)
