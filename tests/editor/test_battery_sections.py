"""Other packs, the log and what counts, on the battery page."""

from datetime import date

import pytest
from PySide6.QtCore import QDate, Qt
from PySide6.QtTest import QTest
from support.editors import open_demo, part_id, type_into

from app.outlook.battery_page import COUNTS, COURSE, LOG, PACKS
from app.outlook.other_packs import COST, PRICE, title_words
from wiring.edits.log_battery import log_battery
from wiring.plan.battery_log import MEASURED, SWAPPED


@pytest.fixture
def page(editor):
    open_demo(editor)
    editor.window.show_view("battery")
    yield editor.window.battery_page
    editor.window.battery_page.switch.choose(COURSE)


def battery(editor):
    return editor.session.plan.parts[part_id(editor, "G1")]


def outlook(editor):
    return editor.solving.answer.situation.outlooks[part_id(editor, "G1")]


def test_nothing_is_compared_before_it_is_looked_at(page, monkeypatch):
    asked = []
    monkeypatch.setattr(page.packs.making, "ask", asked.append)
    page.show_answer(page._answer)
    assert asked == []
    page.packs._asked = None
    page.switch.choose(PACKS)
    assert len(asked) == 1
    page.packs._asked = None
    monkeypatch.undo()
    page.switch.choose(COURSE)
    page.switch.choose(PACKS)
    assert page.packs.table.rowCount() == len(page.packs.candidates) > 5


def test_one_click_puts_another_pack_into_the_plan_and_undo_takes_it_back(editor, page):
    page.switch.choose(PACKS)
    row, wanted = next(
        (n, c)
        for n, c in enumerate(page.packs.candidates)
        if c.outlook is not None and not c.there and c.lights
    )
    before, lasted = battery(editor), outlook(editor).days.typical
    page.packs.buttons[row].click()
    kind = editor.session.kinds[battery(editor).kind]
    assert kind.values(battery(editor).settings)["cell"] == wanted.cell
    assert outlook(editor).days.typical == pytest.approx(wanted.outlook.days.typical, rel=0.05)
    assert outlook(editor).days.typical != pytest.approx(lasted, rel=0.05)
    there = next(c for c in page.packs.candidates if c.there)
    assert there.cell == wanted.cell
    assert kind.values(battery(editor).settings)["fitted"] == date.today().isoformat()
    assert outlook(editor).counted_from == date.today()
    assert "counted as fitted today" in editor.window.notices.last.text
    editor.session.undo()
    assert battery(editor) == before


def test_the_mains_can_take_the_batterys_place(editor, page):
    page.switch.choose(PACKS)
    row = next(n for n, c in enumerate(page.packs.candidates) if c.outlook is None)
    assert title_words(page.packs.candidates[row]).startswith("Mains adapter")
    page.packs.buttons[row].click()
    assert battery(editor).kind == "supply-regulated"
    assert "No battery" in page.summary.words.text()
    editor.session.undo()
    assert page.battery == part_id(editor, "G1")


def test_a_price_is_typed_in_the_table_and_kept_in_the_plan(editor, page):
    page.switch.choose(PACKS)
    row, there = next((n, c) for n, c in enumerate(page.packs.candidates) if c.there)
    page.packs.table.item(row, PRICE).setText("0,80")
    assert editor.session.plan.prices == {there.cell: 0.8}
    again = next(n for n, c in enumerate(page.packs.candidates) if c.there)
    assert page.packs.table.item(again, PRICE).text() == "0.80"
    assert float(page.packs.table.item(again, COST).text()) > 0
    page.packs.table.item(again, PRICE).setText("cheap")
    assert editor.session.plan.prices == {there.cell: 0.8}
    assert "no price" in page.packs.words.text()
    assert page.packs.table.item(again, PRICE).text() == "0.80"
    page.packs.table.item(again, PRICE).setText("")
    assert editor.session.plan.prices == {}


def test_a_reading_goes_into_the_log_and_the_forecast_starts_from_it(editor, page):
    page.switch.choose(LOG)
    log = page.log
    log.day.setDate(QDate(2026, 11, 20))
    type_into(log.volts.line, "9.6 V", enter=False)
    type_into(log.note.line, "club evening", enter=False)
    log._add.click()
    (entry,) = editor.session.plan.battery_log
    assert (entry.event, entry.day, entry.volts_v) == (MEASURED, "2026-11-20", 9.6)
    assert entry.under_load and entry.note == "club evening"
    assert log.table.item(0, 0).text() == "2026-11-20"
    assert outlook(editor).measured and outlook(editor).counted_from == date(2026, 11, 20)
    assert "measured" in page.summary.notes.text()
    assert log.volts.line.text() == "" and log.note.line.text() == ""
    editor.session.undo()
    assert not outlook(editor).measured and log.table.rowCount() == 0


def test_enter_in_the_volts_adds_the_entry_once(editor, page):
    page.switch.choose(LOG)
    type_into(page.log.volts.line, "10")
    assert [e.volts_v for e in editor.session.plan.battery_log] == [10.0]


def test_a_reading_without_volts_is_refused_in_one_sentence(editor, page):
    page.switch.choose(LOG)
    page.log._add.click()
    assert editor.session.plan.battery_log == ()
    assert "volts" in page.log._fault.text() and page.log._fault.isVisible()
    type_into(page.log.volts.line, "a lot", enter=False)
    page.log._add.click()
    assert editor.session.plan.battery_log == ()
    assert page.log._fault.text().endswith(".")


def test_a_swap_needs_no_volts_and_can_be_struck_out(editor, page):
    page.switch.choose(LOG)
    log = page.log
    log.what.setCurrentIndex(log.what.findData(SWAPPED))
    log.what.activated.emit(log.what.currentIndex())
    assert not log.volts.isEnabled()
    log._add.click()
    (entry,) = editor.session.plan.battery_log
    assert (entry.event, entry.volts_v) == (SWAPPED, 0.0)
    log.table.cellWidget(0, 4).click()
    assert editor.session.plan.battery_log == ()
    log.what.setCurrentIndex(0)
    log.what.activated.emit(0)


def test_no_day_of_the_future_can_be_logged(page):
    page.switch.choose(LOG)
    page.log.day.setDate(QDate.currentDate().addDays(400))
    assert page.log.day.date() <= QDate.currentDate()


def test_what_counts_most_comes_first(editor, page):
    page.switch.choose(COUNTS)
    table = page.counts.table
    assert table.item(0, 0).text() == "As it is"
    assert table.item(0, 1).text() == f"{outlook(editor).sessions.typical:.0f}"
    changes = [table.item(row, 3).text() for row in range(1, table.rowCount())]
    sizes = [0 if c == "no change" else int(c.strip("+−%")) for c in changes]
    assert sizes == sorted(sizes, reverse=True) and sizes[0] > 10


def test_the_keys_do_not_go_to_the_title_while_a_section_is_worked_out(page, monkeypatch):
    monkeypatch.setattr(page.packs.making, "ask", lambda _work: None)  # as if it took long
    page.packs._asked = None
    page.curve.setFocus()
    QTest.mouseClick(page.switch.buttons["Other packs"], Qt.MouseButton.LeftButton)
    assert not page.packs.table.isVisible()
    assert page.switch.buttons["Other packs"].hasFocus()


def test_every_pack_says_why_it_stands_where_it_stands(page):
    page.switch.choose(PACKS)
    table = page.packs.table
    said = {table.item(row, table.columnCount() - 2).text() for row in range(table.rowCount())}
    assert table.rowCount() > 8 and "" not in said


def test_sections_are_reached_by_keys_alone(editor, page):
    button = page.switch.buttons["Log"]
    button.setFocus()
    QTest.keyClick(button, Qt.Key.Key_Space)
    assert page.log.isVisible() and not page.curve.isVisible()


def test_entries_of_another_battery_are_not_shown(editor, page):
    other = part_id(editor, "E1")
    page.switch.choose(LOG)
    editor.session.do(log_battery(other, SWAPPED, date(2026, 1, 2)))
    assert page.log.table.rowCount() == 0
