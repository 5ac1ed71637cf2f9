import itertools
import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from support.gesture_runs import BATTERY, BLACK, KINDS, LAMP, RED, SWITCH, around, bench_plan

from app.canvas.camera import LARGEST, SMALLEST, Camera, fitted
from app.canvas.geometry import Box, Geometry
from app.canvas.hits.hit import hit_at, nearest_terminal, part_at, wire_at
from app.canvas.table import Table
from app.canvas.wire_paths import LANE_MM, fanned
from wiring.edits.connect import connect
from wiring.edits.move import move
from wiring.edits.remove import remove
from wiring.edits.set_value import set_setting
from wiring.edits.turn import turn
from wiring.plan.changes import changes_between
from wiring.plan.names import TerminalRef
from wiring.plan.places import terminal_at


def same(a: Geometry, b: Geometry) -> bool:
    for mine, other in ((a.parts, b.parts), (a.terminals, b.terminals), (a.wires, b.wires)):
        if set(mine.keys()) != set(other.keys()):
            return False
        keys = mine.keys()
        if not all(np.allclose(mine.get(k), other.get(k)) for k in keys):
            return False
    return a.paths == b.paths


@given(
    st.lists(st.tuples(st.sampled_from(["put", "drop"]), st.integers(0, 90), st.floats(-9, 9)), max_size=400)
)
def test_a_table_holds_what_a_dict_would(steps):
    table, twin = Table[int](1), {}
    for what, key, value in steps:
        if what == "put":
            table.put(key, (value,))
            twin[key] = value
        else:
            table.drop(key)
            twin.pop(key, None)
    keys = table.keys()
    assert {k: table.get(k)[0] for k in keys} == twin
    assert sorted(table.keys_where(table.values[:, 0] > 0)) == sorted(k for k, v in twin.items() if v > 0)


def test_parts_and_terminals_lie_where_the_plan_says():
    plan = turn([SWITCH], 30).apply(bench_plan())
    geometry = Geometry(plan, KINDS)
    for part in plan.parts.values():
        kind = KINDS[part.kind]
        for spec in kind.terminals:
            expected = terminal_at(part, kind, spec.name)
            assert geometry.terminals.get(TerminalRef(part.id, spec.name)) == pytest.approx(expected)


def test_following_edits_gives_the_same_as_starting_anew():
    plan = bench_plan()
    geometry = Geometry(plan, KINDS)
    edits = [
        move([LAMP], 33, -20),
        connect(
            TerminalRef(SWITCH, "14"), TerminalRef(LAMP, "A"), colour="BU", bends=[(400, 300), (400, 200)]
        ),
        connect(TerminalRef(LAMP, "K"), TerminalRef(BATTERY, "-"), colour="WH"),
        turn([SWITCH, LAMP], 90),
        remove([RED]),
        remove([BATTERY]),
    ]
    plans = [plan]
    for edit in edits:
        new = edit.apply(plan)
        geometry.follow(new, changes_between(plan, new))
        assert same(geometry, Geometry(new, KINDS)), edit.label
        plan = new
        plans.append(plan)
    for older in reversed(plans[:-1]):  # and all the way back, as undo does
        geometry.follow(older, changes_between(plan, older))
        assert same(geometry, Geometry(older, KINDS))
        plan = older


def test_wires_between_the_same_terminals_lie_a_lane_apart():
    plan = bench_plan()
    for colour in ("WH", "BU"):
        plan = connect(TerminalRef(LAMP, "K"), TerminalRef(BATTERY, "-"), colour=colour).apply(plan)
    geometry = Geometry(plan, KINDS)
    paths = [geometry.paths[w] for w in plan.wires if plan.wires[w].start == TerminalRef(LAMP, "K")]
    middles = sorted(tuple(np.mean(p[len(p) // 2 - 1 : len(p) // 2 + 1], axis=0)) for p in paths)
    gaps = [math.dist(a, b) for a, b in itertools.pairwise(middles)]
    assert len(middles) == 3
    assert gaps == pytest.approx([LANE_MM, LANE_MM])


@given(
    st.lists(st.tuples(st.floats(-500, 500), st.floats(-500, 500)), min_size=2, max_size=6, unique=True),
    st.floats(-4, 4),
)
def test_a_fanned_way_is_the_same_walked_from_either_end(path, lane):
    lanes = [lane] * max(1, len(path) - 2)
    there, back = fanned(path, lanes), fanned(path[::-1], lanes)[::-1]
    assert np.allclose(there, back, atol=1e-6)
    assert there[0] == path[0]
    assert there[-1] == path[-1]


def test_the_nearest_terminal_is_found_and_none_beyond_reach():
    here = around()
    x, y = here.geometry.terminals.get(TerminalRef(LAMP, "A"))
    assert nearest_terminal(here.geometry, (x + 2, y), 5) == TerminalRef(LAMP, "A")
    assert nearest_terminal(here.geometry, (x, y + 500), 5) is None


def test_a_turned_part_is_hit_where_it_lies_now():
    plan = turn([LAMP], 90).apply(bench_plan())
    geometry = Geometry(plan, KINDS)
    lamp, kind = plan.parts[LAMP], KINDS[plan.parts[LAMP].kind]
    assert kind.width_mm > kind.height_mm
    inside = kind.width_mm / 2 - 1
    assert part_at(geometry, (lamp.x_mm, lamp.y_mm + inside), 0) == LAMP
    assert part_at(geometry, (lamp.x_mm + inside, lamp.y_mm), 0) == ""


def test_a_strip_is_hit_over_the_length_it_is_set_to():
    from wiring.edits.place_part import place

    plan = place(KINDS["led-strip-warm-white"], 0, 1000).apply(bench_plan())
    strip = list(plan.parts)[-1]
    plan = set_setting([strip], "length", 2.0).apply(plan)
    assert part_at(Geometry(plan, KINDS), (1500, 1000), 0) == strip


def test_the_smaller_of_two_parts_is_hit():
    plan = move([SWITCH], 200, -200).apply(bench_plan())  # onto the building
    assert part_at(Geometry(plan, KINDS), (500, 100), 0) == SWITCH


def test_a_wire_is_hit_along_its_way_only():
    geometry = around().geometry
    assert wire_at(geometry, (402, 250), 4) == RED
    assert wire_at(geometry, (440, 250), 4) == ""


def test_far_out_a_small_part_can_still_be_grabbed():
    here = around()
    assert hit_at(here.geometry, here.plan, KINDS, (300, 330), 0.2).part == SWITCH
    assert hit_at(here.geometry, here.plan, KINDS, (300, 330), 2.0).part == ""


def test_near_a_terminal_the_terminal_is_meant_and_far_out_the_part():
    here = around()
    x, y = here.geometry.terminals.get(TerminalRef(LAMP, "K"))
    assert hit_at(here.geometry, here.plan, KINDS, (x, y), 3.0).terminal == TerminalRef(LAMP, "K")
    far = hit_at(here.geometry, here.plan, KINDS, (x, y), 0.3)
    assert far.terminal is None
    assert far.part == LAMP


def test_bends_are_hit_on_a_selected_wire_only():
    here = around()
    assert hit_at(here.geometry, here.plan, KINDS, (400, 300), 1.0, frozenset({RED})).bend == 0
    assert hit_at(here.geometry, here.plan, KINDS, (400, 300), 1.0, frozenset({BLACK})).bend == -1


def test_a_plan_with_a_kind_nobody_knows_still_has_a_place_for_it():
    plan = bench_plan()
    some = {k: v for k, v in KINDS.items() if k != plan.parts[LAMP].kind}
    geometry = Geometry(plan, some)
    assert part_at(geometry, (505, 105), 0) == LAMP
    assert set(geometry.paths) == {RED, BLACK}


@settings(max_examples=60)
@given(st.floats(0.05, 30), st.floats(-900, 900), st.floats(-900, 900), st.floats(0.2, 5))
def test_zooming_keeps_the_place_under_the_pointer(scale, x, y, factor):
    camera = Camera(scale, x, y)
    nearer = camera.zoomed(factor, (120, 80))
    assert nearer.to_plan(120, 80) == pytest.approx(camera.to_plan(120, 80), abs=1e-6)
    assert SMALLEST <= nearer.scale <= LARGEST


def test_fitting_shows_the_whole_box_in_the_middle():
    camera = fitted(Box(-100, 0, 900, 300), 800, 600, 40)
    seen = camera.visible(800, 600)
    assert seen.left <= -100
    assert seen.right >= 900
    assert (seen.left + seen.right) / 2 == pytest.approx(400)
    assert (seen.top + seen.bottom) / 2 == pytest.approx(150)
