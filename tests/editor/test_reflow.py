"""Where there is little room things go into another line, or end in three points and have a tip."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QPushButton, QWidget
from support.editors import open_demo, settle

from app.findings.strip import FindingsStrip
from app.theme.elided import Elided
from app.theme.wrapping_row import WrappingRow
from app.tray.row_painter import whole_units
from wiring.findings.finding import Rank

WORDS = "Tab: the next terminal. Enter: from here, then to there. Esc: done."


def test_words_end_in_points_and_have_a_tip_only_where_they_do_not_fit(qtbot):
    holder = QWidget()
    label = Elided(holder, WORDS)
    qtbot.addWidget(holder)
    holder.show()
    whole = label.fontMetrics().horizontalAdvance(WORDS)
    label.resize(whole + 2, 30)
    assert (label.shown, label.toolTip()) == (WORDS, "")
    label.resize(whole // 2, 30)
    label.setText(WORDS + "!")
    assert label.shown.endswith("…") and label.toolTip() == WORDS + "!"


def test_two_lines_hold_twice_as_much_and_break_between_words(qtbot):
    holder = QWidget()
    label = Elided(holder, WORDS, lines=2)
    qtbot.addWidget(holder)
    holder.show()
    whole = label.fontMetrics().horizontalAdvance(WORDS)
    label.resize(round(whole * 0.6), 40)
    label.setText(WORDS)
    first, second = label.shown.split("\n")
    assert f"{first} {second}" == WORDS and label.toolTip() == ""
    label.resize(whole // 4, 40)
    assert label.shown.count("\n") == 1 and label.shown.endswith("…") and label.toolTip() == WORDS


def test_a_row_wraps_and_keeps_what_stands_at_the_right_together(qtbot):
    holder = QWidget()
    row = WrappingRow(8, at_right=2, parent=holder)
    buttons = [QPushButton(words, holder) for words in ("By hours lit", "As a table", "Save…")]
    for button in buttons:
        row.addWidget(button)
    qtbot.addWidget(holder)
    wide = row.sizeHint().width()
    holder.resize(wide + 60, 40)
    holder.show()
    settle()
    assert len({b.y() for b in buttons}) == 1 and buttons[2].geometry().right() == holder.rect().right()
    assert row.heightForWidth(wide - 10) > row.heightForWidth(wide)
    holder.resize(wide - 10, row.heightForWidth(wide - 10))
    settle()
    assert buttons[0].y() < buttons[1].y() == buttons[2].y()
    assert all(b.width() >= b.sizeHint().width() and holder.rect().contains(b.geometry()) for b in buttons)


def counts(strip: FindingsStrip) -> list[str]:
    return [label.text() for badge, label in strip._counts.values() if badge.isVisible()]


def test_flags_stand_for_the_words_of_counts_where_a_hint_needs_the_room(editor):
    open_demo(editor, "harbour")
    window, strip = editor.window, editor.window.strip
    one = editor.solving.answer.situation.findings[0]
    many = [one._replace(rank=rank) for rank in Rank for _ in range(11)]
    strip.show_findings(many)
    assert counts(strip) == ["11 dangers", "11 weak points", "11 notes"]
    window.resize(1024, 700)
    window.acts["wireway"].trigger()
    strip.show_findings(many)
    settle()
    assert counts(strip) == ["11", "11", "11"] and strip.hint.toolTip() == ""
    for badge, label in strip._counts.values():
        assert badge.toolTip() == label.accessibleName() != ""
    for _, label in strip._counts.values():
        assert label.width() >= label.fontMetrics().horizontalAdvance(label.text())
    QTest.keyClick(window.plan_view, Qt.Key.Key_Escape)
    settle()
    assert counts(strip) == ["11 dangers", "11 weak points", "11 notes"]


def test_size_and_colour_of_the_next_wire_go_into_a_row_below(editor):
    open_demo(editor)
    page = editor.window.plan_page
    page.setMinimumWidth(100)
    editor.window.acts["show_tray"].setChecked(False)
    editor.window.setMinimumSize(320, 240)
    editor.window.resize(640, 500)
    editor.window.show_view("plan")
    editor.window.acts["wire"].trigger()
    settle()
    assert page._second.isVisible()
    for box in (page.wire_size, page.wire_colour):
        assert page._second.rect().contains(box.geometry()) and box.width() >= box.minimumWidth()
    assert page._bar.minimumSizeHint().width() <= page.width()
    editor.window.acts["select"].trigger()
    assert not page._second.isVisible()
    editor.window.resize(1280, 800)
    editor.window.acts["wire"].trigger()
    settle()
    assert not page._second.isVisible() and page.wire_size.isVisible()
    editor.window.setMinimumSize(1024, 600)


@pytest.mark.parametrize(("wide", "beside"), [(1280, True), (760, False)])
def test_the_figures_of_a_battery_stand_beside_its_words_or_below_them(editor, wide, beside):
    open_demo(editor)
    window, page = editor.window, editor.window.battery_page
    window.setMinimumSize(320, 240)
    window.resize(wide, 700)
    window.show_view("battery")
    settle()
    spans, words = page.summary._spans, page.summary.words
    assert (spans.y() < words.geometry().bottom()) is beside
    for row in page.summary.cells:
        for cell in row:
            assert cell.visibleRegion().boundingRect().width() == cell.width()
    bars = (*page.switch.buttons.values(), page.bar.as_table, page.bar.save)
    assert all(b.visibleRegion().boundingRect().width() == b.width() for b in bars)
    window.setMinimumSize(1024, 600)
    window.resize(1280, 800)


@pytest.mark.parametrize("factor", [1.0, 1.5])
def test_names_of_panels_and_scenes_are_whole_in_a_narrow_window(editor, factor):
    open_demo(editor, "harbour")
    editor.window.resize(1024, 768)
    editor.look.write_at(factor)
    settle()
    settle()
    lines = [
        line
        for rows in (editor.window.inspector.card.panels.rows, editor.window.inspector.card.scenes.rows)
        for line in (row.name.line for row in rows.values())
    ]
    assert len(lines) > 4
    assert [line.text() for line in lines if line.width() < line.needed_px()] == []
    editor.look.write_at(1.0)


def test_no_number_is_parted_from_its_unit_in_the_tray():
    assert whole_units("Yellow LED for 12 V") == "Yellow LED for 12\u00a0V"
    assert whole_units("Strip, 4 ways") == "Strip, 4 ways"
