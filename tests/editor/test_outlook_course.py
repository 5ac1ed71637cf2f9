"""The course along the calendar, what is marked on it, and saving it."""

import csv
from datetime import date
from itertools import pairwise
from xml.etree import ElementTree

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from PySide6.QtCore import QPoint, QRectF, Qt
from PySide6.QtGui import QImage
from PySide6.QtTest import QTest
from support.battery_views import outlook, page
from support.editors import open_demo, part_id

from app.outlook.calendar_ticks import calendar_ticks
from app.outlook.course_frames import DAYS, HOURS, frames, lasts, reading_at, sessions_along

__all__ = ["page"]


def test_one_click_lays_the_calendar_along_the_foot_and_the_pointer_reads_it(editor, page):
    QTest.mouseClick(page.bar.switch.buttons["By calendar"], Qt.MouseButton.LeftButton)
    assert page.curve.what == DAYS
    known = outlook(editor)
    f = frames(known, QRectF(page.curve.rect()), DAYS)
    middle = known.days.typical / 2
    QTest.mouseMove(page.curve, QPoint(round(f.across.px(middle)), page.curve.height() // 2))
    assert page.curve.hover == pytest.approx(middle, abs=known.days.typical / 50)
    near = reading_at(known.curve, page.curve.hover, DAYS)
    assert f"{near.volts:.2f} volts" in page.curve.accessibleDescription()


def test_arrow_keys_walk_the_calendar_too(editor, page):
    page.bar.switch.choose(1)
    for _ in range(60):
        QTest.keyClick(page.curve, Qt.Key.Key_Right)
    assert page.curve.hover == pytest.approx(outlook(editor).curve.days[-1])


@pytest.mark.parametrize("what", [HOURS, DAYS])
def test_sessions_lie_one_after_the_other_and_end_with_the_course(editor, page, what):
    known = outlook(editor)
    bands = sessions_along(known.curve, what)
    assert all(first <= last for first, last in bands)
    assert all(a[1] <= b[0] + 1e-6 for a, b in pairwise(bands))
    assert bands[-1][1] == pytest.approx(lasts(known, what).typical, rel=0.01)
    assert abs(len(bands) - known.sessions.typical) <= 1


def test_the_end_and_its_spread_lie_inside_the_frame(editor, page):
    known = outlook(editor)
    for what in (HOURS, DAYS):
        f = frames(known, QRectF(0, 0, 900, 560), what)
        for value in lasts(known, what):
            assert f.volts_box.left() <= f.across.px(value) <= f.volts_box.right()


def test_the_course_is_saved_as_a_drawing_a_picture_and_rows(editor, page, tmp_path):
    for suffix in (".svg", ".png", ".csv"):
        page.save_course(tmp_path / f"course{suffix}")
        assert editor.window.notices.last.text == f"Written to {tmp_path / f'course{suffix}'}."
    assert ElementTree.parse(tmp_path / "course.svg").getroot().tag.endswith("svg")
    image = QImage(str(tmp_path / "course.png"))
    assert image.width() == 2200 and len({image.pixel(x, 600) for x in range(0, 2200, 7)}) > 10
    rows = list(csv.reader((tmp_path / "course.csv").read_text().splitlines()))
    known = outlook(editor)
    assert len(rows) == len(known.curve.hours) + 1
    assert float(rows[-1][0]) == pytest.approx(known.curve.hours[-1], abs=1e-3)
    assert rows[1][2] == known.counted_from.isoformat()


def test_a_course_that_cannot_be_saved_says_why_in_one_sentence(editor, page, tmp_path):
    for suffix in (".svg", ".csv"):
        page.save_course(tmp_path / "missing" / f"course{suffix}")
        said = editor.window.notices.last.text
        assert said.startswith(f"course{suffix} was not saved, because its folder does not exist")


def test_a_plan_fed_by_the_mains_says_so(editor):
    from wiring.edits.swap_pack import swap_for_mains

    open_demo(editor)
    editor.session.do(swap_for_mains(part_id(editor, "G1"), 12.0))
    editor.window.show_view("battery")
    assert "The mains feeds this plan" in editor.window.battery_page.summary.reason.text()
    assert editor.window.battery_page._none.isVisible()


@settings(deadline=None, max_examples=60)
@given(
    start=st.one_of(st.none(), st.dates(date(2000, 1, 1), date(2090, 1, 1))),
    days=st.floats(0.5, 9000),
    at_most=st.integers(2, 14),
)
def test_calendar_ticks_are_few_inside_and_in_order(start, days, at_most):
    found = calendar_ticks(start, days, at_most)
    places = [place for place, _ in found]
    assert places == sorted(places) and all(0 <= place <= days * 1.000001 for place in places)
    assert len(found) <= at_most + 2
    assert all(words for _, words in found)


@pytest.mark.parametrize(
    ("start", "days", "words"),
    [
        (date(2026, 10, 3), 92, ["Nov 2026", "Dec", "Jan 2027"]),
        (date(2026, 1, 1), 6, ["1 Jan", "2 Jan", "3 Jan", "4 Jan", "5 Jan", "6 Jan", "7 Jan"]),
        (None, 40, ["day 0", "day 10", "day 20", "day 30", "day 40"]),
    ],
)
def test_months_days_and_counted_days(start, days, words):
    at_most = 8 if start else 4
    assert [said for _, said in calendar_ticks(start, days, at_most)] == words
