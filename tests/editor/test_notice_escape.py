"""Escape puts a notice away from wherever one works, but never before what it leaves there first."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from support.editors import open_demo, part_id, settle

from app.notices import Notice

Key = Qt.Key


@pytest.fixture
def window(editor):
    open_demo(editor)
    editor.window.activateWindow()
    editor.window.show_view("plan")
    return editor.window


def escape(window):
    QTest.keyClick(QApplication.focusWidget() or window, Key.Key_Escape)


@pytest.mark.parametrize("view", ["plan", "circuit", "battery", "sheets"])
def test_it_goes_from_every_page(editor, window, view):
    window.show_view(view)
    settle()
    editor.notices.say("Something was done.")
    assert window.notice_bar.isVisible()
    escape(window)
    assert not window.notice_bar.isVisible() and window.view == view


def test_the_tool_is_left_first_then_the_notice_then_what_is_selected(editor, window):
    editor.selection.select([part_id(editor, "E1")])
    window.acts["measure"].trigger()
    editor.notices.say("Something was done.")
    escape(window)
    assert window.plan_view.tool == "select" and window.notice_bar.isVisible()
    escape(window)
    assert not window.notice_bar.isVisible() and editor.selection.ids
    escape(window)
    assert not editor.selection.ids


def test_on_the_bench_it_goes_before_the_bench_does(editor, window):
    bench = window.plan_view.bench
    bench.open(next(iter(editor.session.plan.panels)))
    QTest.keyClick(bench.face, Key.Key_D)
    editor.notices.refuse("That cannot be.")
    escape(window)
    assert bench.face.acting.tool == "select" and window.notice_bar.isVisible() and bench.is_open
    escape(window)
    assert not window.notice_bar.isVisible() and bench.is_open
    escape(window)
    assert not bench.is_open


def test_what_asks_to_be_answered_is_not_put_away_by_the_way(editor, window):
    told = []
    notice = Notice("A copy is here.", "weak", "Open it", lambda: None, lambda: told.append("away"))
    editor.notices.offer(notice)
    escape(window)
    assert window.notice_bar.isVisible() and not told
    QTest.keyClick(window.notice_bar, Key.Key_Escape)
    assert not window.notice_bar.isVisible() and told == ["away"]
