"""One leg of a selected wire is pulled aside by hand and stays square."""

import itertools

import pytest
from PySide6.QtCore import Qt
from support.gesture_runs import RED
from support.surfaces import desk

from app.canvas.gestures.leg import pulled

__all__ = ["desk"]
SQUARE = ((0, 0), (100, 0), (100, 80), (200, 80))


@pytest.mark.parametrize(
    ("leg", "place", "bends"),
    [
        (1, (130, 40), ((130, 0), (130, 80))),  # between two square ones: those grow and shrink
        (0, (50, 30), ((0, 30), (100, 30), (100, 80))),  # from a terminal: a bend beside it
        (2, (150, 60), ((100, 0), (100, 60), (200, 60))),
    ],
)
def test_a_level_or_upright_leg_is_shifted_and_the_wire_stays_square(leg, place, bends):
    assert pulled(SQUARE, leg, place) == bends
    path = (SQUARE[0], *bends, SQUARE[-1])
    assert all(a[0] == b[0] or a[1] == b[1] for a, b in itertools.pairwise(path))


def test_a_slanted_leg_gets_a_bend():
    assert pulled(((0, 0), (100, 70)), 0, (20, 60)) == ((20, 60),)


def test_the_leg_of_a_selected_wire_follows_the_hand_and_escape_leaves_it(desk):
    path = desk.view.sight().geometry.raw_path(RED)
    (ax, ay), (bx, by) = path[1], path[2]
    assert ax == bx == 400
    middle = (400, (ay + by) / 2 + 20)
    before = desk.plan
    desk.drag(middle, (450, middle[1]))
    assert desk.plan is before  # not selected: a band
    desk.click(*middle)
    assert desk.selection.ids == {RED}
    desk.move(*middle)
    assert desk.view.cursor().shape() == Qt.CursorShape.SizeAllCursor
    desk.drag(middle, (452, middle[1]))
    bends = desk.plan.wires[RED].bends
    assert {x for x, _y in bends[-2:]} == {450} or 450 in {x for x, _y in bends}
    assert desk.session.undo_label == "Move wire" and desk.selection.ids == {RED}
    desk.session.undo()
    desk.move(*middle)
    desk.press(*middle)
    desk.move(480, middle[1])
    desk.key(Qt.Key.Key_Escape)
    desk.release(480, middle[1])
    assert desk.plan is before
