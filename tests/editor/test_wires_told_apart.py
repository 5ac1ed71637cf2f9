"""Wires that run over each other step aside, a little and always alike."""

import math
from itertools import combinations, pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from support.gesture_runs import KINDS

from app.canvas.camera import Camera
from app.canvas.geometry import Geometry
from app.canvas.overlaps import CLOSE_MM, LEAST_MM, Overlaps, stepped_aside
from app.canvas.painting.shades import shades
from app.canvas.sight import Sight
from app.canvas.sub_plan import sub_plan
from app.canvas.touched import Touched
from app.canvas.wire_paths import LANE_MM
from wiring.edits.connect import connect
from wiring.edits.move import move
from wiring.edits.place_part import place
from wiring.edits.remove import remove
from wiring.pictures.theme import LIGHT
from wiring.plan.changes import changes_between
from wiring.plan.names import TerminalRef
from wiring.plan.plan import Plan


def row_plan(wires=((1, 4), (2, 4), (1, 3))) -> Plan:
    """Return lamps in one line and wires along it that share no bend: from lamp to lamp, straight."""
    plan = Plan()
    for i in range(4):
        plan = place(KINDS["lamp-12v"], 100 + 150 * i, 100).apply(plan)
    for a, b in wires:
        plan = connect(TerminalRef(f"p{a}", "2"), TerminalRef(f"p{b}", "1"), colour="RD").apply(plan)
    return plan


def over_each_other(one, other) -> float:
    """Return how many millimetres of two level or upright paths run over each other."""
    total = 0.0
    for (a, b), (c, d) in ((p, q) for p in pairwise(one) for q in pairwise(other)):
        for along, across in ((0, 1), (1, 0)):
            level = abs(a[across] - b[across]) < 0.01 and abs(c[across] - d[across]) < 0.01
            if level and abs(a[across] - c[across]) < CLOSE_MM / 2:
                shared = min(max(a[along], b[along]), max(c[along], d[along])) - max(
                    min(a[along], b[along]), min(c[along], d[along])
                )
                total += max(shared, 0.0)
    return total


def test_wires_over_each_other_are_laid_beside_each_other_and_end_on_their_terminals():
    plan = row_plan()
    geometry = Geometry(plan, KINDS)
    for one, other in combinations(plan.wires, 2):
        assert over_each_other(geometry.paths[one], geometry.paths[other]) < LEAST_MM
    for wire_id, wire in plan.wires.items():
        path = geometry.paths[wire_id]
        assert path[0] == tuple(geometry.terminals.get(wire.start))
        assert path[-1] == tuple(geometry.terminals.get(wire.end))
        assert max(abs(y - 100) for _, y in path) <= LANE_MM * 1.01


def test_wires_that_only_meet_end_to_end_stay_where_they_are():
    plan = row_plan(((1, 2), (2, 3), (3, 4)))
    assert all(len(path) == 2 for path in Geometry(plan, KINDS).paths.values())


def test_lanes_do_not_depend_on_how_the_plan_came_about():
    plan = row_plan()
    grown, was = Geometry(Plan(), KINDS), Plan()
    for new in (row_plan(()), row_plan(((1, 4), (2, 4))), plan):
        grown.follow(new, changes_between(was, new))
        was = new
    assert grown.paths == Geometry(plan, KINDS).paths
    away = move(["p2"], 0, 40).apply(plan)
    grown.follow(away, changes_between(plan, away))
    assert grown.paths == Geometry(away, KINDS).paths
    grown.follow(plan, changes_between(away, plan))
    assert grown.paths == Geometry(plan, KINDS).paths


def test_when_one_goes_the_other_comes_back_to_the_middle():
    plan = row_plan(((1, 4), (2, 4)))
    geometry = Geometry(plan, KINDS)
    first, second = plan.wires
    bare = remove([second]).apply(plan)
    geometry.follow(bare, changes_between(plan, bare))
    assert len(geometry.paths[first]) == 2 and second not in geometry.paths


def test_a_corner_stays_square_when_both_its_legs_step_aside():
    path = ((0.0, 0.0), (100.0, 0.0), (100.0, 80.0))
    moved = stepped_aside(path, [1.2, 1.2])
    corner = moved[len(moved) // 2]
    assert corner == pytest.approx((98.8, 1.2))
    assert moved[0] == path[0] and moved[-1] == path[-1]


@settings(deadline=None, max_examples=60)
@given(
    st.lists(
        st.tuples(st.integers(0, 40), st.integers(1, 40), st.integers(0, 2), st.booleans()),
        min_size=2,
        max_size=12,
    )
)
def test_no_two_stretches_share_a_lane_however_they_lie(rows):
    overlaps, paths = Overlaps(), {}
    for i, (start, length, line, back) in enumerate(rows):
        ends = ((start * 5.0, line * 40.0), (start * 5.0 + length * 5.0, line * 40.0))
        paths[f"w{i}"] = ends[::-1] if back else ends
        overlaps.put(f"w{i}", paths[f"w{i}"])
    overlaps.settle()
    shown = {i: overlaps.path(i, path) for i, path in paths.items()}
    for one, other in combinations(shown, 2):
        assert over_each_other(middle(shown[one]), middle(shown[other])) <= LEAST_MM
    assert all(math.isfinite(x) for path in shown.values() for point in path for x in point)


def looked_at(plan) -> Sight:
    return Sight(plan, KINDS, Geometry(plan, KINDS), Camera(), shades(LIGHT), 800, 600)


@pytest.mark.parametrize("moved", [("p2",), ("p1",), ("p1", "p4")])
def test_wires_pulled_along_lie_where_they_will_stand_when_let_go(moved):
    plan = row_plan(((1, 4), (2, 4), (1, 3), (2, 3)))
    sight, kept = looked_at(plan), Touched()
    before, rows = dict(sight.geometry.paths), sight.geometry.wires.values.copy()
    touched, differs = sight.geometry.wires_of(moved) | frozenset(moved), False
    for dx, dy in ((0, 40), (-30, 0), (15, 20)):
        after = move(list(moved), dx, dy).apply(plan)
        stands = Geometry(after, KINDS)
        with kept.laid(sight, sub_plan(after, touched), touched) as there:
            shown = {w: there.geometry.paths[w] for w in touched if w in plan.wires}
        assert shown == {w: stands.paths[w] for w in shown}
        assert sight.geometry.paths == before
        assert (sight.geometry.wires.values == rows).all()
        alone = Geometry(sub_plan(after, touched), KINDS)
        differs |= any(alone.paths[w] != stands.paths[w] for w in shown)
    assert differs  # it is no matter of course


def test_a_look_at_a_preview_leaves_no_trace_even_when_painting_fails():
    sight = looked_at(row_plan())
    before = dict(sight.geometry.paths)
    after = move(["p2"], 0, 40).apply(sight.plan)
    with pytest.raises(ZeroDivisionError), Touched().laid(sight, after, frozenset({"p2"})):
        raise ZeroDivisionError
    assert sight.geometry.paths == before


def middle(path):
    """Return a stretch without its leads, which may touch those of others at a shared terminal."""
    return path[1:-1] if len(path) == 4 else path
