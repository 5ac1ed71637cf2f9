"""While the paper is pulled a larger picture is moved under the view; it looks as if painted there."""

import random

import pytest
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtTest import QTest
from support.pulled import anew, odd, opened, paint, pull, unstriped, work
from support.surfaces import MIDDLE

from app.canvas.painting.detail import detail
from app.solving import Solving
from wiring.edits.move import move
from wiring.edits.remove import remove
from wiring.pictures.theme import DARK

__all__ = ["unstriped"]

SLANTS = 60  # pixels: how a clip cuts a slanted edge, and dashes of wireways


def anyhow(seed, count, most):
    drawn = random.Random(seed)
    return [(drawn.randint(-most, most), drawn.randint(-most, most)) for _ in range(count)]


WALKS = {
    "one way": [(9, 4)] * 40,
    "to and fro": [(5, 0), (-5, 0), (0, 3), (0, -3)] * 8 + [(-60, 0), (60, 0)] * 6,
    "in leaps": [(120, 0), (0, -120), (-350, 90), (10, 260), (240, 0), (240, 0)],
    "anyhow": anyhow(7, 24, 90),
}


@pytest.mark.parametrize(
    ("name", "ratio", "scale", "walk"),
    [
        ("quay", 1.0, 0.62, "one way"),
        ("quay", 1.0, 2.2, "to and fro"),
        ("quay", 1.0, 2.2, "anyhow"),
        ("quay", 1.25, 1.1, "in leaps"),
        ("quay", 1.25, 1.1, "anyhow"),
        ("quay", 2.0, 2.2, "one way"),
        ("harbour", 1.0, 0.8, "in leaps"),
        ("street", 1.0, 1.7, "anyhow"),
        ("street", 2.0, 1.7, "in leaps"),
    ],
)
def test_what_is_pulled_into_sight_looks_as_if_painted_there(qtbot, unstriped, name, ratio, scale, walk):
    desk = opened(qtbot, name, scale)
    paint(desk, ratio)
    steps = WALKS[walk]
    total = [sum(step[axis] for step in steps) for axis in (0, 1)]
    whole = round(
        8 * ratio
    )  # pixels of the device in eight of the screen, on which both pictures round alike
    for n, (dx, dy) in enumerate([*steps, (-total[0] % whole, -total[1] % whole)]):
        pull(desk, dx / ratio, dy / ratio)
        shown = paint(desk, ratio)
        work(desk, ratio, steps=n % 7)  # sometimes a strip is begun when the hand moves on
    assert desk.view._frame.still._kept.room.shows(desk.view._state.camera)
    desk.view._burst.stop()
    paint(desk, ratio)
    if not desk.view._frame.still._kept.is_apt:
        work(desk, ratio, settled=True)
        shown = paint(desk, ratio)
    assert odd(shown, anew(desk, ratio)) <= SLANTS


def test_small_pulls_paint_nothing_once_what_comes_is_painted(qtbot):
    desk = opened(qtbot, "quay", 1.3)
    paint(desk)
    pull(desk, 6, 0)
    paint(desk)
    work(desk)
    before = desk.view.repaints
    for _ in range(9):
        pull(desk, 6, 0)
        paint(desk)
    assert desk.view.repaints == before


def test_at_rest_a_rim_is_painted_so_that_the_next_pull_finds_it(qtbot):
    desk = opened(qtbot, "quay", 1.3)
    pull(desk, 1, 1)
    desk.shot()
    qtbot.waitUntil(lambda: not desk.view._burst.isActive() and not desk.view._slices.isActive())
    before = desk.view.repaints
    for dx, dy in ((40, 0), (-40, 0), (-40, -40), (40, 80)):
        pull(desk, dx, dy)
        desk.shot()
    assert desk.view.repaints == before


def test_pulled_by_the_hand_marks_stay_where_the_parts_are(qtbot, unstriped):
    desk = opened(qtbot, "quay", 1.6)
    part = next(iter(desk.plan.parts.values()))
    desk.look(1.6, part.x_mm, part.y_mm)
    desk.selection.select([part.id, *desk.plan.wires][:4])
    desk.shot()
    QTest.mousePress(desk.view, MIDDLE, Qt.KeyboardModifier.NoModifier, QPoint(450, 320))
    for n in range(1, 25):
        desk._down = MIDDLE
        desk.move(*desk.view._state.camera.to_plan(450 + 9 * n, 320 - 5 * n))
    pulled = desk.shot()
    anew(desk)
    assert odd(pulled, desk.shot()) <= SLANTS
    QTest.mouseRelease(desk.view, MIDDLE, Qt.KeyboardModifier.NoModifier, QPoint(666, 200))
    moved = QPointF(desk.view.px(part.x_mm, part.y_mm)) - QPointF(450, 320)
    assert (moved.x(), moved.y()) == (216, -120)


def test_edits_while_pulled_are_painted_in_the_moved_picture(qtbot, unstriped):
    desk, drawn = opened(qtbot, "quay", 1.2), random.Random(3)
    paint(desk)
    parts, wires = sorted(desk.plan.parts), sorted(desk.plan.wires)
    for n in range(12):
        pull(desk, 23, -11)
        paint(desk)
        work(desk, steps=n)
        edit = [move([drawn.choice(parts)], 9.0, 5.0), move([drawn.choice(wires)], 0.0, 4.0)][n % 2]
        desk.session.do(edit)
        if n % 3 == 0:
            pull(desk, -31, 40)  # both before one frame
        desk.view._burst.stop()
        assert odd(paint(desk), anew(desk)) <= SLANTS
    desk.session.do(remove([parts[0]]))
    assert odd(paint(desk), anew(desk)) <= SLANTS


def test_throws_while_pulled_light_lamps_where_they_are(qtbot, unstriped):
    desk = opened(qtbot, "quay", 1.4)
    solving = Solving(desk.session, at_once=True)
    solving.answered.connect(desk.view.set_answer)
    solving.request()
    switch = next(p for p in desk.plan.parts.values() if p.designation == "S1")
    lamp = next(p for p in desk.plan.parts.values() if p.designation == "E4")
    desk.look(1.4, lamp.x_mm, lamp.y_mm)
    paint(desk)
    pictures = []
    for n, stand in enumerate(("off", "on", "off", "on")):
        pull(desk, 14, 6)
        paint(desk)
        work(desk, steps=3 + 2 * n)
        desk.session.throw(switch.id, stand)
        pull(desk, -14, -6)
        pictures.append(paint(desk))
        assert odd(pictures[-1], anew(desk)) <= SLANTS
    assert odd(pictures[0], pictures[1]) > 100
    assert odd(pictures[0], pictures[2]) <= SLANTS


def test_another_size_and_other_colours_while_pulled(qtbot, unstriped):
    desk = opened(qtbot, "quay", 0.9)
    paint(desk)
    pull(desk, 50, 20)
    paint(desk)
    work(desk, steps=4)
    desk.view.resize(760, 500)
    pull(desk, 10, 0)
    assert odd(paint(desk), anew(desk)) <= SLANTS
    work(desk, steps=4)
    desk.view.set_theme(DARK)
    desk.view._burst.stop()
    assert odd(paint(desk), anew(desk)) <= SLANTS


def test_words_stay_while_pulled_and_come_at_rest_where_so_much_less_is_in_sight(qtbot, unstriped):
    desk = opened(qtbot, "street", 0.62)
    before = paint(desk)
    kept = desk.view._frame.still._kept
    crowd = kept.crowds
    for _ in range(14):
        pull(desk, -40, -25)
        paint(desk)
        work(desk, steps=5)
    assert desk.view._frame.still._kept is kept
    desk.view._burst.stop()
    pulled = paint(desk)
    assert not kept.is_apt
    work(desk, settled=True)
    sharp, kept = paint(desk), desk.view._frame.still._kept
    assert detail(kept.crowds, kept.scale) != detail(crowd, kept.scale)
    assert kept.is_apt
    assert odd(sharp, pulled) > 300
    assert odd(sharp, anew(desk)) <= SLANTS
    assert odd(sharp, before) > 300


def test_a_picture_that_is_ready_while_the_hand_has_moved_on_shows_what_it_moved_to(qtbot, unstriped):
    desk = opened(qtbot, "quay", 1.1)
    paint(desk)
    desk.view.zoom(1.5)
    for n in range(14):
        pull(desk, 12, 7)
        shown = paint(desk)
        work(desk, steps=5 + n)
    kept = desk.view._frame.still._kept
    assert kept.scale == desk.view._state.camera.scale
    assert kept.judged != desk.view._state.camera
    assert odd(shown, anew(desk)) <= SLANTS
    desk.view.zoom(0.8)
    paint(desk)
    work(desk, steps=9)
    pull(desk, 12, 7)
    work(desk, steps=60)  # perhaps a strip beside the next picture is begun
    desk.session.do(move([sorted(desk.plan.parts)[0]], 9.0, 5.0))
    desk.view._burst.stop()
    assert odd(paint(desk), anew(desk)) <= SLANTS
