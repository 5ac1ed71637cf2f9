"""The panel bench driven by mouse and keys: opening it, turning it over, placing, drawing, writing."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from support.benches import BUTTON, LAMP, PANEL, SWITCH, BenchDesk
from support.surfaces import CTRL, LEFT, PLAIN, SHIFT

from app.bench.bench import FaceItem
from app.bench.face_moving import DRAG
from wiring.edits.face_items import add_line, add_text

Key = Qt.Key


@pytest.fixture
def closed(qtbot):
    return BenchDesk(qtbot, opened=False)


@pytest.fixture
def bench(qtbot):
    return BenchDesk(qtbot)


def test_a_double_click_on_the_bare_face_lays_it_on_the_bench_and_escape_puts_it_back(closed):
    QTest.mouseDClick(closed.view, LEFT, PLAIN, closed.px(270, 380))
    assert closed.bench.panel == PANEL
    assert closed.face.isVisible() and closed.face.hasFocus()
    closed.face_key(Key.Key_Escape)
    assert closed.bench.panel == ""
    assert not closed.face.isVisible() and closed.view.hasFocus()


def test_a_double_click_on_a_part_of_the_panel_does_not_open_it(closed):
    QTest.mouseDClick(closed.view, LEFT, PLAIN, closed.px(240, 330))
    assert closed.bench.panel == ""


def test_enter_opens_the_panel_of_the_selected_part(closed):
    closed.selection.select((SWITCH,))
    closed.key(Key.Key_Return)
    assert closed.bench.panel == PANEL
    assert closed.selection.ids == {SWITCH}


def test_the_back_is_mirrored_and_says_so(bench):
    front = bench.on_face(40, 50)
    bench.face_key(Key.Key_B)
    assert bench.bench.behind
    back = bench.on_face(40, 50)
    assert front.x() - 50 == 850 - back.x()  # the face is 800 pixels wide from pixel 50 on
    assert front.y() == back.y()
    bench.face_click(40, 50)
    assert bench.selection.ids == {SWITCH}


def test_the_two_sides_look_different_and_only_the_back_shows_wires(bench):
    from app.bench.face_items import back_items, front_items
    from wiring.pictures.picture import Path

    sight = bench.face.sight()
    blue = "#2360b0"

    def wires(items):
        return sum(isinstance(i, Path) and i.pen.colour == blue for i in items)

    assert wires(front_items(sight)) == 0
    assert wires(back_items(sight)) >= 1


def test_the_side_buttons_turn_the_panel_over(bench):
    from PySide6.QtWidgets import QToolButton

    behind = bench.view.bench.bar.findChild(QToolButton, "bench_True")
    QTest.mouseClick(behind, LEFT)
    assert bench.bench.behind and behind.isChecked()
    QTest.mouseClick(bench.view.bench.bar.findChild(QToolButton, "bench_False"), LEFT)
    assert not bench.bench.behind and not behind.isChecked()


def test_a_part_is_dragged_onto_the_spacing_of_its_panel(bench):
    bench.face_drag((40, 50), (63, 71))
    assert bench.where(SWITCH) == (60, 70)
    bench.session.undo()
    assert bench.where(SWITCH) == (40, 50)


def test_from_behind_a_part_follows_the_hand_although_all_is_mirrored(bench):
    bench.face_key(Key.Key_B)
    bench.face_drag((40, 50), (63, 71))
    assert bench.where(SWITCH) == (60, 70)


def test_with_ctrl_a_part_leaves_the_spacing(bench):
    bench.face_drag((40, 50), (43, 50), CTRL)
    assert bench.where(SWITCH) == (43, 50)


def test_a_body_that_would_touch_another_is_marked_while_it_is_dragged(bench):
    bench.face_move(40, 50)
    bench.face_press(40, 50)
    bench.face_move(60, 50)
    bench.face_move(81, 50)
    assert bench.face.acting.preview.hint == "-S1 needs 2 mm between its body and that of -S2."
    assert bench.hints[-1] == bench.face.acting.preview.hint
    bench.face_move(60, 50)
    assert bench.face.acting.preview.hint == DRAG
    bench.face_key(Key.Key_Escape)
    bench.face_release(60, 50)
    assert bench.where(SWITCH) == (40, 50)


def test_a_part_chosen_from_the_tray_is_placed_on_the_face(bench):
    bench.view.begin_place("indicator-green")
    bench.face_move(151, 62)
    bench.face_click(151, 62)
    new = next(reversed(bench.plan.parts.values()))
    assert (new.kind, new.panel) == ("indicator-green", PANEL)
    assert bench.where(new.id) == (150, 60)
    bench.face_key(Key.Key_Escape)
    assert bench.face.acting.tool == "select" and bench.bench.panel == PANEL


def test_a_row_is_dragged_with_shift_and_its_count_is_typed(bench):
    bench.view.begin_place("indicator-green")
    before = bench.plan
    bench.face_drag((20, 90), (260, 91), SHIFT)
    assert "parts" in bench.hints[-1]
    bench.face_key(Key.Key_7)
    bench.face_key(Key.Key_Return)
    new = [i for i in bench.plan.parts if i not in before.parts]
    assert [bench.where(i) for i in new] == [(20 + 30 * n, 90) for n in range(7)]  # up to the edge
    assert bench.selection.ids == set(new)
    bench.session.undo()
    assert bench.plan is before


def test_a_track_line_is_drawn_on_the_spacing_and_ends_with_a_double_click(bench):
    bench.face_key(Key.Key_D)
    bench.face_click(11, 22)
    bench.face_click(101, 19)
    bench.face_click(131, 42)
    bench.face_double(131, 42)
    assert bench.panel.lines[0].points == ((10, 20), (100, 20), (130, 40))
    assert bench.bench.items == {FaceItem("line", 0)}
    bench.session.undo()
    assert bench.panel.lines == () and bench.bench.items == frozenset()


def test_a_track_line_can_be_drawn_by_keys_alone(bench):
    bench.face.at_px = (50.0, 80.0)
    bench.face_key(Key.Key_D)
    bench.face_key(Key.Key_Down)
    bench.face_key(Key.Key_Return)
    for _ in range(3):
        bench.face_key(Key.Key_Right)
    bench.face_key(Key.Key_Return)
    bench.face_key(Key.Key_Return)
    assert bench.panel.lines[0].points == ((0, 10), (30, 10))


def test_a_legend_is_typed_where_it_stands_and_typed_anew_by_a_double_click(bench):
    bench.face_key(Key.Key_L)
    bench.face_click(62, 78)
    bench.face_type("QUAY ROAD")
    bench.face_key(Key.Key_Escape)
    (text,) = bench.panel.texts
    assert (text.text, text.x_mm, text.y_mm) == ("QUAY ROAD", 60, 80)
    bench.face_double(60, 80)
    assert bench.face.typing.line.text() == "QUAY ROAD"
    bench.face_type("FISH QUAY")
    assert bench.panel.texts[0].text == "FISH QUAY"


def test_an_empty_legend_is_no_legend(bench):
    bench.face_key(Key.Key_L)
    bench.face_click(60, 80)
    QTest.keyClick(bench.face.typing.line, Qt.Key.Key_Escape)
    assert bench.panel.texts == ()


def test_lines_and_legends_are_moved_nudged_and_removed(bench):
    bench.session.do(add_line(PANEL, [(10, 10), (190, 10)]))
    bench.session.do(add_text(PANEL, "DOCK", 100, 90))
    bench.face_drag((120, 10), (120, 21))
    assert bench.panel.lines[0].points == ((10, 20), (190, 20))
    bench.face_click(100, 90)
    bench.face_key(Key.Key_Left)
    bench.face_key(Key.Key_Up, SHIFT)
    assert (bench.panel.texts[0].x_mm, bench.panel.texts[0].y_mm) == (90, 89)
    bench.face_key(Key.Key_Delete)
    assert bench.panel.texts == () and len(bench.panel.lines) == 1


def test_a_corner_of_a_chosen_line_is_dragged(bench):
    bench.session.do(add_line(PANEL, [(10, 10), (100, 10), (150, 40)]))
    bench.face_click(60, 10)
    bench.face_drag((100, 10), (111, 29))
    assert bench.panel.lines[0].points == ((10, 10), (110, 30), (150, 40))


def test_a_band_takes_parts_lines_and_legends_and_moves_them_in_one_step(bench):
    bench.session.do(add_line(PANEL, [(30, 20), (60, 20)]))
    bench.session.do(add_text(PANEL, "A", 40, 75))
    bench.face_drag((15, 8), (75, 95))
    assert bench.selection.ids == {SWITCH}
    assert bench.bench.items == {FaceItem("line", 0), FaceItem("text", 0)}
    bench.face_key(Key.Key_Up)
    assert bench.where(SWITCH) == (40, 40)
    assert bench.panel.lines[0].points[0] == (30, 10) and bench.panel.texts[0].y_mm == 65
    bench.session.undo()
    assert bench.where(SWITCH) == (40, 50) and bench.panel.lines[0].points[0] == (30, 20)


def test_tab_goes_through_parts_lines_and_legends(bench):
    bench.session.do(add_text(PANEL, "A", 40, 75))
    seen = []
    for _ in range(4):
        bench.face_key(Key.Key_Tab)
        seen.append((sorted(bench.selection.ids), len(bench.bench.items)))
    assert seen == [([SWITCH], 0), ([BUTTON], 0), ([LAMP], 0), ([], 1)]


def test_equal_steps_and_the_spacing_by_key(bench):
    bench.face_drag((40, 50), (43, 50), CTRL)
    bench.face_key(Key.Key_G)
    assert bench.where(SWITCH) == (40, 50)
    bench.selection.select((SWITCH, BUTTON, LAMP))
    bench.face_key(Key.Key_X)
    assert [bench.where(i)[0] for i in (SWITCH, BUTTON, LAMP)] == [40, 90, 140]


def test_a_switch_is_thrown_by_a_click_on_its_knob_and_by_t(bench):
    assert bench.session.positions[SWITCH] == "on"
    bench.face_click(40, 50)
    assert bench.session.positions[SWITCH] == "off"
    bench.selection.select((SWITCH,))
    bench.face_key(Key.Key_T)
    assert bench.session.positions[SWITCH] == "on"


def test_the_bench_is_cleared_when_its_panel_goes_and_when_the_plan_is_to_be_drawn_on(bench):
    bench.view.begin_measure()
    assert bench.bench.panel == ""
    bench.view.begin_select()
    bench.view.bench.open(PANEL)
    from wiring.edits.panels import remove_panel

    bench.session.do(remove_panel(PANEL))
    assert bench.bench.panel == "" and not bench.face.isVisible()


def test_everything_on_the_bench_is_painted_in_both_themes(bench):
    from wiring.pictures.theme import DARK, LIGHT

    bench.session.do(add_line(PANEL, [(10, 20), (190, 20)], 5, "WH"))
    shots = set()
    for theme in (LIGHT, DARK):
        bench.view.set_theme(theme)
        for behind in (False, True):
            bench.bench.turn_over(behind)
            image = bench.face.grab().toImage()
            shots.add(bytes(image.constBits()))
    assert len(shots) == 4


def drop(bench, kind, x, y):
    from PySide6.QtCore import QMimeData
    from PySide6.QtGui import QDragEnterEvent, QDragMoveEvent, QDropEvent
    from PySide6.QtWidgets import QApplication

    page, data = bench.view.bench, QMimeData()
    data.setData("application/x-underboard-kind", kind.encode())
    at = bench.face.mapTo(page, bench.on_face(x, y))
    copy, none = Qt.DropAction.CopyAction, Qt.MouseButton.LeftButton
    QApplication.sendEvent(page, QDragEnterEvent(at, copy, data, none, PLAIN))
    QApplication.sendEvent(page, QDragMoveEvent(at, copy, data, none, PLAIN))
    QApplication.sendEvent(page, QDropEvent(at, copy, data, none, PLAIN))


def test_a_part_dragged_from_the_tray_is_set_down_on_the_face(bench):
    drop(bench, "push-to-make", 142, 78)
    new = next(reversed(bench.plan.parts.values()))
    assert (new.kind, bench.where(new.id)) == ("push-to-make", (140, 80))
    assert bench.face.acting.tool == "select"


def test_copies_of_lines_legends_and_parts_stand_beside_them(bench):
    bench.session.do(add_line(PANEL, [(10, 10), (90, 10)]))
    bench.session.do(add_text(PANEL, "A", 40, 75))
    bench.face_click(60, 10)
    bench.face_click(40, 75, SHIFT)
    bench.face_key(Key.Key_D, CTRL)
    assert bench.panel.lines[1].points == ((20, 20), (100, 20)) and bench.panel.texts[1].x_mm == 50
    assert bench.bench.items == {FaceItem("line", 1), FaceItem("text", 1)}
    bench.face_click(140, 30)
    bench.face_key(Key.Key_D, CTRL)
    (copy,) = bench.selection.ids
    assert bench.where(copy) == (150, 30) and bench.plan.parts[copy].panel == PANEL


def test_the_small_menu_belongs_to_the_face(bench):
    from app.bench.face_menu import face_menu

    bench.session.do(add_text(PANEL, "A", 40, 85))
    sight = bench.face.sight()
    from app.bench.face_hit import hit_on_face

    words = [a.text().split("\t")[0] for a in face_menu(bench.face, hit_on_face(sight, (40, 50))).actions()]
    assert "Throw" in words and "Remove" in words and "Put a legend" in words
    menu = face_menu(bench.face, hit_on_face(sight, (100, 10)))
    next(a for a in menu.actions() if a.text().startswith("Turn it over")).trigger()
    assert bench.bench.behind
    words = [a.text().split("\t")[0] for a in face_menu(bench.face, hit_on_face(sight, (40, 85))).actions()]
    assert "Type it anew…" in words and "Throw" not in words


def test_a_tip_says_where_a_part_stands_and_why_it_does_not_fit(bench):
    from app.bench.face_hit import hit_on_face
    from app.bench.face_menu import face_tip
    from wiring.edits.panels import change_panel

    bench.session.do(change_panel(PANEL, room_mm=20))
    tip = face_tip(bench.face, hit_on_face(bench.face.sight(), (40, 50)))
    assert "40 mm from the left edge, 50 mm from the upper one" in tip
    assert "Reaches 30 mm behind the face." in tip and "there are 20 mm" in tip


def test_nothing_pressed_on_the_bench_reaches_the_plan_beneath(bench):
    from PySide6.QtGui import QGuiApplication
    from PySide6.QtWidgets import QPushButton

    QGuiApplication.clipboard().clear()  # another test may have copied something
    bench.selection.select((SWITCH,))
    before = bench.plan
    QTest.keyClick(bench.view.bench.bar.findChild(QPushButton, "leaveBench"), Key.Key_Delete)
    bench.face_key(Key.Key_W)
    bench.face_key(Key.Key_M)
    bench.face_key(Key.Key_V, CTRL)
    assert bench.plan is before and bench.view.tool == "select" and bench.bench.panel == PANEL
    bench.face_key(Key.Key_L)
    bench.face_click(60, 80)
    QTest.keyClick(bench.face.typing.line, Key.Key_Down)
    assert bench.plan is before
