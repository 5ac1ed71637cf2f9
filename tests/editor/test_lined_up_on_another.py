"""Lining up and spacing out say which parts they have laid on one another."""

import pytest
from PySide6.QtTest import QTest
from support.gesture_runs import KINDS
from support.surfaces import LEFT

from wiring.edits.body_overlaps import new_overlaps
from wiring.edits.place_part import place
from wiring.plan.plan import Plan

PLACES = ((100, 100), (100, 200), (300, 200))


@pytest.fixture
def lamps(hands):
    plan = Plan()
    for x, y in PLACES:
        plan = place(KINDS["lamp-12v"], x, y).apply(plan)
    hands.editor.session.open(plan, None)
    hands.view.show_all()
    hands.act("select_all")
    return hands


def entry(hands, name):
    hands.window.acts[name].trigger()
    return hands.window.notice_bar


def test_what_lies_on_one_another_is_named_and_taken_back_by_one_click(lamps):
    session, before = lamps.editor.session, lamps.editor.session.plan
    bar = entry(lamps, "left")
    assert bar.isVisible()
    assert bar.text == "-E2 and -E3 now lie on one another; take it back, or move one of them off."
    assert session.undo_label == "Line up 3 parts"
    QTest.mouseClick(bar._act, LEFT)
    assert session.plan is before and not bar.isVisible()


def test_it_leaves_with_the_next_act_and_what_lay_so_before_is_not_told(lamps):
    bar = entry(lamps, "left")
    assert bar.isVisible()
    bar = entry(lamps, "bottom")  # all three in one place: the first has joined the others
    assert "-E1 and -E2" in bar.text and "-E1 and -E3" in bar.text and "-E2 and -E3" not in bar.text
    lamps.act("undo")
    assert not bar.isVisible()


def test_one_that_was_not_selected_counts_and_a_line_that_keeps_them_apart_says_nothing(lamps):
    lamps.editor.selection.select(["p1", "p3"])
    assert "-E2 and -E3" in entry(lamps, "left").text
    lamps.act("undo")
    lamps.editor.selection.select(["p1", "p3"])
    assert not entry(lamps, "right").isVisible()
    assert lamps.editor.session.plan.parts["p1"].x_mm == 300


def test_neighbours_that_only_touch_do_not_lie_on_one_another():
    wide = KINDS["lamp-12v"].width_mm
    one = place(KINDS["lamp-12v"], 0, 0).apply(Plan())
    beside, over = (place(KINDS["lamp-12v"], x, 0).apply(one) for x in (wide, wide - 1.5))
    assert list(new_overlaps(one, beside, KINDS)) == []
    assert list(new_overlaps(one, over, KINDS)) == [("p1", "p2")]
