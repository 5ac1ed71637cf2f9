"""Words as large as the desktop's, or as chosen: live, remembered, and nothing of the window cut off."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QLabel, QToolButton
from support.editors import open_demo

from app.theme import desktop_words, look, words
from app.theme.fonts import picture_font, screen_font
from app.window.actions import VIEWS

Key, Shift = Qt.Key, Qt.KeyboardModifier.ShiftModifier


@pytest.fixture
def window(editor):
    open_demo(editor)
    yield editor.window
    editor.look.write_at(1.0)


def test_the_desktops_font_is_followed_within_what_the_window_has_room_for(monkeypatch):
    for points, factor in ((6.0, 1.0), (9.0, 1.0), (11.0, 1.0), (13.75, 1.25), (16.0, 16 / 11), (40.0, 1.6)):

        class Told:
            def __init__(self, _font, points=points):
                self.pointSizeF = lambda: points

        monkeypatch.setattr(desktop_words, "QFontInfo", Told)
        assert desktop_words.factor_of_desktop("linux") == pytest.approx(factor)
    assert desktop_words.factor_of_desktop("win32") == 1.6


def test_steps_lead_up_and_down_again_and_stop_at_the_ends():
    up = [1.0]
    while (step := words.next_step(up[-1], 1.45, up=True)) != up[-1]:
        up.append(step)
    assert up == [1.0, 1.1, 1.25, 1.4, 1.45, 1.6]
    down = [up[-1]]
    while (step := words.next_step(down[-1], 1.45, up=False)) != down[-1]:
        down.append(step)
    assert down == up[::-1]


def test_nothing_is_rounded_otherwise_at_the_usual_size():
    for px in (9, 11, 12.5, 13, 38, 112):
        assert (words.scaled(px), words.softly(px)) == (round(px), round(px))
        assert words.lined(px, 2) == round(px)


def test_a_key_enlarges_everything_at_once_and_another_takes_it_back(window):
    label = next(w for w in window.findChildren(QLabel) if w.isVisible() and w.text() == "This layout")
    field = window.tray.search
    before = (label.fontMetrics().height(), field.height(), window.header.height(), screen_font().pixelSize())
    picture = picture_font("regular").pixelSize()
    QTest.keyClick(window, Key.Key_F9)
    QApplication.processEvents()
    after = (label.fontMetrics().height(), field.height(), window.header.height(), screen_font().pixelSize())
    assert words.factor() == 1.1 and all(a > b for a, b in zip(after, before, strict=True))
    assert picture_font("regular").pixelSize() == picture  # sheets and signs are drawn to scale
    assert window.remembered.words == 1.1
    for _ in range(2):  # the second finds nothing smaller
        QTest.keyClick(window, Key.Key_F9, Shift)
    QApplication.processEvents()
    now = (label.fontMetrics().height(), field.height(), window.header.height(), screen_font().pixelSize())
    assert now == before and window.remembered.words == 0.0


def test_what_was_chosen_is_worn_at_the_next_start(editor):
    editor.remembered.words = 1.1
    worn = look.Look("light", editor.remembered.words)
    worn.dress(QApplication.instance())
    assert words.factor() == 1.1 and screen_font(20).pixelSize() == 22
    for step in (editor.look.dress, editor.look.finish):
        step(QApplication.instance())
    assert words.factor() == 1.0


@pytest.mark.parametrize("factor", (1.25, 1.6))
def test_large_words_fit_into_the_smallest_window(window, factor):
    window.look.write_at(factor)
    window.resize(1024, 600)
    QApplication.processEvents()
    for view in VIEWS:
        window.show_view(view)
        QApplication.processEvents()
        assert window.width() == 1024
        for part in (window.header, window.pages, window.inspector):
            if part.isVisible():
                right = part.mapTo(window, part.rect().bottomRight())
                assert right.x() < 1024 and right.y() < 600, (view, part)
        page = window.pages.currentWidget()
        assert page.width() <= window.pages.width(), view
        for button in window.header.views.findChildren(QToolButton):
            assert button.width() >= button.sizeHint().width(), (view, button.text())
        assert window.header.menu_bar.width() >= window.header.menu_bar.sizeHint().width(), view
    window.show_view("plan")
