"""The battery view tells the outlook in words, as a curve that can be read, and as a table."""

from datetime import date
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st
from PySide6.QtCore import QPoint, QRectF, Qt
from PySide6.QtTest import QTest
from support.battery_views import outlook, page
from support.editors import field, part_id, type_into

from app.outlook.axis import Axis, tick_words, ticks
from app.outlook.course_frames import frames, reading_at, when_words
from app.outlook.course_table import course_rows

__all__ = ["page"]


def test_the_page_says_the_outlook_and_why_it_ends(editor, page):
    known = outlook(editor)
    assert page.summary.words.text().lower() == known.words.lower()
    assert known.end_reason in page.summary.reason.text()
    cells = [[c.text() for c in row] for row in page.summary.cells]
    assert cells[1] == [f"{v:.0f}" for v in known.hours]


def test_coming_to_the_page_selects_the_battery_so_that_its_fields_are_at_hand(editor, page):
    assert editor.selection.ids == {part_id(editor, "G1")}
    before = outlook(editor).hours.typical
    type_into(field(editor, "setting_in_parallel"), "2")
    assert outlook(editor).hours.typical > 1.5 * before
    assert page.summary.words.text().lower() == outlook(editor).words.lower()


def test_an_outlook_with_a_switch_thrown_says_so_and_one_press_puts_it_back(editor, page):
    before = outlook(editor).hours.typical
    assert page.thrown.isHidden()
    editor.session.throw(part_id(editor, "S1"), "off")
    assert page.thrown.isVisible() and page.thrown.words.text().endswith("-S1 off.")
    assert page.summary.reason.text().startswith("-S1 “QUAY LIGHTS” is off in this use, so nothing draws")
    QTest.mouseClick(page.thrown.button, Qt.MouseButton.LeftButton)
    assert page.thrown.isHidden()
    assert outlook(editor).hours.typical == before


def test_the_pointer_reads_the_curve(editor, page):
    known = outlook(editor)
    f = frames(known, QRectF(page.curve.rect()))
    middle = known.curve.hours[len(known.curve.hours) // 2]
    QTest.mouseMove(page.curve, QPoint(round(f.across.px(middle)), page.curve.height() // 2))
    near = reading_at(known.curve, page.curve.hover)
    assert near.hours == pytest.approx(middle, abs=known.curve.hours[-1] / 50)
    assert f"{near.volts:.2f} volts" in page.curve.accessibleDescription()


def test_the_arrow_keys_move_the_reading_from_the_first_hour_to_the_last(editor, page):
    known = outlook(editor)
    for _ in range(60):
        QTest.keyClick(page.curve, Qt.Key.Key_Right)
    assert page.curve.hover == pytest.approx(known.curve.hours[-1])
    for _ in range(60):
        QTest.keyClick(page.curve, Qt.Key.Key_Left)
    assert page.curve.hover == 0


def test_the_table_says_the_same_as_the_curve(editor, page):
    page.bar.as_table.click()
    assert page.table.isVisible() and not page.curve.isVisible()
    known = outlook(editor)
    rows = course_rows(known)
    assert page.table.rowCount() == len(rows) <= 24
    assert rows[0][0] == f"{known.curve.hours[0]:.1f}"
    assert rows[-1][2] == f"{known.curve.volts[-1]:.2f}"
    assert page.table.item(0, 2).text() == f"{known.curve.volts[0]:.2f}"


def test_a_plan_without_battery_says_how_to_get_an_outlook(editor):
    editor.window.show_view("battery")
    assert "No battery" in editor.window.battery_page.summary.words.text()
    assert "Feed it" in editor.window.battery_page.summary.reason.text()
    assert editor.window.battery_page.choice.count() == 0


def test_the_curve_stays_inside_its_frame(editor, page):
    known = outlook(editor)
    f = frames(known, QRectF(0, 0, 900, 560))
    for hours, volts in zip(known.curve.hours, known.curve.volts, strict=True):
        assert f.volts_box.left() <= f.across.px(hours) <= f.volts_box.right()
        assert f.volts_box.top() <= f.volts.px(volts) <= f.volts_box.bottom()
    assert f.across.px(known.hours.high) <= f.volts_box.right()


@given(low=st.floats(-1e4, 1e4, allow_nan=False), span=st.floats(1e-3, 1e5), at_most=st.integers(2, 12))
def test_ticks_are_few_even_and_inside(low, span, at_most):
    found = ticks(low, low + span, at_most)
    assert len(found) <= at_most + 1
    assert all(low - 1e-6 * span <= t <= low + span * (1 + 1e-6) for t in found)
    steps = {round((b - a) / span, 6) for a, b in pairwise(found)}
    assert len(steps) <= 1


@pytest.mark.parametrize(
    ("value", "step", "words"), [(5, 5, "5"), (7.5, 2.5, "7.5"), (0.25, 0.25, "0.25"), (100, 20, "100")]
)
def test_tick_words_have_as_many_digits_as_the_step(value, step, words):
    assert tick_words(value, step) == words


@given(value=st.floats(-50, 50), start=st.floats(0, 500), length=st.floats(1, 900))
def test_an_axis_reads_back_what_it_places(value, start, length):
    axis = Axis(-50, 50, start, start + length)
    assert axis.value(axis.px(value)) == pytest.approx(value, abs=1e-6)


def test_dates_are_said_where_the_fitting_date_is_known():
    assert when_words(31, date(2026, 1, 1)) == "1 Feb 2026"
    assert when_words(31, None) == "31 days after fitting"
    assert when_words(91.32, None) == "3.0 months after fitting"
