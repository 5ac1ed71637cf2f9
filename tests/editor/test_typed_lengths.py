"""Lengths typed while a board, a track or a joist is drawn; edges come into line with what was set before."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from support.surfaces import CTRL, desk

from app.canvas.gestures.typed_length import towards, typed_mm, typed_words
from wiring.edits.set_plan import set_habits

__all__ = ["desk"]


def type_in(desk, text):
    QTest.keyClicks(desk.view, text)


@pytest.mark.parametrize(
    ("typed", "units", "length_mm"),
    [
        ("1200", "metric", 1200.0),
        ("1.2", "metric", 1200.0),
        ("1,2", "metric", 1200.0),
        ("600 mm", "metric", 600.0),
        ("4", "us", 1219.2),
        ("48", "us", 1219.2),
        ("4' 6\"", "us", 1371.6),
        ("12c", "metric", 0.0),
        ("", "metric", 0.0),
        ("-5", "metric", 0.0),
    ],
)
def test_a_bare_number_is_read_as_somebody_who_builds_means_it(typed, units, length_mm):
    assert typed_mm(typed, units) == pytest.approx(length_mm)


def test_how_it_is_read_is_said():
    assert typed_words("1200", 1200.0, "metric") == "1200 is 1.2 m"
    assert typed_words("12c", 0.0, "metric") == "12c"
    assert towards((0, 0), (30, 40), 100) == (60, 80)
    assert towards((0, 0), (400, 6), 100) == (100, 0)
    assert towards((0, 0), (400, 6), 100, free=True)[1] > 1
    assert towards((5, 5), (5, 5), 100) == (5, 5)


def test_a_board_of_a_known_size_is_typed(desk):
    desk.view.begin_draw("board")
    desk.click(0, 0)
    desk.move(400, 6)
    assert desk.hints[-1].startswith("40 cm, or type it.")
    type_in(desk, "700")
    assert desk.hints[-1].startswith("700 is 70 cm, towards the pointer.")
    desk.key(Qt.Key.Key_Return)
    desk.move(703, 300)
    type_in(desk, "50x")
    desk.key(Qt.Key.Key_Backspace)
    type_in(desk, "0 mm")
    desk.key(Qt.Key.Key_Return)
    desk.move(3, 497)  # in line with the first corner across and with the last one down
    desk.click(3, 497)
    desk.click(0, 0)
    assert desk.plan.board == ((0, 0), (700, 0), (700, 500), (0, 500))


def test_with_ctrl_a_corner_is_left_aslant(desk):
    desk.view.begin_draw("board")
    desk.click(0, 0)
    desk.click(600, 4, CTRL)
    desk.click(600, 400)
    desk.key(Qt.Key.Key_Return)
    assert desk.plan.board[1] == pytest.approx((600, 4), abs=0.5)


def test_letters_stay_keys_until_a_length_is_begun(desk):
    desk.view.begin_draw("track")
    desk.click(50, 400)
    desk.key(Qt.Key.Key_Space)
    type_in(desk, "v")
    assert not desk.view._acting.preview.outline[2:] and "v" not in desk.hints[-1].split()
    desk.click(450, 400)
    desk.key(Qt.Key.Key_Return)
    assert desk.plan.tracks == (((50, 400), (450, 400)),)


def test_a_joist_of_a_known_length_is_typed(desk):
    desk.session.do(set_habits(units="us"))
    desk.view.begin_draw("joist")
    desk.click(50, 450)
    desk.move(300, 450)
    type_in(desk, "24")
    assert "24 is 2 ft" in desk.hints[-1]
    desk.key(Qt.Key.Key_Return)
    (joist,) = desk.plan.joists
    assert joist.start == (50, 450) or joist.start == pytest.approx((50, 450), abs=7)
    assert joist.end[0] - joist.start[0] == pytest.approx(609.6)
