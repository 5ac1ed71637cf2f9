import pytest
from PySide6.QtCore import QEvent, Qt
from PySide6.QtGui import QAccessible, QGuiApplication, QKeyEvent
from PySide6.QtWidgets import QApplication, QPushButton, QVBoxLayout, QWidget
from support.gesture_runs import BATTERY, BUTTON, LAMP, RED, SWITCH
from support.surfaces import CTRL, PLAIN, SHIFT, desk

from wiring.edits.set_plan import set_habits

__all__ = ["desk"]
K = Qt.Key


def test_arrows_nudge_and_nudges_in_a_row_are_one_step(desk):
    desk.selection.select([BATTERY])
    for _ in range(3):
        desk.key(K.Key_Right)
    desk.key(K.Key_Down, SHIFT)
    assert (desk.plan.parts[BATTERY].x_mm, desk.plan.parts[BATTERY].y_mm) == (130, 301)
    desk.session.undo()
    assert (desk.plan.parts[BATTERY].x_mm, desk.plan.parts[BATTERY].y_mm) == (100, 300)


def test_nudges_of_different_parts_are_different_steps(desk):
    for part in (BATTERY, LAMP):
        desk.selection.select([part])
        desk.key(K.Key_Right)
    desk.session.undo()
    assert (desk.plan.parts[BATTERY].x_mm, desk.plan.parts[LAMP].x_mm) == (110, 500)


def test_in_us_units_a_nudge_is_half_an_inch(desk):
    desk.session.do(set_habits(units="us"))
    desk.selection.select([BATTERY])
    desk.key(K.Key_Right)
    assert desk.plan.parts[BATTERY].x_mm == pytest.approx(112.7)


def test_r_turns_and_shift_r_turns_back(desk):
    desk.selection.select([LAMP])
    desk.key(K.Key_R)
    assert desk.plan.parts[LAMP].turn_deg == 90
    desk.key(K.Key_R, SHIFT)
    desk.key(K.Key_R, SHIFT)
    assert desk.plan.parts[LAMP].turn_deg == 270


def test_delete_removes_with_the_wires(desk):
    desk.selection.select([LAMP])
    desk.key(K.Key_Delete)
    assert LAMP not in desk.plan.parts
    assert not desk.plan.wires
    desk.session.undo()
    assert LAMP in desk.plan.parts
    assert len(desk.plan.wires) == 2


def test_select_all_duplicate_and_pick_the_copies(desk):
    desk.key(K.Key_A, CTRL)
    assert desk.selection.ids == {*desk.plan.parts, *desk.plan.wires}
    old = set(desk.plan.parts) | set(desk.plan.wires)
    desk.key(K.Key_D, CTRL)
    assert len(desk.plan.parts) == 8
    assert len(desk.plan.wires) == 4
    assert desk.selection.ids == (set(desk.plan.parts) | set(desk.plan.wires)) - old


def test_copy_cut_and_paste(desk):
    desk.selection.select([SWITCH, LAMP, RED])
    desk.key(K.Key_C, CTRL)
    desk.key(K.Key_V, CTRL)
    assert len(desk.plan.parts) == 6
    assert len(desk.plan.wires) == 3
    desk.key(K.Key_X, CTRL)
    assert len(desk.plan.parts) == 4
    desk.key(K.Key_V, CTRL)
    assert len(desk.plan.parts) == 6


def test_pasting_something_else_is_refused_in_one_sentence(desk):
    said = []
    desk.session.refused.connect(said.append)
    QGuiApplication.clipboard().setText("a shopping list")
    desk.key(K.Key_V, CTRL)
    assert len(said) == 1
    assert len(desk.plan.parts) == 4


@pytest.mark.parametrize("key", [K.Key_T, K.Key_Space])
def test_t_and_space_throw_the_selected_switch(desk, key):
    desk.selection.select([SWITCH])
    desk.key(key)
    assert desk.session.positions[SWITCH] == "off"
    desk.key(key)
    assert desk.session.positions[SWITCH] == "on"


def test_escape_is_always_safe(desk):
    before = desk.plan
    for _ in range(3):
        desk.key(K.Key_Escape)
    desk.selection.select([LAMP])
    desk.key(K.Key_Escape)
    assert desk.selection.ids == set()
    assert desk.plan is before


def test_tab_walks_the_parts_and_leaves_after_the_last(qtbot, desk):
    window = QWidget()
    qtbot.addWidget(window)
    column = QVBoxLayout(window)
    before, after = QPushButton("before"), QPushButton("after")
    for widget in (before, desk.view, after):
        column.addWidget(widget)
    window.show()
    qtbot.waitExposed(window)
    window.activateWindow()
    desk.view.setFocus()
    seen = []
    for _ in range(4):
        desk.key(K.Key_Tab)
        seen += desk.selection.ids
    assert seen == [BATTERY, SWITCH, LAMP, BUTTON]
    desk.key(K.Key_Tab)
    assert window.focusWidget() is after
    desk.view.setFocus()
    desk.key(K.Key_Backtab, SHIFT)
    assert desk.selection.ids == {LAMP}
    desk.view.setParent(None)  # each closes its own


def test_the_view_takes_its_keys_before_the_windows_shortcuts(desk):
    def is_taken(key, modifiers=PLAIN):
        event = QKeyEvent(QEvent.Type.ShortcutOverride, key, modifiers)
        event.ignore()
        QApplication.sendEvent(desk.view, event)
        return event.isAccepted()

    assert is_taken(K.Key_R)
    assert is_taken(K.Key_Delete)
    assert not is_taken(K.Key_S, CTRL)
    assert not is_taken(K.Key_Escape)
    desk.view.begin_place("led-red")
    assert is_taken(K.Key_Escape)


def test_undo_in_mid_gesture_ends_it_and_the_tool_stays(desk):
    desk.selection.select([BATTERY])
    desk.key(K.Key_Right)
    desk.view.begin_wire()
    desk.click(*desk.terminal(BATTERY, "+"))
    desk.session.undo()
    assert desk.view._acting.preview.line == ()
    assert desk.view.tool == "wire"


def test_screen_readers_hear_what_is_selected(desk):
    reader = QAccessible.queryAccessibleInterface(desk.view)
    assert reader.text(QAccessible.Text.Name) == "Plan"
    desk.selection.select([LAMP])
    assert f"-{desk.plan.parts[LAMP].designation}" in reader.text(QAccessible.Text.Description)
    desk.selection.select([LAMP, RED])
    assert reader.text(QAccessible.Text.Description) == "1 part and 1 wire selected"


def test_a_wire_can_be_drawn_with_keys_alone(desk):
    desk.view.begin_wire()
    terminals = desk.view.sight().geometry.terminals.keys()
    desk.key(K.Key_Tab)
    assert desk.view._acting.preview.landing == terminals[0]
    desk.key(K.Key_Return)
    for _ in range(2):
        desk.key(K.Key_Tab)
    assert desk.view._acting.preview.landing == terminals[2]
    desk.key(K.Key_Return)
    (new,) = desk.selection.ids
    assert (desk.plan.wires[new].start, desk.plan.wires[new].end) == (terminals[0], terminals[2])


def test_a_part_can_be_placed_with_keys_alone(desk):
    desk.view.begin_place("led-red")
    x, y = (desk.view._acting.preview.ghost.x_mm, desk.view._acting.preview.ghost.y_mm)
    desk.key(K.Key_Right)
    desk.key(K.Key_Down)
    desk.key(K.Key_R)
    desk.key(K.Key_Return)
    (new,) = desk.selection.ids
    part = desk.plan.parts[new]
    assert (part.x_mm, part.y_mm, part.turn_deg) == (x + 10, y + 10, 90)


def test_plus_minus_home_and_arrows_move_the_eye_not_the_plan(desk):
    before, camera = desk.plan, desk.view.sight().camera
    desk.key(K.Key_Plus)
    assert desk.view.sight().camera.scale > camera.scale
    desk.key(K.Key_Minus)
    assert desk.view.sight().camera.scale == pytest.approx(camera.scale)
    desk.key(K.Key_Right)
    assert desk.view.sight().camera.left_mm > camera.left_mm
    desk.key(K.Key_Home)
    assert desk.view.sight().visible.left < 100
    assert desk.plan is before
