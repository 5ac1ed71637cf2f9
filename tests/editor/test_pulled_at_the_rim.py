"""The paper follows what is dragged to the rim of the view: parts, wires, bands, and parts from the tray."""

import pytest
from PySide6.QtCore import QEvent, QMimeData, QPointF, Qt
from PySide6.QtGui import QDragEnterEvent, QDragLeaveEvent, QDragMoveEvent, QDropEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from support.gesture_runs import BATTERY, BUTTON, RED, SWITCH
from support.surfaces import desk

from app.canvas.hands.rim_pulling import RESTS_MS, RIM_PX
from app.canvas.hands.touched_surface import MIME

__all__ = ["desk"]
LONG_MS = RESTS_MS + 200


def left_mm(desk):
    return desk.view.sight().camera.left_mm


def rest(desk, x_px, y_px, ms=LONG_MS):
    """Move to a pixel of the view and stay there; return by how much the paper went, in mm."""
    before = left_mm(desk)
    desk.move(*desk.view.sight().camera.to_plan(x_px, y_px))
    QTest.qWait(ms)
    return left_mm(desk) - before


def let_go(desk, x_px, y_px):
    desk.release(*desk.view.sight().camera.to_plan(x_px, y_px))


def test_a_part_held_at_the_rim_pulls_the_paper_and_lies_under_the_pointer(desk):
    desk.move(100, 300)
    desk.press(100, 300)
    desk.move(150, 300)
    assert rest(desk, 890, 400) > 10
    let_go(desk, 890, 400)
    part = desk.plan.parts[BATTERY]
    assert (part.x_mm, part.y_mm) == pytest.approx(desk.view.sight().camera.to_plan(890, 400), abs=5)
    still = left_mm(desk)
    QTest.qWait(LONG_MS)
    assert left_mm(desk) == still


def test_deeper_in_the_rim_and_beyond_it_the_paper_goes_faster(desk):
    desk.move(100, 300)
    desk.press(100, 300)
    desk.move(150, 300)
    slow = rest(desk, 900 - RIM_PX + 4, 400)
    fast = rest(desk, 960, 400)
    assert 0 < slow < fast / 2
    assert rest(desk, 450, 400) == 0
    desk.key(Qt.Key.Key_Escape)
    assert rest(desk, 960, 400) == 0


def test_a_band_goes_on_over_what_comes_into_sight(desk):
    desk.look(1.0, 700, 220)  # the left edge is at 250: the battery is out of sight
    desk.move(420, 380)
    desk.press(420, 380)
    desk.move(400, 200)
    assert rest(desk, 1, 130, 900) < -100
    let_go(desk, 1, 130)
    assert SWITCH in desk.selection.ids


def test_a_wire_pulled_by_clicks_pulls_the_paper_with_no_button_down(desk):
    desk.click(*desk.terminal(BATTERY, "+"))
    assert desk.view.is_busy
    assert rest(desk, 895, 300) > 10


def test_where_a_wire_would_land_the_paper_stands_still(desk):
    x, y = desk.terminal(SWITCH, "14")
    desk.look(1.0, x + 440, y)  # ten pixels from the left edge
    desk.view.begin_wire()
    desk.click(*desk.terminal(BUTTON, "14"))
    assert rest(desk, 10, 320) == 0
    assert desk.view._acting.preview.landing is not None


def test_what_is_taken_at_the_rim_is_dragged_inward_without_pulling(desk):
    desk.look(1.0, 540, 220)  # the battery stands ten pixels from the left edge
    desk.move(100, 300)
    desk.press(100, 300)
    assert rest(desk, 16, 410) == 0
    assert rest(desk, 200, 410) == 0
    assert rest(desk, 6, 410) < -10


def test_a_mere_press_and_a_lever_held_down_pull_nothing(desk):
    desk.look(1.0, 740, 220)  # the push button is ten pixels from the left edge
    button = desk.plan.parts[BUTTON]
    desk.move(button.x_mm, button.y_mm)
    desk.press(button.x_mm, button.y_mm)
    assert rest(desk, 4, 210) == 0
    let_go(desk, 4, 210)
    desk.selection.select([RED])
    assert rest(desk, 4, 400) == 0  # nothing in hand


def test_passing_through_the_rim_pulls_nothing(desk):
    desk.click(*desk.terminal(BATTERY, "+"))
    before = left_mm(desk)
    desk.move(*desk.view.sight().camera.to_plan(895, 300))
    QApplication.sendEvent(desk.view, QEvent(QEvent.Type.Leave))
    QTest.qWait(LONG_MS)
    assert left_mm(desk) == before


def test_a_part_from_the_tray_pulls_the_paper_until_it_is_dropped(desk):
    data, copy = QMimeData(), Qt.DropAction.CopyAction
    data.setData(MIME, b"toggle-on-off")
    hand = copy, data, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier
    QApplication.sendEvent(desk.view, QDragEnterEvent(desk.px(300, 200), *hand))
    before = left_mm(desk)
    QApplication.sendEvent(desk.view, QDragMoveEvent(QPointF(890, 300).toPoint(), *hand))
    QTest.qWait(LONG_MS)
    assert left_mm(desk) > before + 10
    QApplication.sendEvent(desk.view, QDropEvent(QPointF(890, 300), *hand))
    still, parts = left_mm(desk), len(desk.plan.parts)
    assert parts == 5
    QTest.qWait(LONG_MS)
    assert left_mm(desk) == still
    QApplication.sendEvent(desk.view, QDragEnterEvent(desk.px(300, 200), *hand))
    QApplication.sendEvent(desk.view, QDragLeaveEvent())
    assert not desk.view.is_busy
