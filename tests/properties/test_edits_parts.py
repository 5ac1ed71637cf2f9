"""What each edit of parts does, and what it leaves alone."""

import math

import pytest
from support.editing import KINDS, done, quay

from wiring.edits.duplicate import duplicate
from wiring.edits.edit import EditRefused
from wiring.edits.fragment import copied, paste
from wiring.edits.move import move
from wiring.edits.place_part import place
from wiring.edits.remove import remove
from wiring.edits.set_value import rename, set_field, set_setting
from wiring.edits.throw import keep_position
from wiring.edits.turn import turn
from wiring.plan.changes import changes_between
from wiring.plan.plan import Plan
from wiring.plan.soundness import unsound


def test_placing_numbers_the_part_after_its_kind_and_takes_the_next_id():
    plan = place(KINDS["led-red"], 10.00049, -5, 450, {"series_ohm": 680}).apply(quay())
    part = plan.parts["p8"]
    assert (part.designation, part.x_mm, part.turn_deg, plan.next_number) == ("E2", 10.0, 90.0, 9)
    assert part.settings == {"series_ohm": 680.0} and isinstance(part.settings["series_ohm"], float)


def test_a_freed_designation_is_taken_again_but_an_id_is_not():
    plan = done(quay(), remove(["p4"]), place(KINDS["led-red"], 0, 0))
    assert plan.parts["p8"].designation == "E1"
    assert "p4" not in plan.parts


def test_a_part_belongs_to_the_scene_it_is_put_into_and_leaves_it_when_moved_out():
    plan = place(KINDS["led-red"], 50, 50).apply(quay())
    assert plan.parts["p8"].scene == "s1"
    assert move(["p8"], 0, 900).apply(plan).parts["p8"].scene == ""
    by_hand = set_field(["p3"], scene="s1").apply(plan)
    assert move(["p3"], 0, 50).apply(by_hand).parts["p3"].scene == "s1"


def test_moving_shares_every_record_it_does_not_touch():
    plan = quay()
    moved = move(["p4"], 1, 0).apply(plan)
    changes = changes_between(plan, moved)
    assert changes.ids == {"p4"} and not changes.rest
    for key in plan.parts.keys() - {"p4"}:
        assert moved.parts[key] is plan.parts[key]
    assert moved.wires is plan.wires and moved.scenes is plan.scenes and moved.habits is plan.habits


def test_bends_of_a_wire_move_only_when_both_its_parts_do():
    plan = quay()
    assert move(["p3"], 5, 5).apply(plan).wires["w6"].bends == ((400, 700),)
    assert move(["p3", "p4"], 5, 5).apply(plan).wires["w6"].bends == ((405, 705),)
    assert move(["w6"], 5, 5).apply(plan).wires["w6"].bends == ((405, 705),)


def test_moving_by_nothing_is_no_edit():
    plan = quay()
    assert move(["p2", "p3"], 0, 0).apply(plan) is plan
    assert turn(["p2"], 720).apply(plan) is plan
    assert set_field(["p2"], note="").apply(plan) is plan
    assert remove(["p77"]).apply(plan) is plan


def test_turning_one_part_leaves_its_place_and_four_quarters_bring_all_back():
    plan = quay()
    turned = turn(["p4"], 90).apply(plan)
    assert (turned.parts["p4"].x_mm, turned.parts["p4"].turn_deg) == (400, 90)
    both = turn(["p3", "p4"], 90).apply(plan)
    assert (both.parts["p3"].x_mm, both.parts["p3"].y_mm) == (-50, 250)
    assert both.wires["w6"].bends == ((-50, 550),)
    assert done(both, *[turn(["p3", "p4"], 90)] * 3) == plan
    assert turn(["p4"], 180, about=(0, 0)).apply(plan).parts["p4"].x_mm == -400


def test_removing_a_part_takes_its_wires_along():
    plan = remove(["p3"]).apply(quay())
    assert set(plan.wires) == {"w7"} and set(plan.parts) == {"p2", "p4"}


def test_a_setting_can_be_set_and_put_back():
    plan = set_setting(["p4"], "series_ohm", 1000).apply(quay())
    assert plan.parts["p4"].settings == {"series_ohm": 1000.0}
    assert set_setting(["p4"], "series_ohm", None).apply(plan) == quay()


@pytest.mark.parametrize(
    ("edit", "words"),
    [
        (set_setting(["p4"], "series_ohm", -5), "must be at least"),
        (set_setting(["p4"], "series_ohm", math.nan), "must be a number"),
        (set_setting(["p4"], "series_ohm", "many"), "must be a number"),
        (set_setting(["p4"], "in_series", 1.5), "whole number"),
        (set_setting(["p4"], "wheels", 4), "no setting called wheels"),
        (set_setting(["p2"], "cell", "lemon"), "must be one of"),
        (set_setting(["p2"], "fitted", "last spring"), "must be a date"),
        (set_setting(["p99"], "series_ohm", 5), "no part p99"),
        (move(["p4"], 1e9, 0), "outside the plan"),
        (move(["p4"], math.inf, 0), "outside the plan"),
        (place(KINDS["led-red"], math.nan, 0), "outside the plan"),
        (place(KINDS["led-red"], 0, 0, settings={"series_ohm": -1}), "must be at least"),
        (place(KINDS["led-red"], 0, 0, scene="s9"), "which the plan does not have"),
        (rename("p4", "S1"), "has that designation already"),
        (rename("p4", "two words"), "needs a designation"),
        (rename("p4", ""), "needs a designation"),
        (rename("p4", "a\nb"), "not “a b”"),
        (rename("p4", "long" * 9999), "…"),
        (set_field(["p3", "p4"], designation="E7"), "one part at a time"),
        (set_field(["p4"], label="x" * 121), "label"),
        (set_field(["p4"], note="\x00"), "note"),
        (keep_position("p3", "sideways"), "no position called sideways"),
    ],
)
def test_a_part_is_not_given_what_it_cannot_have(edit, words):
    with pytest.raises(EditRefused, match=words) as refused:
        edit.apply(quay())
    text = str(refused.value)
    assert text.count("\n") == 0 and text.endswith(".") and len(text) < 400


def test_a_designation_may_be_typed_with_its_minus_sign():
    assert rename("p4", " -E12 ").apply(quay()).parts["p4"].designation == "E12"


def test_keeping_a_position_is_an_edit_of_the_plan():
    assert keep_position("p3", "off").apply(quay()).parts["p3"].position == "off"


def test_duplicates_carry_the_wires_between_them_and_no_others():
    plan = duplicate(["p4", "p3"], 10, 0).apply(quay())
    assert [p.designation for p in plan.parts.values()] == ["G1", "S1", "E1", "S2", "E2"]
    copy = plan.wires["w10"]
    assert (copy.start, copy.end, copy.bends) == (("p8", "14"), ("p9", "A"), ((410, 700),))
    assert len(plan.wires) == 4 and unsound(plan, KINDS) == ()


def test_a_fragment_is_pasted_into_another_plan_about_the_pointer():
    text = copied(quay(), ["p3", "p4", "w6", "w7"])
    plan = paste(text, at=(0, 0)).apply(Plan())
    assert [(p.id, p.x_mm, p.y_mm, p.scene) for p in plan.parts.values()] == [
        ("p1", -150, 300, ""),
        ("p2", 150, -300, ""),
    ]
    assert plan.wires["w3"].bends == ((150, 300),)
    assert copied(quay(), ["w6"]) == ""


@pytest.mark.parametrize("text", ["", "hello", "{}", "[" * 9000, '{"parts": [], "wires": [1]}'])
def test_what_is_no_fragment_is_not_pasted(text):
    with pytest.raises(EditRefused, match="clipboard"):
        paste(text).apply(quay())


def test_a_fragment_with_a_loose_wire_is_not_pasted():
    text = copied(quay(), ["p3", "p4"]).replace('"end":["p4"', '"end":["p9"')
    with pytest.raises(EditRefused, match="not copied with it"):
        paste(text).apply(quay())
