import pytest
from PySide6.QtCore import QMimeData, QPoint, QPointF, Qt
from PySide6.QtGui import QDragEnterEvent, QDropEvent, QWheelEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from support.gesture_runs import BATTERY, BLACK, BUTTON, LAMP, RED, SWITCH
from support.surfaces import CTRL, LEFT, MIDDLE, PLAIN, SHIFT, Desk, desk

from app.canvas.hands.touched_surface import MIME

__all__ = ["desk"]


def test_click_and_shift_click_select(desk):
    desk.click(100, 300)
    assert desk.selection.ids == {BATTERY}
    desk.click(500, 100, SHIFT)
    assert desk.selection.ids == {BATTERY, LAMP}
    desk.click(500, 100, SHIFT)
    assert desk.selection.ids == {BATTERY}
    desk.click(700, 500)
    assert desk.selection.ids == set()


def test_drag_moves_once_and_undo_puts_back(desk):
    before = desk.plan
    desk.drag((100, 300), (160, 350))
    assert (desk.plan.parts[BATTERY].x_mm, desk.plan.parts[BATTERY].y_mm) == (160, 350)
    assert desk.session.revision == 1
    desk.session.undo()
    assert desk.plan is before
    desk.click(100, 300)
    assert desk.selection.ids == {BATTERY}


def test_escape_in_mid_drag_leaves_everything_as_it_was(desk):
    before = desk.plan
    desk.press(100, 300)
    desk.move(200, 300)
    assert desk.view._acting.preview.plan is not None
    desk.key(Qt.Key.Key_Escape)
    desk.move(250, 300)
    desk.release(250, 300)
    assert desk.plan is before


def test_losing_the_focus_in_mid_drag_leaves_everything_as_it_was(desk):
    before = desk.plan
    desk.press(100, 300)
    desk.move(200, 300)
    desk.view.clearFocus()
    desk.release(200, 300)
    assert desk.plan is before


def test_a_band_selects(desk):
    desk.drag((250, 40), (360, 360))
    assert desk.selection.ids == {SWITCH, BUTTON}


def test_the_handle_turns(desk):
    desk.click(500, 100)
    from app.canvas.painting.mark_painter import handle_place, selection_box

    sight = desk.view.sight()
    x, y = sight.camera.to_plan(*handle_place(selection_box(sight, desk.selection.ids)))
    from_centre = (x - 500, y - 100)
    desk.drag((x, y), (500 - from_centre[1], 100 + from_centre[0]))  # a quarter turn, clockwise
    assert desk.plan.parts[LAMP].turn_deg == 90
    assert (desk.plan.parts[LAMP].x_mm, desk.plan.parts[LAMP].y_mm) == pytest.approx((500, 100), abs=6)


def test_a_part_from_the_tray_is_placed_again_and_again_until_escape(desk):
    desk.view.begin_place("led-red")
    assert desk.view.tool == "place"
    desk.move(200, 500)
    assert desk.view._acting.preview.ghost is not None
    desk.key(Qt.Key.Key_R)
    desk.click(200, 500)
    desk.click(260, 500)
    desk.key(Qt.Key.Key_Escape)
    assert desk.view.tool == "select"
    new = [p for p in desk.plan.parts.values() if p.kind == "led-red"]
    assert [(p.x_mm, p.y_mm, p.turn_deg) for p in new] == [(200, 500, 90), (260, 500, 90)]
    assert desk.selection.ids == {new[-1].id}


def test_a_part_dropped_from_outside_is_placed_once(desk):
    data = QMimeData()
    data.setData(MIME, b"lamp-12v")
    buttons, copy = LEFT, Qt.DropAction.CopyAction
    place = desk.px(200, 480)
    enter = QDragEnterEvent(place, copy, data, buttons, PLAIN)
    QApplication.sendEvent(desk.view, enter)
    assert enter.isAccepted()
    QApplication.sendEvent(desk.view, QDropEvent(QPointF(place), copy, data, buttons, PLAIN))
    new = [p for p in desk.plan.parts.values() if p.kind == "lamp-12v"]
    assert [(p.x_mm, p.y_mm) for p in new] == [(200, 480)]
    assert desk.view.tool == "select"


def test_a_drop_of_something_else_is_refused(desk):
    data = QMimeData()
    data.setData(MIME, b"no-such-kind")
    enter = QDragEnterEvent(QPoint(300, 300), Qt.DropAction.CopyAction, data, LEFT, PLAIN)
    enter.ignore()
    QApplication.sendEvent(desk.view, enter)
    assert not enter.isAccepted()


def test_a_wire_is_pulled_with_the_tool_and_the_next_one_follows(desk):
    desk.view.set_wire_choice("20 AWG", "OG")
    desk.view.begin_wire()
    desk.click(*desk.terminal(BATTERY, "+"))
    desk.click(200, 400)
    desk.click(*desk.terminal(SWITCH, "13"))
    (new,) = set(desk.plan.wires) - {RED, BLACK}
    wire = desk.plan.wires[new]
    assert (wire.start.part, wire.end.part, wire.size, wire.colour) == (BATTERY, SWITCH, "20 AWG", "OG")
    assert (200, 400) in wire.bends
    assert desk.view.tool == "wire"
    desk.key(Qt.Key.Key_Escape)
    assert desk.view.tool == "select"


def test_escape_leaves_a_half_pulled_wire_and_then_the_tool(desk):
    desk.view.begin_wire()
    desk.click(*desk.terminal(BATTERY, "+"))
    desk.move(200, 400)
    desk.key(Qt.Key.Key_Escape)
    assert desk.view.tool == "wire"
    assert desk.view._acting.preview.line == ()
    desk.key(Qt.Key.Key_Escape)
    assert desk.view.tool == "select"
    assert set(desk.plan.wires) == {RED, BLACK}


def test_near_by_a_wire_is_dragged_from_a_terminal_without_any_tool(qtbot):
    desk = Desk(qtbot, scale=2.0, centre=(220, 300))
    desk.drag(desk.terminal(BATTERY, "+"), desk.terminal(SWITCH, "13"))
    assert len(desk.plan.wires) == 3
    assert desk.selection.ids == set(desk.plan.wires) - {RED, BLACK}


def test_a_bend_is_added_by_a_double_click_and_dragged(desk):
    spot = desk.px(402, 250)
    QTest.mouseMove(desk.view, spot)
    QTest.mouseClick(desk.view, LEFT, PLAIN, spot)
    QTest.mouseDClick(desk.view, LEFT, PLAIN, spot)
    QTest.mouseRelease(desk.view, LEFT, PLAIN, spot)
    assert desk.plan.wires[RED].bends == ((400, 300), (400, 250), (400, 200))
    desk.drag((400, 250), (440, 250))
    assert desk.plan.wires[RED].bends == ((400, 300), (440, 250), (400, 200))


def test_middle_button_and_space_pull_the_paper_and_the_plan_stays(desk):
    before, camera = desk.plan, desk.view.sight().camera
    start = desk.px(300, 300)
    QTest.mousePress(desk.view, MIDDLE, PLAIN, start)
    QTest.mouseMove(desk.view, start + QPoint(60, 20))
    QTest.mouseRelease(desk.view, MIDDLE, PLAIN, start + QPoint(60, 20))
    assert desk.view.sight().camera.left_mm == pytest.approx(camera.left_mm - 60)
    QTest.keyPress(desk.view, Qt.Key.Key_Space)
    QTest.mousePress(desk.view, LEFT, PLAIN, start)
    QTest.mouseMove(desk.view, start - QPoint(60, 20))
    QTest.mouseRelease(desk.view, LEFT, PLAIN, start - QPoint(60, 20))
    QTest.keyRelease(desk.view, Qt.Key.Key_Space)
    assert desk.view.sight().camera.left_mm == pytest.approx(camera.left_mm)
    assert desk.plan is before
    assert desk.selection.ids == set()


@pytest.mark.parametrize(("turned", "nearer"), [(120, True), (-120, False)])
def test_the_wheel_zooms_at_the_pointer(desk, turned, nearer):
    spot, before = desk.px(500, 100), desk.view.sight().camera
    event = QWheelEvent(
        QPointF(spot),
        QPointF(desk.view.mapToGlobal(spot)),
        QPoint(),
        QPoint(0, turned),
        Qt.MouseButton.NoButton,
        PLAIN,
        Qt.ScrollPhase.NoScrollPhase,
        False,
    )
    QApplication.sendEvent(desk.view, event)
    after = desk.view.sight().camera
    assert (after.scale > before.scale) is nearer
    assert after.to_plan(spot.x(), spot.y()) == pytest.approx((500, 100), abs=1)


def test_ctrl_drag_goes_off_the_grid(desk):
    desk.look(2.0, 200, 250)
    desk.drag((100, 300), (113.5, 307.5), CTRL)
    assert desk.plan.parts[BATTERY].x_mm == pytest.approx(113.5, abs=0.01)
