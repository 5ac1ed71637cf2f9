"""A refusal leaves once it is outdated; what names a fault that lasts stays."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QPushButton
from support.editors import DEMOS, open_demo, part_id

from app.notices import Notice
from app.window import notice_bar
from wiring.edits.backdrop import lay_backdrop
from wiring.edits.set_plan import set_plan
from wiring.files.store import load
from wiring.plan.backdrop import Backdrop

Key, Ctrl = Qt.Key, Qt.KeyboardModifier.ControlModifier


@pytest.fixture
def refused(editor):
    """A window that shows why nothing was named: a real refusal, by a real key."""
    open_demo(editor)
    editor.session.do(set_plan(author="A. Builder"))
    editor.window.plan_view.setFocus()
    editor.selection.select((part_id(editor, "E1"), part_id(editor, "E2")))
    QTest.keyClick(editor.window.plan_view, Key.Key_H)
    QTest.keyClick(editor.window.plan_view, Key.Key_F, Qt.KeyboardModifier.ShiftModifier)
    assert editor.window.notice_bar.isVisible() and editor.notices.last.about_act
    return editor


def test_the_next_edit_puts_a_refusal_away(refused):
    QTest.keyClick(refused.window.plan_view, Key.Key_R)
    assert not refused.window.notice_bar.isVisible()


def test_undo_and_redo_put_it_away(refused):
    QTest.keyClick(refused.window, Key.Key_Z, Ctrl)
    assert not refused.window.notice_bar.isVisible()
    refused.session.refused.emit("That cannot be.")
    QTest.keyClick(refused.window, Key.Key_Y, Ctrl)
    assert not refused.window.notice_bar.isVisible()


def test_an_edit_that_is_refused_itself_says_so(refused):
    first = refused.window.notice_bar.text
    QTest.keyClick(refused.window.plan_view, Key.Key_F, Qt.KeyboardModifier.ShiftModifier)
    assert refused.window.notice_bar.isVisible() and refused.window.notice_bar.text == first


def test_another_page_puts_it_away_the_same_page_does_not(refused):
    QTest.keyClick(refused.window, Key.Key_1, Ctrl)
    assert refused.window.notice_bar.isVisible()
    QTest.keyClick(refused.window, Key.Key_3, Ctrl)
    assert not refused.window.notice_bar.isVisible()


def test_it_leaves_by_itself_in_the_end(editor, monkeypatch, qtbot):
    assert notice_bar.REFUSAL_MS == 20000
    monkeypatch.setattr(notice_bar, "REFUSAL_MS", 30)
    bar = editor.window.notice_bar
    editor.session.refused.emit("That cannot be.")
    assert bar.isVisible()
    qtbot.waitUntil(lambda: not bar.isVisible(), timeout=1500)
    editor.notices.say("The plan could not be saved: the disk is full.", "danger")
    QTest.qWait(80)
    assert bar.isVisible()
    bar.put_away()


def test_a_fault_that_lasts_stays_over_edits_and_pages(editor):
    open_demo(editor)
    editor.notices.say("The plan could not be saved: the disk is full.", "danger")
    editor.session.do(set_plan(author="A. Builder"))
    QTest.keyClick(editor.window, Key.Key_2, Ctrl)
    assert editor.window.notice_bar.isVisible()
    editor.window.notice_bar.put_away()


def test_what_is_refused_in_answer_to_an_edit_is_not_put_away_by_that_edit(editor):
    open_demo(editor)
    session = editor.session
    answer = session.changed.connect(lambda _change: session.refused.emit("Not beside the plan."))
    session.do(set_plan(author="B. Builder"))
    session.changed.disconnect(answer)
    assert editor.window.notice_bar.isVisible()
    session.do(set_plan(author="C. Builder"))
    assert not editor.window.notice_bar.isVisible()


def test_a_picture_that_is_gone_is_told_until_it_is_put_away(editor, tmp_path):
    editor.session.open(load(DEMOS / "quay.underboard"), tmp_path / "quay.underboard")
    editor.session.do(lay_backdrop(Backdrop(media="image/png", path="gone.png", width_px=9, height_px=9)))
    bar = editor.window.notice_bar
    assert bar.isVisible() and "gone.png" in bar.text
    editor.session.do(set_plan(author="A. Builder"))
    assert bar.isVisible()
    QTest.keyClick(bar, Key.Key_Escape)
    assert not bar.isVisible()


def test_a_notice_that_is_answered_gives_the_keys_to_the_plan_and_not_to_its_title(editor, qtbot):
    open_demo(editor)
    window, answers = editor.window, []
    window.activateWindow()
    editor.notices.offer(Notice("A copy was kept.", "weak", "Open the copy", lambda: answers.append(1)))
    button = window.notice_bar.findChild(QPushButton)
    QTest.mouseClick(button, Qt.MouseButton.LeftButton)
    assert answers and not window.notice_bar.isVisible()
    qtbot.waitUntil(lambda: window.focusWidget() is window.plan_view, timeout=1000)
