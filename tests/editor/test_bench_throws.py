"""Push buttons held and switches thrown by the mouse on the bench."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from support.benches import BUTTON, LAMP, SWITCH, BenchDesk
from support.surfaces import LEFT, PLAIN, SHIFT

MIDDLE, RIM = (90, 50), (95, 50)  # of the button, in mm of the face


@pytest.fixture
def bench(qtbot):
    return BenchDesk(qtbot)


def stands(bench):
    return bench.session.positions[BUTTON]


def test_a_button_is_live_while_it_is_held_and_nothing_is_a_step(bench):
    before, seen = bench.plan, []
    bench.session.thrown.connect(lambda positions: seen.append(positions[BUTTON]))
    bench.face_press(*MIDDLE)
    assert stands(bench) == "pressed"
    bench.face_move(91, 50)
    assert stands(bench) == "pressed"
    bench.face_release(91, 50)
    assert stands(bench) == "released" and seen == ["pressed", "released"]
    assert bench.selection.ids == {BUTTON} and bench.plan is before


def test_pressed_twice_quickly_it_is_held_twice(bench):
    bench.face_click(*MIDDLE)
    QTest.mouseDClick(bench.face, LEFT, PLAIN, bench.on_face(*MIDDLE))
    bench.face_press(*MIDDLE)
    assert stands(bench) == "pressed"
    bench.face_release(*MIDDLE)
    assert stands(bench) == "released"


def test_pulled_away_it_lets_go_and_moves(bench):
    bench.face_drag(MIDDLE, (120, 50))
    assert stands(bench) == "released" and bench.where(BUTTON) == (120, 50)


def test_by_its_rim_it_is_moved_and_chosen_without_being_pressed(bench):
    bench.face_press(*RIM)
    assert stands(bench) == "released"
    bench.face_release(*RIM)
    assert bench.selection.ids == {BUTTON}
    bench.face_drag(RIM, (105, 50))
    assert stands(bench) == "released" and bench.where(BUTTON) == (100, 50)


def test_shift_adds_it_and_from_behind_it_is_only_chosen(bench):
    bench.face_click(140, 30)
    bench.face_press(*MIDDLE, SHIFT)
    assert stands(bench) == "released"
    bench.face_release(*MIDDLE, SHIFT)
    assert bench.selection.ids == {LAMP, BUTTON}
    bench.bench.turn_over(True)
    bench.face_press(*MIDDLE)
    assert stands(bench) == "released"
    bench.face_release(*MIDDLE)


@pytest.mark.parametrize("how", ["escape", "focus", "over"])
def test_whatever_ends_the_hold_lets_it_go(bench, how):
    bench.face_press(*MIDDLE)
    assert stands(bench) == "pressed"
    if how == "escape":
        bench.face_key(Qt.Key.Key_Escape)
    elif how == "focus":
        bench.face.clearFocus()
    else:
        bench.bench.turn_over(True)
    QApplication.processEvents()
    assert stands(bench) == "released"
    bench.face_release(*MIDDLE)
    assert stands(bench) == "released"


def test_a_click_on_a_switchs_knob_throws_it_by_its_rim_or_from_behind_it_is_only_chosen(bench):
    at = bench.where(SWITCH)
    bench.face_click(*at)
    assert bench.session.positions[SWITCH] == "off" and bench.selection.ids == {SWITCH}
    bench.selection.clear()
    bench.face_click(at[0], at[1] + 5.5)
    assert bench.session.positions[SWITCH] == "off" and bench.selection.ids == {SWITCH}
    bench.bench.turn_over(True)
    bench.selection.clear()
    bench.face_click(*at)
    assert bench.session.positions[SWITCH] == "off" and bench.selection.ids == {SWITCH}


def test_a_drag_by_the_knob_moves_a_switch_and_throws_nothing(bench):
    bench.face_drag(bench.where(SWITCH), (60, 70))
    assert bench.where(SWITCH) == (60, 70) and bench.session.positions[SWITCH] == "on"


def test_each_click_of_a_double_click_throws_as_on_the_plan_and_shift_only_adds(bench):
    at = bench.where(SWITCH)
    bench.face_click(*at)
    bench.face_double(*at)
    bench.face_release(*at)
    assert bench.session.positions[SWITCH] == "on"
    bench.face_click(140, 30)
    bench.face_click(*at, SHIFT)
    assert bench.session.positions[SWITCH] == "on" and bench.selection.ids == {LAMP, SWITCH}


def test_over_the_knob_the_pointer_points(bench):
    bench.face_move(*bench.where(SWITCH))
    assert bench.face.cursor().shape() == Qt.CursorShape.PointingHandCursor
    bench.face_move(70, 80)
    assert bench.face.cursor().shape() == Qt.CursorShape.ArrowCursor
