"""The board's outline and tracks are selected by a click, changed by their corners, removed by a key."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from support.gesture_runs import bench_plan
from support.surfaces import Desk

from wiring.edits.benchwork import add_track, set_board

Key = Qt.Key
BOARD = ((0, 0), (640, 0), (640, 500), (0, 500))


@pytest.fixture
def desk(qtbot):
    plan = set_board(BOARD).apply(bench_plan())
    return Desk(qtbot, add_track([(40, 440), (300, 440), (600, 400)]).apply(plan))


def test_a_track_is_selected_and_its_corner_dragged(desk):
    desk.click(170, 443)
    assert desk.selection.ground == "t0" and not desk.selection.ids
    desk.drag((300, 440), (300, 410))
    assert desk.plan.tracks == (((40, 440), (300, 410), (600, 400)),)
    assert desk.session.undo_label == "Change track"
    desk.press(300, 410)
    desk.move(300, 200)
    desk.key(Key.Key_Escape)
    desk.release(300, 200)
    assert desk.plan.tracks[0][1] == (300, 410)


def test_two_clicks_put_a_corner_in_and_arrows_shift_it(desk):
    QTest.mouseDClick(desk.view, Qt.MouseButton.LeftButton, pos=desk.px(170, 441))
    assert desk.plan.tracks[0][1] == pytest.approx((170, 441))
    desk.click(100, 440)
    desk.key(Key.Key_Up)
    assert desk.plan.tracks[0][0] == (40, 430)
    desk.key(Key.Key_Delete)
    assert desk.plan.tracks == () and len(desk.plan.parts) == 4
    desk.session.undo()
    assert len(desk.plan.tracks) == 1


def test_the_board_is_reshaped_by_a_corner_and_by_a_new_one(desk):
    desk.click(400, 2)
    assert desk.selection.ground == "board"
    desk.drag((640, 500), (600, 480))
    assert desk.plan.board == (*BOARD[:2], (600, 480), BOARD[3])
    QTest.mouseDClick(desk.view, Qt.MouseButton.LeftButton, pos=desk.px(2, 250))
    assert desk.plan.board[4] == pytest.approx((2, 250)) and len(desk.plan.board) == 5
    desk.key(Key.Key_Escape)
    assert desk.selection.ground == ""
    desk.drag((640, 0), (600, 40))  # not selected: only a band is drawn
    assert desk.plan.board[1] == (640, 0)
