"""From any list or drawing to the plan or the circuit, and back to where one was."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from support.editors import open_demo, part_id, wire_id

from app.canvas.camera import Camera
from app.printing.named_words import named_at
from wiring.pictures.picture import Words

Key = Qt.Key
BACK, ONWARD = "Alt+Left", "Alt+Right"


@pytest.fixture
def quay(editor):
    open_demo(editor)
    window = editor.window
    window.show_view("plan")
    window.trail._before.clear()
    window.plan_view.look_from(Camera(2.5, 40.0, 30.0))
    return editor


def where(editor):
    window = editor.window
    return window.view, window.selection.ids, window.plan_view.sight().camera


def goes_back(editor, there):
    QTest.keySequence(editor.window, BACK)
    return where(editor) == there


@pytest.mark.parametrize("view", ["plan", "circuit", "battery", "sheets"])
def test_a_finding_leads_to_what_it_names_and_back_from_every_view(quay, view):
    window = quay.window
    window.show_view(view)
    there = where(quay)
    window.strip.unfold()
    index = window.strip.model.index(0, 0)
    window.strip.list.setCurrentIndex(index)
    QTest.keyClick(window.strip.list, Key.Key_Return)
    assert window.selection.ids
    assert window.view == (view if view in ("plan", "circuit") else "plan")
    assert goes_back(quay, there)


def test_enter_and_two_clicks_on_a_part_open_its_circuit_and_back(quay):
    window = quay.window
    lamp = part_id(quay, "E4")
    window.selection.select([lamp])
    there = where(quay)
    window.plan_view.setFocus()
    QTest.keyClick(window.plan_view, Key.Key_Return)
    assert window.view == "circuit" and window.selection.ids == {lamp}
    assert any(p.id == lamp for p in window.circuit_page.picture._places)
    assert goes_back(quay, there)
    window.plan_view.show_all()
    at = window.plan_view.px(*(getattr(quay.session.plan.parts[lamp], n) for n in ("x_mm", "y_mm")))
    QTest.mouseDClick(window.plan_view, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier, at)
    assert window.view == "circuit"


def test_the_circuit_leads_to_the_plan_back_and_on_again(quay):
    window = quay.window
    lamp = part_id(quay, "E4")
    window.selection.select([lamp])
    QTest.keySequence(window, "C")
    there = where(quay)
    QTest.keyClick(window.circuit_page.picture, Key.Key_Return)
    assert window.view == "plan" and window.selection.ids == {lamp}
    assert goes_back(quay, there)
    QTest.keySequence(window, ONWARD)
    assert window.view == "plan"
    assert not window.acts["onward"].isEnabled()


def test_a_find_and_another_view_are_gone_back_from_too(quay):
    window = quay.window
    there = where(quay)
    QTest.keySequence(window, "Ctrl+G")
    QTest.keyClicks(window.plan_view.search.line, "E7")
    QTest.keyClick(window.plan_view.search.line, Key.Key_Escape)
    assert window.selection.ids == {part_id(quay, "E7")}
    assert goes_back(quay, there)
    QTest.keySequence(window, "Ctrl+4")
    assert window.view == "sheets" and goes_back(quay, there)


def test_a_name_on_a_sheet_leads_to_the_plan_and_back(quay):
    window = quay.window
    window.show_view("sheets")
    plan, sheets = quay.session.plan, window.sheets_page
    wanted = {part_id(quay, "E4"), wire_id(quay, "W3")}
    found = set()
    for row, page in enumerate(sheets.pages):
        for words in (w for w in page.picture.items if isinstance(w, Words) and w.turn_deg == 0):
            x_mm, y_mm = words.at[0] + 0.5, words.at[1]
            for one in wanted & set(named_at(page.picture, x_mm, y_mm, plan)):
                found.add(one)
                sheets.list.setCurrentIndex(sheets.list.model().index(row, 0))
                sheets.picture.show_all()
                at = sheets.picture.pixels(x_mm, y_mm).toPoint()
                QTest.mouseDClick(sheets.picture, Qt.MouseButton.LeftButton, pos=at)
                assert window.view == "plan" and window.selection.ids == {one}
                QTest.keySequence(window, BACK)
                assert window.view == "sheets"
                wanted = wanted - {one}
    assert len(found) == 2 and not wanted


def test_what_is_gone_is_not_selected_on_the_way_back_and_another_plan_forgets_the_way(quay):
    window = quay.window
    lamp = part_id(quay, "E4")
    window.selection.select([lamp])
    QTest.keySequence(window, "C")
    window.show_view("plan")
    window.plan_view.do("remove")
    window.trail.back()
    window.trail.back()
    assert lamp not in window.selection.ids
    open_demo(quay)
    assert not window.acts["back"].isEnabled()


def test_the_list_of_findings_is_reached_and_left_by_keys(quay, qtbot):
    window = quay.window
    window.plan_view.setFocus()
    QTest.keySequence(window, "Ctrl+I")
    qtbot.waitUntil(window.strip.list.isVisible)  # the button is seen to be pressed first
    assert window.focusWidget() is window.strip.list
    assert window.strip.list.currentIndex().row() == 0
    QTest.keyClick(window.strip.list, Key.Key_Escape)
    assert not window.strip.list.isVisible() and window.focusWidget() is window.plan_view
    for shown in (True, False):  # the key that opens the list closes it too
        QTest.keyClick(window.focusWidget(), Key.Key_I, Qt.KeyboardModifier.ControlModifier)
        qtbot.waitUntil(lambda shown=shown: window.strip.list.isVisible() == shown)
    assert window.focusWidget() is window.plan_view


def test_what_is_alike_is_selected_together_from_the_menu(quay):
    window = quay.window
    menu = window.submenus["all_of"]
    menu.aboutToShow.emit()
    words = [a.text() for a in menu.actions()]
    assert "Quay" in words and any("feeds" in w for w in words) and any(w.endswith("wires") for w in words)
    next(a for a in menu.actions() if a.text() == "Quay").trigger()
    plan = quay.session.plan
    scene = next(iter(plan.scenes))
    assert {i for i in window.selection.ids if i in plan.parts} == {
        p.id for p in plan.parts.values() if p.scene == scene
    }
