"""From thing to thing of the plan by keys, taking hold of corners, drawing and menus without a mouse."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication
from support.gesture_runs import BATTERY, BUTTON, LAMP, RED, SWITCH
from support.surfaces import CTRL, PLAIN, SHIFT, desk

from app.canvas.hands.grips import grip_moved, grips
from app.canvas.hands.key_table import PLAN_KEYS
from wiring.edits.benchwork import add_track, set_board
from wiring.edits.bends import add_bend
from wiring.edits.groups import join
from wiring.edits.joists import add_joist
from wiring.edits.panels import add_panel
from wiring.edits.scenes import add_scene
from wiring.edits.wireways import add_wireway

__all__ = ["desk"]
K = Qt.Key


def furnish(desk):
    for edit in (
        add_bend(RED, 0, 300, 150),
        add_wireway([(50, 400), (300, 400), (300, 500)], "Beam"),
        add_joist((50, 450), (600, 450)),
        add_track([(0, 20), (200, 30), (500, 20)]),
        set_board([(0, 0), (700, 0), (700, 600), (0, 600)]),
        add_scene("Fish quay", 200, 20, 200, 160),
        add_panel("Desk", 650, 220, 100, 160),
    ):
        desk.session.do(edit)


def chosen(desk):
    return desk.selection.ids | desk.selection.grounds


def test_n_goes_from_sort_to_sort_and_tab_through_each(desk):
    furnish(desk)
    plan = desk.plan
    first = next(iter(plan.parts))
    own = next(w.id for w in plan.wires.values() if first in (w.start.part, w.end.part))
    sorts = [
        *(first, own, next(iter(plan.wireways)), "j0", "t0", "board"),
        *(next(iter(plan.scenes)), next(iter(plan.panels))),
    ]
    for one in (*sorts, sorts[0]):
        desk.key(K.Key_N)
        assert chosen(desk) == {one}
    desk.key(K.Key_N, SHIFT)
    assert chosen(desk) == {sorts[-1]}
    desk.selection.select([LAMP])
    desk.key(K.Key_N)  # from a part to a wire of its own
    (wire,) = desk.selection.ids
    assert LAMP in (plan.wires[wire].start.part, plan.wires[wire].end.part)
    assert "wires" in desk.hints[-1]
    wires = list(plan.wires)
    desk.selection.select([wires[0]])
    desk.key(K.Key_Tab)
    assert desk.selection.ids == {wires[1]}


def test_a_takes_the_next_one_too_and_x_leaves_one_out(desk):
    desk.key(K.Key_Tab)
    desk.key(K.Key_A)
    desk.key(K.Key_A)
    assert desk.selection.ids == {BATTERY, SWITCH, LAMP}
    desk.key(K.Key_X)
    desk.key(K.Key_A)
    assert desk.selection.ids == {BATTERY, SWITCH, BUTTON}
    desk.key(K.Key_Delete)
    assert len(desk.plan.parts) == 1


HOLDS = [("RED", 3), ("y", 3), ("j0", 2), ("t0", 3), ("board", 4), ("s", 4), ("n", 4)]


@pytest.mark.parametrize(("what", "count"), HOLDS)
def test_g_takes_hold_of_each_corner_and_arrows_move_that_alone(desk, what, count):
    furnish(desk)
    plan = desk.plan
    tables = {"y": plan.wireways, "s": plan.scenes, "n": plan.panels}
    one = RED if what == "RED" else next(iter(tables.get(what, {})), what)
    desk.selection.select([one] if one in plan.wires else (), one if one not in plan.wires else ())
    before = grips(plan, one)
    assert len(before) == count
    for number in range(count):
        desk.session.open(plan, None)
        desk.selection.select([one] if one in plan.wires else (), one if one not in plan.wires else ())
        for _ in range(number + 1):
            desk.key(K.Key_G)
        assert desk.view._roaming.held == before[number]
        desk.key(K.Key_Right)
        desk.key(K.Key_Down, SHIFT)
        after = grips(desk.plan, one)
        assert after[number] == pytest.approx((before[number][0] + 10, before[number][1] + 1))
        assert desk.session.undo_label is not None
    desk.key(K.Key_Escape)
    assert desk.view._roaming.held is None and chosen(desk) == {one}
    desk.key(K.Key_Escape)
    assert not chosen(desk)


def test_enter_lets_go_of_a_corner_before_it_opens_anything(desk):
    opened = []
    desk.view.opened.connect(opened.append)
    desk.selection.select([RED])
    desk.key(K.Key_G)
    desk.key(K.Key_Right)
    desk.key(K.Key_Return)
    assert desk.view._roaming.held is None and chosen(desk) == {RED} and not opened
    desk.key(K.Key_Return)
    assert opened == [RED]


def test_an_area_is_never_pushed_inside_out(desk):
    furnish(desk)
    scene = next(iter(desk.plan.scenes))
    plan = grip_moved(desk.plan, scene, 0, (900.0, 900.0), desk.session.kinds).apply(desk.plan)
    area = plan.scenes[scene]
    assert (area.width_mm, area.height_mm) == (20, 20)
    assert (area.x_mm + 20, area.y_mm + 20) == (400, 180)


def test_what_has_no_corners_says_so(desk):
    desk.selection.select([LAMP])
    desk.key(K.Key_G)
    assert "no corners" in desk.hints[-1]


@pytest.mark.parametrize("what", ["wireway", "track", "board"])
def test_lines_are_drawn_by_arrows_and_space(desk, what):
    desk.view.begin_draw(what)
    desk.key(K.Key_Space)
    for key in (K.Key_Right, K.Key_Down, K.Key_Left):
        for _ in range(6):
            desk.key(key)
        desk.key(K.Key_Space)
    desk.key(K.Key_Return)
    plan = desk.plan
    line = plan.board or (plan.tracks or [w.points for w in plan.wireways.values()])[0]
    x, y = line[0]
    assert line == ((x, y), (x + 60, y), (x + 60, y + 60), (x, y + 60))
    assert desk.view.tool == "select"


@pytest.mark.parametrize("what", ["scene", "panel"])
def test_areas_are_drawn_by_arrows_and_enter(desk, what):
    desk.view.begin_draw(what)
    desk.key(K.Key_Return)
    for _ in range(10):
        desk.key(K.Key_Right)
        desk.key(K.Key_Down)
    desk.key(K.Key_Return)
    (area,) = (desk.plan.scenes or desk.plan.panels).values()
    assert (area.width_mm, area.height_mm) == (100, 100)


def test_a_joist_is_laid_and_a_distance_measured_by_keys(desk):
    desk.view.begin_draw("joist")
    desk.key(K.Key_Return)
    for _ in range(9):
        desk.key(K.Key_Right)
    desk.key(K.Key_Return)
    (joist,) = desk.plan.joists
    assert joist.end[0] - joist.start[0] == 90
    desk.key(K.Key_Escape)
    desk.view.begin_measure()
    desk.key(K.Key_Return)
    for _ in range(5):
        desk.key(K.Key_Down)
    assert "50 mm" in desk.hints[-1] or "5 cm" in desk.hints[-1]


def test_what_is_steered_by_keys_stays_in_sight(desk):
    desk.view.begin_place("led-red")
    for _ in range(80):
        desk.key(K.Key_Right)
    x, y = desk.view._pointing.at_px
    assert 0 < x < desk.view.width() and 0 < y < desk.view.height()
    ghost = desk.view._acting.preview.ghost
    assert desk.view.sight().visible.left < ghost.x_mm < desk.view.sight().visible.right
    assert "arrows" in desk.hints[-1]


def test_a_row_is_begun_by_keys(desk):
    desk.view.begin_place("led-red")
    desk.key(K.Key_Return, SHIFT)
    for _ in range(20):
        desk.key(K.Key_Right)
    for letter in ("4",):
        desk.key(letter)
    desk.key(K.Key_Return)
    assert sum(p.kind == "led-red" for p in desk.plan.parts.values()) == 4


@pytest.mark.parametrize("sort", range(8))
def test_shift_f10_shows_what_can_be_done_with_each_sort(desk, sort):
    furnish(desk)
    for _ in range(sort + 1):
        desk.key(K.Key_N)
    before, was = desk.plan, chosen(desk)
    desk.key(K.Key_F10, SHIFT)
    menu = QApplication.activePopupWidget()
    assert menu is not None and menu.actions() and menu.activeAction() is not None
    assert "Select all" not in menu.actions()[1].text()
    desk_menu_escape(menu)
    assert desk.plan is before and chosen(desk) == was


def desk_menu_escape(menu):
    from PySide6.QtTest import QTest

    QTest.keyClick(menu, K.Key_Escape)
    assert QApplication.activePopupWidget() is None


def test_enter_opens_the_circuit_of_what_is_selected(desk):
    opened = []
    desk.view.opened.connect(opened.append)
    desk.selection.select([LAMP])
    desk.key(K.Key_Return)
    assert opened == [LAMP]


def test_every_named_key_does_something_that_shows(desk):
    """No key of the table is dead: each changes plan, selection, camera, hold or positions."""
    quiet = {"leave", "menu", "copy", "paste", "take previous", "previous grip", "open"}
    for row in (r for r in PLAN_KEYS if r.when in ("always", "chosen") and r.name not in quiet):
        for key in row.keys:
            furnish_for(desk, row.name)
            before = state(desk)
            press(desk, key)
            assert state(desk) != before, (row.name, key)


def furnish_for(desk, name):
    desk.session.open(desk.plan, None)
    desk.look(0.37, 250, 260)
    desk.view._roaming.let_go()
    if "grip" in name:
        desk.session.do(add_joist((50, 450), (600, 450)))
        desk.selection.select((), "j0")
    else:
        desk.selection.select([SWITCH] if SWITCH in desk.plan.parts else [next(iter(desk.plan.parts))])
    if name == "whole":
        desk.session.do(join([SWITCH, LAMP]))
    if name == "leave out":
        desk.key(K.Key_A)


def state(desk):
    view = desk.view
    return (desk.plan, chosen(desk), view.sight().camera, view._roaming.held, dict(desk.session.positions))


def press(desk, key):
    from app.canvas.hands.keys import combination

    code, modifiers = combination(key)
    code = K.Key_Backtab if key == "Shift+Tab" else code
    desk.key(code, modifiers or PLAIN)
    assert CTRL != SHIFT


def test_what_was_told_of_the_keys_leaves_when_the_hand_selects_something_else(desk):
    desk.key(K.Key_N)
    assert "Tab goes through" in desk.hints[-1]
    desk.key(K.Key_Tab)
    assert "Tab goes through" in desk.hints[-1]  # it goes on holding
    desk.click(100, 300)
    assert desk.hints[-1] == ""
