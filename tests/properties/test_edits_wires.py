"""What each edit of wires, scenes, panels and surroundings does, and what it refuses."""

import math

import pytest
from support.editing import KINDS, done, quay

from wiring.edits.benchwork import add_track, remove_track, set_board
from wiring.edits.bends import add_bend, move_bend, remove_bend, straighten
from wiring.edits.connect import connect, reconnect
from wiring.edits.edit import EditRefused
from wiring.edits.panels import add_panel, change_panel, put_on_panel, remove_panel
from wiring.edits.place_part import place
from wiring.edits.remove import remove
from wiring.edits.scenes import add_scene, change_scene, put_in_scene, remove_scene
from wiring.edits.set_plan import set_habits, set_plan
from wiring.edits.set_wire import set_wire, swap_ends
from wiring.edits.split_wire import insert_in_wire, split_wire
from wiring.plan.names import TerminalRef
from wiring.plan.plan import Habits
from wiring.plan.scene import UsePattern
from wiring.plan.soundness import unsound
from wiring.routing.lengths import cuts

PLUS, MINUS, COMMON = TerminalRef("p2", "+"), TerminalRef("p2", "-"), TerminalRef("p3", "13")


def test_a_new_wire_has_the_plans_usual_size_and_the_lowest_free_label():
    plan = done(quay(), set_habits(wire_size="0.5 mm2"), remove(["w6"]), connect(COMMON, MINUS))
    wire = plan.wires["w8"]
    assert (wire.label, wire.size, wire.colour) == ("W2", "0.5 mm²", "BK")


@pytest.mark.parametrize(
    ("edit", "words"),
    [
        (connect(PLUS, PLUS), "another terminal"),
        (connect(PLUS, COMMON, colour="RD"), "already joins -G1:[+] and -S1:13"),
        (connect(COMMON, PLUS, colour="RD"), "already joins"),
        (connect(TerminalRef("p9", "1"), PLUS), "no longer in the plan"),
        (connect(TerminalRef("p3", "77"), PLUS), "has only 13, 14"),
        (connect(COMMON, MINUS, bends=[(0, math.inf)]), "bend outside the plan"),
        (reconnect("w5", "end", PLUS), "another terminal"),
        (set_wire(["w5"], length_m=0), "length"),
        (set_wire(["w5"], length_m=math.nan), "length"),
        (set_wire(["w5"], label="W2"), "has that label already"),
        (set_wire(["w5", "w6"], label="W9"), "one wire at a time"),
        (set_wire(["w5"], size="thin"), "thin"),
        (set_wire(["w5"], colour="shiny"), "shiny"),
        (set_wire(["w5"], colour="GNYE"), "earth wire of the mains"),
        (set_wire(["w99"], colour="GN"), "no wire w99"),
        (move_bend("w6", 1, 0, 0), "no such bend"),
        (split_wire("w5", "p3"), "already ends on -S1"),
        (set_board([(0, 0), (1, 1)]), "at least three"),
        (add_track([(0, 0)]), "at least two"),
        (remove_track(0), "no such track"),
        (set_habits(units="cubits"), "units"),
        (set_habits(slack_m=math.nan), "slack_m"),
        (set_habits(wire_size="thick"), "thick"),
        (set_plan(use=UsePattern(hours_per_session=25)), "hours per session"),
        (add_scene("  "), "needs a name"),
        (add_panel("Fascia", 0, 0, -1, 5), "negative"),
        (change_scene("s9", name="x"), "no scene s9"),
    ],
)
def test_what_makes_no_sense_is_refused_in_one_sentence(edit, words):
    with pytest.raises(EditRefused, match=words) as refused:
        edit.apply(quay())
    assert str(refused.value).count("\n") == 0 and str(refused.value).endswith(".")


def test_a_second_wire_in_parallel_needs_only_another_size_or_colour():
    plan = done(quay(), connect(PLUS, COMMON, colour="RD", size="18 AWG"), connect(PLUS, COMMON))
    assert len(plan.wires) == 5


def test_ends_can_be_swapped_and_laid_elsewhere():
    plan = done(quay(), add_bend("w6", 0, 100, 650), swap_ends(["w6"]))
    assert plan.wires["w6"].start == ("p4", "A")
    assert plan.wires["w6"].bends == ((400, 700), (100, 650))
    assert reconnect("w6", "end", COMMON).apply(plan).wires["w6"].end == COMMON


def test_bends_come_go_and_move_in_order():
    plan = done(quay(), add_bend("w6", 9, 5, 5), move_bend("w6", 0, 1, 1), add_bend("w6", 1, 2, 2))
    assert plan.wires["w6"].bends == ((1, 1), (2, 2), (5, 5))
    assert remove_bend("w6", 1).apply(plan).wires["w6"].bends == ((1, 1), (5, 5))
    assert straighten("w6").apply(plan).wires["w6"].bends == ()


def test_a_fuse_put_into_a_wire_shares_its_bends_between_the_two_pieces():
    plan = done(quay(), add_bend("w6", 0, 400, 690), set_wire(["w6"], length_m=2))
    plan = insert_in_wire("w6", KINDS["fuse"], 400, 300).apply(plan)
    near, far = plan.wires["w6"], plan.wires["w9"]
    assert (near.start, near.end, near.bends) == (("p3", "14"), ("p8", "1"), ((400, 690), (400, 700)))
    assert (far.start, far.end, far.bends) == (("p8", "2"), ("p4", "A"), ())
    assert near.length_m is None and far.colour == "RD" and plan.parts["p8"].designation == "F1"
    assert unsound(plan, KINDS) == ()


def test_a_wire_can_be_led_over_one_terminal_of_a_strip():
    plan = place(KINDS["terminal-strip-4"], 100, 690).apply(quay())
    plan = split_wire("w6", "p8", "2", "2").apply(plan)
    assert plan.wires["w6"].end == plan.wires["w9"].start == ("p8", "2")
    assert plan.wires["w9"].bends == ((400, 700),)


def test_scenes_gather_the_parts_in_them_and_let_them_go():
    plan = quay()
    assert [p.scene for p in plan.parts.values()] == ["s1", "", "s1"]
    wider = change_scene("s1", height_mm=800).apply(plan)
    assert [p.scene for p in wider.parts.values()] == ["s1", "s1", "s1"]
    inner = add_scene("Crane", 390, 90, 20, 20).apply(plan)
    assert inner.parts["p4"].scene == "s8" and inner.parts["p2"] is plan.parts["p2"]
    assert remove_scene("s8").apply(inner).parts == plan.parts
    assert [p.scene for p in remove_scene("s1").apply(plan).parts.values()] == ["", "", ""]


def test_a_part_put_into_a_scene_by_hand_is_let_go_with_it():
    plan = done(quay(), add_panel("Fascia", 2000, 0, 300, 100), put_on_panel(["p3"], "n8"))
    assert plan.parts["p3"].panel == "n8"
    assert remove_panel("n8").apply(plan).parts["p3"].panel == ""
    plan = put_in_scene(["p3"], "s1").apply(plan)
    assert plan.parts["p3"].scene == "s1"
    assert remove_scene("s1").apply(plan).parts["p3"].scene == ""


def test_the_parts_of_a_panel_move_along_with_it():
    plan = done(quay(), add_panel("Fascia", 50, 650, 300, 100), change_panel("n8", x_mm=60, name="Front"))
    assert plan.parts["p3"].x_mm == 110 and plan.parts["p4"].x_mm == 400
    assert plan.panels["n8"].name == "Front"


def test_habits_change_one_at_a_time_and_settings_of_the_plan_share_the_rest():
    plan = set_habits(units="us").apply(quay())
    assert plan.habits == Habits(units="us")
    assert set_plan(title="Quay").apply(plan).habits is plan.habits
    assert set_plan(title=plan.title).apply(plan) is plan


def test_tracks_are_drawn_and_taken_away_one_by_one():
    plan = done(quay(), add_track([(0, 0), (1, 1)]), add_track([(5, 5), (6, 6)]), remove_track(0))
    assert plan.tracks == (((5, 5), (6, 6)),)


def test_what_is_cut_is_what_was_measured_or_is_drawn_and_spare_at_both_ends():
    plan = done(quay(), set_wire(["w5"], length_m=1.25), set_wire(["w6"], length_m=2))
    found = cuts(plan, KINDS)
    assert found["w5"].measured and not found["w7"].measured
    assert found["w7"].cut_m == pytest.approx(found["w7"].drawn_m + 0.2)
    assert (found["w5"].cut_m, found["w6"].cut_m) == (1.25, 2.0)
