"""The card of the whole plan: months, charging, panels; and a surface that does not move under the hand."""

from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from support.editors import open_demo, part_id, type_into

from app.inspector.use_details import use_words
from app.window.main_window import LEAST_SIZE
from wiring.plan.scene import UsePattern


def card(editor):
    editor.selection.clear()
    return editor.window.inspector.card


def test_a_month_off_is_one_click_and_moves_the_swap(editor):
    plan = open_demo(editor)
    (scene,) = plan.scenes
    details = card(editor).scenes.rows[scene].details
    lasted = editor.solving.answer.situation.outlooks[part_id(editor, "G1")].days.typical
    assert details.line.text() == "All year round"
    details.line.click()
    for month in (11, 12):
        details.months[month].click()
    assert editor.session.plan.scenes[scene].use.months_off == (11, 12)
    assert details.line.text() == "Not in Nov, Dec"
    assert editor.solving.answer.situation.outlooks[part_id(editor, "G1")].days.typical > lasted + 20
    editor.session.undo()
    assert details.months[12].isChecked() and not details.months[11].isChecked()


def test_charging_is_typed_and_emptied(editor):
    plan = open_demo(editor)
    (scene,) = plan.scenes
    details = card(editor).scenes.rows[scene].details
    details.line.setChecked(True)
    type_into(details.charged.line, "4")
    assert editor.session.plan.scenes[scene].use.sessions_per_charge == 4
    assert details.line.text().endswith("charged after 4")
    details.charged.line.selectAll()
    QTest.keyClick(details.charged.line, Qt.Key.Key_Backspace)
    QTest.keyClick(details.charged.line, Qt.Key.Key_Return)
    assert editor.session.plan.scenes[scene].use.sessions_per_charge == 0
    assert details.charged.line.placeholderText() == "when empty"


def test_use_is_said_the_shorter_way():
    assert use_words(UsePattern(months_off=tuple(range(1, 11)))) == "Only in Nov, Dec"
    assert use_words(UsePattern(months_off=tuple(range(1, 13)))) == "In no month"


def test_half_a_session_a_month_can_be_said(editor):
    plan = open_demo(editor)
    (scene,) = plan.scenes
    type_into(card(editor).scenes.rows[scene].sessions.line, "0,5")
    assert editor.session.plan.scenes[scene].use.sessions_per_month == 0.5


def test_panels_are_named_sized_and_taken_away(editor):
    plan = open_demo(editor)
    (panel,) = plan.panels
    row = card(editor).panels.rows[panel]
    type_into(row.sizes["width_mm"].line, "250 mm")
    assert editor.session.plan.panels[panel].width_mm == 250
    type_into(row.name.line, "Quay fascia")
    assert editor.session.plan.panels[panel].name == "Quay fascia"
    type_into(row.sizes["height_mm"].line, "high")
    assert row._fault.text().endswith(".") and editor.session.plan.panels[panel].height_mm > 0


def test_the_surface_stays_where_it_is_when_a_tool_is_taken(editor):
    open_demo(editor)
    window = editor.window
    window.resize(*LEAST_SIZE)
    QApplication.processEvents()

    def place():
        QApplication.processEvents()
        return window.plan_view.mapTo(window, QPoint(0, 0)), window.plan_view.size()

    before = place()
    window.acts["wire"].trigger()
    assert place() == before
    editor.session.throw(part_id(editor, "S1"), "off")
    assert window.plan_page.thrown.isVisible()
    assert place() == before
    assert window.width() == LEAST_SIZE[0]
    editor.session.stand_as_in_use()
    window.acts["select"].trigger()
    window.resize(1280, 800)
