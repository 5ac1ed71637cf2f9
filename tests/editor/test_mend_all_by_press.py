"""All findings of one sort are mended by one press or one key, and taken back by one undo."""

import pytest
from PySide6.QtCore import QRect, Qt
from PySide6.QtGui import QFontMetrics
from PySide6.QtTest import QTest

from app.findings.finding_list import ALL_WORDS_ROLE
from app.findings.row_layout import INDENT, TOP, row_layout
from app.theme.fonts import screen_font
from app.theme.words import lined, wear_factor
from app.window.mending import NOT_SEVERAL, OF_BEFORE
from tests.editor.test_mend_by_press import button_of, fed, hasty, row_of, settle, shown  # noqa: F401
from wiring.edits.set_value import set_field
from wiring.findings.act import Act
from wiring.findings.finding import Finding, Rank

Key, Mod = Qt.Key, Qt.KeyboardModifier
WORDS = "Put a resistor before each of 3 LEDs"


def three():
    return fed(("led-white-bare", {}), ("led-red-bare", {}), ("led-green-bare", {}))


def resistors(plan):
    return [p for p in plan.parts.values() if p.kind == "resistor"]


def rows_of(strip, rule="led-without-resistor"):
    rows = [strip.model.index(n, 0) for n in range(strip.model.rowCount())]
    return [i for i in rows if i.data(Qt.ItemDataRole.UserRole).rule == rule]


def test_the_button_in_the_first_row_of_the_sort_mends_all_of_it_in_one_step(shown):  # noqa: F811
    editor = shown(three())
    strip, plan = editor.window.strip, editor.session.plan
    assert [bool(i.data(ALL_WORDS_ROLE)) for i in rows_of(strip)] == [True, False, False]
    button_of(editor, "led-without-resistor")  # scrolled to
    button = strip.mends.button_of_all(row_of(editor, "led-without-resistor"))
    assert (button.text(), button.accessibleName()) == (WORDS, WORDS)
    QTest.mouseClick(button, Qt.MouseButton.LeftButton)
    settle()
    new = editor.session.plan
    assert len(resistors(new)) == 3 and row_of(editor, "led-without-resistor") < 0
    assert editor.session.undo_label == WORDS
    assert {p.id for p in resistors(new)} <= editor.selection.ids
    editor.window.acts["undo"].trigger()
    settle()
    assert editor.session.plan is plan and len(rows_of(strip)) == 3


def test_the_key_does_so_in_any_row_of_the_sort_and_says_where_there_are_not_several(shown):  # noqa: F811
    editor = shown(three())
    strip = editor.window.strip
    strip.list.setFocus()
    last = rows_of(strip)[-1]
    assert f"Ctrl+Shift+Return for: {WORDS}" in last.data(Qt.ItemDataRole.AccessibleTextRole)
    strip.list.setCurrentIndex(last)
    QTest.keyClick(strip.list, Key.Key_Return, Mod.ControlModifier | Mod.ShiftModifier)
    settle()
    assert len(resistors(editor.session.plan)) == 3
    strip.list.setFocus()
    strip.list.setCurrentIndex(strip.model.index(0, 0))
    plan = editor.session.plan
    QTest.keyClick(strip.list, Key.Key_Return, Mod.ControlModifier | Mod.ShiftModifier)
    assert editor.notices.last.text == NOT_SEVERAL and editor.session.plan is plan


def test_the_button_is_reached_by_tab_after_that_of_the_row_alone(shown):  # noqa: F811
    editor = shown(three())
    window, strip = editor.window, editor.window.strip
    strip.list.setFocus()
    strip.list.setCurrentIndex(rows_of(strip)[0])
    settle()
    QTest.keyClick(strip.list, Key.Key_Tab)
    assert window.focusWidget().text() == "Put in 470 Ω"
    QTest.keyClick(window.focusWidget(), Key.Key_Tab)
    assert window.focusWidget().text() == WORDS
    QTest.keyClick(window.focusWidget(), Key.Key_Space)
    settle()
    assert len(resistors(editor.session.plan)) == 3


def test_those_of_a_plan_that_has_changed_are_refused(shown):  # noqa: F811
    editor = shown(three())
    strip = editor.window.strip
    of = rows_of(strip)[0].data(Qt.ItemDataRole.UserRole + 1)
    editor.session.do(set_field(["p2"], label="by the crane"))  # its finding has other words now
    settle()
    plan = editor.session.plan
    strip.mends.all_wanted.emit(of)
    assert editor.session.plan is plan and editor.notices.last.text == OF_BEFORE


@pytest.mark.parametrize("width", [420, 560, 800, 1100])
@pytest.mark.parametrize("words", [1.0, 1.6])
@pytest.mark.parametrize("long", [1, 8])
def test_both_buttons_lie_in_the_row_clear_of_the_words_and_of_each_other(qapp, width, words, long):
    act = Act("resistor", "Put in 4 × 470 Ω", ("p1",))
    finding = Finding("led", Rank.DANGER, "What is wrong " * long, "Why " * long, "What mends it.", act=act)
    try:
        wear_factor(words)
        layout = row_layout(finding, width, WORDS)
        assert layout.button is not None and layout.of_all is not None
        metrics = {w: QFontMetrics(screen_font(13, w)) for w in ("semibold", "regular")}
        ends = [metrics["semibold"].horizontalAdvance(line) for line in layout.what]
        ends += [metrics["regular"].horizontalAdvance(line) for line in layout.rest]
        for button in (layout.button, layout.of_all):
            assert QRect(0, 0, width, layout.height).contains(button)
            assert button.left() >= INDENT + max(ends) or button.top() >= TOP + len(ends) * lined(19) - 2
        assert not layout.button.intersects(layout.of_all)
    finally:
        wear_factor(1.0)
