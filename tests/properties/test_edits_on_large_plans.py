"""What a pointer shows while it moves must not walk a large plan once for every part it sets down."""

from support.editing import KINDS, done

from wiring.edits.feed import feed
from wiring.edits.joined import remembered
from wiring.edits.laying import Laying
from wiring.edits.move import move
from wiring.edits.place_part import place
from wiring.edits.place_row import place_row
from wiring.edits.square_way import Ground, square_way
from wiring.plan.plan import Plan


def test_a_row_is_what_its_parts_set_down_one_by_one_would_be():
    plan = done(Plan(), place(KINDS["lamp-12v"], 0, 0), place(KINDS["fuse"], 50, 0))
    row = place_row(KINDS["lamp-12v"], (0, 100), (400, 100), count=5, turn_deg=450.0).apply(plan)
    one_by_one = done(plan, *(place(KINDS["lamp-12v"], 100.0 * i, 100, 450.0) for i in range(5)))
    assert row == one_by_one


def test_an_edit_that_is_remembered_is_worked_out_once_for_a_plan_and_anew_for_another():
    plan = done(Plan(), place(KINDS["lamp-12v"], 0, 0))
    edit = remembered(move(["p1"], 10, 0))
    assert edit.apply(plan) is edit.apply(plan) and edit.label == move(["p1"], 10, 0).label
    assert edit.apply(edit.apply(plan)).parts["p1"].x_mm == 20


def test_a_part_set_down_while_laying_is_an_obstacle_like_one_that_stood_there():
    plan = done(Plan(), place(KINDS["lamp-12v"], 0, 0))
    laying = Laying(plan, KINDS, ["p1"])
    assert laying.is_free((90, -5, 110, 5))
    laying.part(KINDS["resistor"], (100, 0), 0.0, plan.parts["p1"], {})
    assert not laying.is_free((90, -5, 110, 5))


def test_wires_laid_one_after_the_other_keep_clear_of_all_laid_before():
    ground = Ground([], [])
    first = square_way((0, 0), (100, 60), ground)
    ground.lay(((0, 0), *first, (100, 60)))
    second = square_way((0, 0), (100, 60), ground)
    ground.lay(((0, 0), *second, (100, 60)))
    third = square_way((0, 0), (100, 60), ground)
    assert len({first, second, third}) == 3


def test_feeding_far_from_everything_else_lays_what_it_lays_on_an_empty_plan():
    near = done(
        Plan(),
        place(KINDS["supply-regulated"], 0, 0),
        place_row(KINDS["lamp-12v"], (200, 0), (800, 0), count=4),
    )
    ids = list(near.parts)
    far = done(
        near,
        place(KINDS["supply-regulated"], 9000, 0),
        place_row(KINDS["lamp-12v"], (9200, 0), (9800, 0), count=4),
    )
    far = feed([i for i in far.parts if i not in ids], kinds=KINDS).apply(far)
    here, there = feed(ids, kinds=KINDS).apply(near), feed(ids, kinds=KINDS).apply(far)
    new = [w for i, w in there.wires.items() if i not in far.wires]
    assert [(w.start, w.end, w.bends) for w in here.wires.values()] == [
        (w.start, w.end, w.bends) for w in new
    ]
