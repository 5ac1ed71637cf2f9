"""The window on a small screen: everything fits in 1024 pixels, the sides fold away, notices move nothing."""

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QToolButton
from support.editors import open_demo, part_id

Key = Qt.Key


def narrow(editor):
    open_demo(editor)
    editor.window.resize(1024, 640)
    QApplication.processEvents()
    return editor.window


@pytest.mark.parametrize("view", ["plan", "circuit", "battery", "sheets"])
def test_every_view_fits_in_1024_pixels(editor, view):
    window = narrow(editor)
    window.acts["wire"].trigger()
    window.show_view(view)
    QApplication.processEvents()
    assert window.width() == 1024 and window.minimumSizeHint().width() <= 1024
    right = window.columns.mapTo(window, QPoint(window.columns.width(), 0)).x()
    assert right <= 1024
    for side in (window.tray, window.inspector):
        assert not side.isVisible() or side.mapTo(window, QPoint(side.width(), 0)).x() <= 1024
    window.resize(1280, 800)


def test_a_long_hint_does_not_push_the_window_wider(editor):
    window = narrow(editor)
    before = window.columns.sizes()
    window.acts["wireway"].trigger()
    QApplication.processEvents()
    assert window.strip.hint.text() and window.columns.sizes() == before
    QTest.keyClick(window.plan_view, Key.Key_Escape)
    window.resize(1280, 800)


def test_tools_show_their_words_only_where_there_is_room(editor):
    window = narrow(editor)
    style = Qt.ToolButtonStyle
    assert {t.toolButtonStyle() for t in window.plan_page._tools} == {style.ToolButtonIconOnly}
    window.resize(1280, 800)
    QApplication.processEvents()
    assert {t.toolButtonStyle() for t in window.plan_page._tools} == {style.ToolButtonTextBesideIcon}


def test_the_sides_fold_away_by_key_and_come_back(editor):
    window = narrow(editor)
    wide = window.plan_view.width()
    QTest.keyClick(window, Key.Key_F7)
    QTest.keyClick(window, Key.Key_F8)
    QApplication.processEvents()
    assert not window.tray.isVisible() and not window.inspector.isVisible()
    assert window.plan_view.width() > wide + 400
    window.show_view("circuit")
    assert not window.inspector.isVisible()
    window.show_view("plan")
    QTest.keyClick(window, Key.Key_F7)
    QTest.keyClick(window, Key.Key_F8)
    assert window.tray.isVisible() and window.inspector.isVisible()
    window.resize(1280, 800)


def test_a_notice_lies_over_the_page_and_moves_nothing(editor):
    window = narrow(editor)

    def places():
        QApplication.processEvents()
        return [(w.mapTo(window, QPoint(0, 0)), w.size()) for w in (window.plan_view, window.tray)]

    before = places()
    editor.notices.say("A rather long sentence that says what was wrong with the plan and what to do. " * 2)
    assert window.notice_bar.isVisible() and places() == before
    bar = window.notice_bar.geometry()
    assert bar.left() >= window.plan_view.mapTo(window, QPoint(0, 0)).x() and bar.right() <= 1024
    assert bar.height() >= 2 * window.notice_bar.fontMetrics().height()
    QTest.keyClick(window.notice_bar, Key.Key_Escape)
    assert not window.notice_bar.isVisible() and places() == before
    window.resize(1280, 800)


def test_choices_that_are_too_wide_for_one_row_take_two(editor):
    from wiring.edits.place_part import place

    window = narrow(editor)
    kinds = editor.session.kinds
    for kind, x in (("toggle-on-off-2p", 700), ("led-red-bare", 800), ("led-red-bare", 860)):
        editor.session.do(place(kinds[kind], x, 700))
    editor.selection.select([*list(editor.session.plan.parts)[-3:], part_id(editor, "G1")])
    window.acts["feed"].trigger()
    QApplication.processEvents()
    strip = window.plan_view.choices
    buttons = [*strip._group.buttons(), strip._agree]
    assert strip.isVisible() and len(buttons) >= 5
    for button in buttons:
        assert button.width() >= button.sizeHint().width()
        assert strip.rect().contains(button.geometry())
    one_row = 44
    assert strip.height() == 2 * one_row and strip.geometry().bottom() == window.plan_view.rect().bottom()
    window.resize(1500, 800)
    QApplication.processEvents()
    assert strip.height() == one_row
    QTest.keyClick(window.plan_view, Key.Key_Escape)
    window.resize(1280, 800)


def test_on_a_very_small_screen_menus_views_and_notices_are_whole(editor):
    window = narrow(editor)
    window.setMinimumSize(320, 240)
    window.resize(700, 400)
    QApplication.processEvents()
    editor.notices.say("Something that takes more than a few words to say has to be said here.", "weak")
    header = window.header
    buttons = header.views.findChildren(QToolButton)
    assert header.menu_bar.width() >= header.menu_bar.sizeHint().width()
    assert all(b.width() >= b.sizeHint().width() for b in buttons)
    bar = window.notice_bar
    assert bar.width() > 600 and bar.geometry().right() < window.width() and bar.height() < 100
    bar.put_away()
    window.setMinimumSize(1024, 600)
    window.resize(1280, 800)
