"""Pointing at a circuit drawing and walking through it: with the mouse, with the arrows, with Tab."""

import pytest
from PySide6.QtCore import QEvent, QPoint, Qt
from PySide6.QtGui import QHelpEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QToolTip
from support.editors import open_demo

from app.drawing.told import told
from app.drawing.walk import meant, onward
from wiring.drawings.circuit_places import Place


@pytest.fixture
def page(editor):
    open_demo(editor)
    editor.window.show_view("circuit")
    return editor.window.circuit_page


def part_id(editor, designation):
    return next(p.id for p in editor.session.plan.parts.values() if p.designation == designation)


def drawing(page):
    return page._drawings[page.choice.currentIndex()]


def spot(page, one):
    place = next(p for p in drawing(page).places if p.id == one)
    return page.picture.pixels(*place.middle).toPoint()


def test_a_click_anywhere_on_a_symbol_selects_its_part(editor, page):
    lamp = part_id(editor, "E1")
    box = next(p.box for p in drawing(page).places if p.id == lamp)
    symbol = page.picture.pixels(box[0] + 1.0, (box[1] + box[3]) / 2).toPoint()  # left of all words
    QTest.mouseClick(page.picture, Qt.MouseButton.LeftButton, pos=symbol)
    assert editor.selection.ids == {lamp}
    assert page.picture._marked == tuple(p.box for p in drawing(page).places if p.id == lamp)


def test_a_click_on_a_wire_selects_the_wire(editor, page):
    wire = next(w for w in editor.session.plan.wires.values() if w.label == "W2")
    QTest.mouseClick(page.picture, Qt.MouseButton.LeftButton, pos=spot(page, wire.id))
    assert editor.selection.ids == {wire.id}


def test_every_part_and_wire_of_a_demo_can_be_clicked(editor, page):
    plan = editor.session.plan
    placed = {p.id for d in page._drawings for p in d.places}
    assert placed == {*plan.parts, *plan.wires}


def test_a_click_on_nothing_selects_nothing(editor, page):
    editor.selection.select((part_id(editor, "E1"),))
    QTest.mouseClick(page.picture, Qt.MouseButton.LeftButton, pos=QPoint(3, page.picture.height() - 3))
    assert editor.selection.ids == frozenset()


def test_a_double_click_leads_to_the_plan_and_the_circuit_view_back(editor, page):
    lamp = part_id(editor, "E4")
    QTest.mouseDClick(page.picture, Qt.MouseButton.LeftButton, pos=spot(page, lamp))
    window = editor.window
    assert (window.view, editor.selection.ids) == ("plan", {lamp})
    window.show_view("circuit")
    assert page.picture._marked
    assert page.picture._places[page.picture._here].id == lamp


def test_the_drawing_that_shows_what_was_selected_comes_up_by_itself(editor):
    open_demo(editor, "siding")
    window = editor.window
    window.show_view("circuit")
    page = window.circuit_page
    page.choice.setCurrentIndex(0)
    only_there = set(page._drawings[1].parts) - {p.id for p in page._drawings[0].places}
    window.show_view("plan")
    editor.selection.select((min(only_there),))
    window.show_view("circuit")
    assert page.choice.currentIndex() == 1
    assert page.picture._marked


@pytest.mark.parametrize("keys, way", [(Qt.Key.Key_Right, (1, 0)), (Qt.Key.Key_Down, (0, 1))])
def test_arrows_walk_to_what_lies_there(editor, page, keys, way):
    start = part_id(editor, "E9")
    QTest.mouseClick(page.picture, Qt.MouseButton.LeftButton, pos=spot(page, start))
    before = page.picture._places[page.picture._here].middle
    QTest.keyClick(page.picture, keys)
    after = page.picture._places[page.picture._here].middle
    assert (after[0] - before[0]) * way[0] + (after[1] - before[1]) * way[1] > 0
    assert editor.selection.ids == {page.picture._places[page.picture._here].id} != {start}


def test_control_and_arrows_shift_the_picture(page):
    before = page.picture.pixels(0.0, 0.0)
    QTest.keyClick(page.picture, Qt.Key.Key_Left, Qt.KeyboardModifier.ControlModifier)
    assert page.picture.pixels(0.0, 0.0).x() == before.x() + 60


def test_tab_walks_all_parts_and_wires_once_and_then_leaves(editor, page):
    page.picture.setFocus()
    seen = []
    for _ in range(200):
        QTest.keyClick(page.picture, Qt.Key.Key_Tab)
        if not page.picture.hasFocus():
            break
        seen.extend(editor.selection.ids)
    assert not page.picture.hasFocus()
    assert len(seen) == len(set(seen))
    assert set(seen) == {p.id for p in drawing(page).places}


def test_enter_leads_to_the_plan_and_escape_lets_go(editor, page):
    page.picture.setFocus()
    QTest.keyClick(page.picture, Qt.Key.Key_Right)
    assert editor.selection.ids
    QTest.keyClick(page.picture, Qt.Key.Key_Escape)
    assert editor.selection.ids == frozenset()
    QTest.keyClick(page.picture, Qt.Key.Key_Right)
    QTest.keyClick(page.picture, Qt.Key.Key_Return)
    assert editor.window.view == "plan"


def test_the_pointer_brings_up_a_ring_and_the_reading(editor, page):
    lamp = part_id(editor, "E4")
    QTest.mouseMove(page.picture, QPoint(2, 2))
    QTest.mouseMove(page.picture, spot(page, lamp))
    QApplication.processEvents()
    figure = page._shown.situation.figures.parts[lamp]
    assert page._reading.text().startswith("-E4 ")
    assert f"{figure.current_a * 1000:.3g} mA" in page._reading.text()
    before = page.picture.grab().toImage()
    page.picture._point_at(None)
    assert page.picture.grab().toImage() != before


def test_a_tooltip_tells_the_reading(editor, page):
    at = spot(page, part_id(editor, "E4"))
    event = QHelpEvent(QEvent.Type.ToolTip, at, page.picture.mapToGlobal(at))
    QApplication.sendEvent(page.picture, event)
    assert QToolTip.text() == told(page._shown.situation, part_id(editor, "E4"))
    QToolTip.hideText()


def test_of_two_boxes_the_smaller_is_meant_and_nothing_far_away():
    outer, inner = Place("big", (0.0, 0.0, 20.0, 20.0)), Place("small", (4.0, 4.0, 8.0, 8.0))
    assert meant((outer, inner), 5.0, 5.0) == 1
    assert meant((outer, inner), 15.0, 15.0) == 0
    assert meant((outer, inner), 23.0, 10.0) == 0
    assert meant((outer, inner), 25.0, 10.0) is None


def test_a_walk_stops_at_the_edge():
    row = [Place(str(n), (n * 10.0, 0.0, n * 10.0 + 4.0, 4.0)) for n in range(3)]
    assert onward(row, 0, (1, 0)) == 1
    assert onward(row, 2, (1, 0)) is None
    assert onward(row, 1, (0, 1)) is None
