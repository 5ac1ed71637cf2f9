"""Switches thrown and push buttons held by the mouse on the plan, near, at usual size and far away."""

import pytest
from PySide6.QtCore import Qt
from support.editing import KINDS, done
from support.gesture_runs import BLACK, BUTTON, LAMP, RED, SWITCH, bench_plan
from support.surfaces import SHIFT, Desk

from wiring.edits.bends import add_bend
from wiring.edits.place_part import place

FAR, USUAL, NEAR = 0.3, 1.0, 3.0


@pytest.fixture(params=[FAR, USUAL, NEAR], ids=["far", "usual", "near"])
def at_any(qtbot, request):
    return Desk(qtbot, scale=request.param, centre=(300, 220))


def test_each_click_throws_and_selects_and_the_plan_stays(at_any):
    before = at_any.plan
    for expected in ("off", "on", "off"):
        at_any.click(300, 300)
        assert at_any.session.positions[SWITCH] == expected
        assert at_any.selection.ids == {SWITCH}
        at_any.selection.clear()
    assert at_any.plan is before


def test_a_drag_moves_a_switch_and_throws_nothing(at_any):
    at_any.drag((300, 300), (350, 300))
    assert at_any.plan.parts[SWITCH].x_mm == 350
    assert at_any.session.positions[SWITCH] == "on"


def test_shift_and_a_band_select_without_throwing(at_any):
    at_any.click(300, 300, SHIFT)
    assert at_any.selection.ids == {SWITCH}
    at_any.click(300, 100, SHIFT)
    assert at_any.selection.ids == {SWITCH, BUTTON}
    at_any.drag((200, 40), (420, 360))
    assert at_any.selection.ids == {SWITCH, BUTTON}
    assert at_any.session.positions[SWITCH] == "on"
    assert at_any.session.positions[BUTTON] == "released"


def test_near_by_a_click_beside_the_lever_selects_only(qtbot):
    desk = Desk(qtbot, scale=NEAR, centre=(300, 250))
    rim = KINDS["toggle-on-off"].height_mm / 2 * 0.8
    desk.click(300, 300 - rim)
    assert desk.selection.ids == {SWITCH}
    assert desk.session.positions[SWITCH] == "on"


def test_a_button_is_pressed_only_while_it_is_held(at_any):
    at_any.press(300, 100)
    assert at_any.session.positions[BUTTON] == "pressed"
    at_any.release(300, 100)
    assert at_any.session.positions[BUTTON] == "released"
    at_any.press(300, 100)
    at_any.key(Qt.Key.Key_Escape)
    assert at_any.session.positions[BUTTON] == "released"


def test_a_button_pulled_away_lets_go_and_moves(at_any):
    at_any.press(300, 100)
    at_any.move(302, 100)
    assert at_any.session.positions[BUTTON] == "pressed"
    at_any.move(360, 100)
    assert at_any.session.positions[BUTTON] == "released"
    at_any.release(360, 100)
    assert at_any.plan.parts[BUTTON].x_mm == 360


def test_far_away_the_nearest_of_neighbours_is_thrown(qtbot):
    beside = done(bench_plan(), place(KINDS["toggle-on-off"], 320, 300), place(KINDS["led-red"], 290, 300))
    desk = Desk(qtbot, beside, scale=FAR, centre=(300, 250))
    new = next(p.id for p in beside.parts.values() if p.x_mm == 320)
    desk.click(320, 300)
    assert desk.session.positions[new] == "off" and desk.session.positions[SWITCH] == "on"
    desk.click(300, 300)
    assert desk.session.positions[SWITCH] == "off" and desk.selection.ids == {SWITCH}


def test_what_has_no_positions_is_selected(at_any):
    at_any.click(500, 100)
    assert at_any.selection.ids == {LAMP}


def test_rings_and_bends_of_many_selected_wires_leave_the_lever_free(at_any):
    """As after a feed, which selects what it has laid."""
    at_any.session.do(add_bend(RED, 0, 300, 300))
    at_any.selection.select((RED, BLACK))
    at_any.click(300, 300)
    assert at_any.session.positions[SWITCH] == "off" and at_any.selection.ids == {SWITCH}
