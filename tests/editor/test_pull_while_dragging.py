"""The paper pulled with the middle button while the left one holds a part: neither hand forgets the other."""

import pytest
from PySide6.QtCore import Qt
from support.gesture_runs import BATTERY, RED, SWITCH
from support.surfaces import desk

__all__ = ["desk"]
MIDDLE = Qt.MouseButton.MiddleButton


def place(desk):
    part = desk.plan.parts[BATTERY]
    return part.x_mm, part.y_mm


def hold_and_pull(desk):
    """Drag the battery a little, then pull the paper 100 mm to the left under it."""
    desk.move(100, 300)
    desk.press(100, 300)
    desk.move(150, 300)
    left_mm = desk.view.sight().camera.left_mm
    desk.press(150, 300, button=MIDDLE)
    desk.move(50, 300)
    assert desk.view.sight().camera.left_mm == pytest.approx(left_mm + 100)


def test_the_part_goes_on_with_the_pointer_once_the_paper_is_let_go(desk):
    hold_and_pull(desk)
    desk.release(150, 300, button=MIDDLE)
    assert desk.view.is_busy
    desk.move(300, 350)
    desk.release(300, 350)
    assert place(desk) == pytest.approx((300, 350), abs=5)
    assert not desk.view.is_busy


def test_the_left_button_let_go_first_sets_the_part_down_and_the_paper_goes_on(desk):
    hold_and_pull(desk)
    desk.release(150, 300)
    assert not desk.view.is_busy
    dropped = place(desk)
    left_mm = desk.view.sight().camera.left_mm
    desk.move(100, 300)
    assert desk.view.sight().camera.left_mm != left_mm  # the middle button still pulls
    desk.release(100, 300, button=MIDDLE)
    desk.move(400, 400)
    assert place(desk) == dropped and not desk.view.is_busy


def test_what_is_dragged_is_selected_so_that_the_next_key_is_meant_for_it(desk):
    desk.selection.select([RED])
    desk.drag((100, 300), (150, 340))
    assert desk.selection.ids == {BATTERY}
    desk.session.undo()
    desk.selection.select([BATTERY, SWITCH])
    desk.drag((100, 300), (150, 340))
    assert desk.selection.ids == {BATTERY, SWITCH}  # as they were, with all that moved along
