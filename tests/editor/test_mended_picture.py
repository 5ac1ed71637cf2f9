"""After a change only a region of the still picture is painted anew; it looks as if all of it had been."""

import random

import numpy as np
import pytest
from support.pulled import unstriped
from support.surfaces import Desk, desk

from app.canvas.camera import Camera
from app.canvas.painting.still_picture import StillPicture
from app.solving import Solving
from tests.benchmarks.canvas import street
from wiring.edits.move import move
from wiring.edits.remove import remove
from wiring.edits.turn import turn
from wiring.files.store import load

__all__ = ["desk", "unstriped"]


@pytest.fixture
def mends(monkeypatch):
    """How much of the picture was painted anew each time: None for all of it."""
    seen = []
    real = StillPicture._to_mend

    def told(self, *a):
        seen.append(real(self, *a))
        return seen[-1]

    monkeypatch.setattr(StillPicture, "_to_mend", told)
    return seen


def whole(desk):
    """Return the picture painted anew from corner to corner."""
    desk.view._state.look_at(None)  # nothing is known of where it changed: all is painted
    return desk.shot()


def same(one, other, odd_px=6):
    """Tell whether two pictures look the same: edges along a clip may be a shade off, hairlines a pixel."""
    a, b = (
        np.frombuffer(i.constBits(), np.uint8).reshape(i.height(), i.width(), 4).astype(int)
        for i in (one, other)
    )
    return np.count_nonzero(np.abs(a - b).max(axis=2) > 8) <= odd_px


def edits(plan, drawn, dx=7.0):
    parts, wires = sorted(plan.parts), sorted(plan.wires)
    some = drawn.sample(parts, min(2, len(parts)))
    return [
        move([drawn.choice(parts)], dx, -3.0),
        move(some, -4.0, dx),
        turn([drawn.choice(parts)], 90.0),
        move([drawn.choice(wires)], 0.0, 5.0),
        remove([drawn.choice(wires)]),
        remove([drawn.choice(parts)]),
    ]


@pytest.mark.parametrize("name", ["quay", "harbour", "street"])
@pytest.mark.parametrize("nearness", [1.0, 4.0])
def test_a_mended_picture_is_the_picture_painted_whole(qtbot, mends, name, nearness):
    desk, drawn = Desk(qtbot), random.Random(7)
    plan = street(700) if name == "street" else load(f"demo_layouts/{name}.underboard")
    desk.session.open(plan, None)
    there = desk.view._state.camera
    x, y = there.to_plan(450, 320)
    desk.look(there.scale * nearness, x, y)
    desk.view._burst.stop()
    whole(desk)
    mends.clear()
    for edit in edits(plan, drawn):
        desk.session.do(edit)
        assert same(desk.shot(), whole(desk)), edit.label
    desk.session.undo()
    assert same(desk.shot(), whole(desk))
    assert any(clip is not None for clip in mends)


def test_a_part_that_was_dragged_stands_where_it_was_let_go(desk, mends):
    part = next(iter(desk.plan.parts.values()))
    desk.view._burst.stop()
    whole(desk)
    mends.clear()
    desk.press(part.x_mm, part.y_mm)
    desk.move(part.x_mm + 30, part.y_mm + 10)
    desk.shot()
    desk.release(part.x_mm + 30, part.y_mm + 10)
    assert same(desk.shot(), whole(desk))
    assert mends[0] is not None


@pytest.mark.parametrize("scale", [0.35, 2.2])
def test_lamps_lit_in_a_kept_picture_are_those_painted_whole(qtbot, scale):
    desk = Desk(qtbot)
    desk.session.open(load("demo_layouts/quay.underboard"), None)
    solving = Solving(desk.session, at_once=True)
    solving.answered.connect(desk.view.set_answer)
    solving.request()
    switch = next(p for p in desk.plan.parts.values() if p.designation == "S1")
    lamp = next(p for p in desk.plan.parts.values() if p.designation == "E4")
    desk.look(scale, lamp.x_mm, lamp.y_mm)
    desk.view._burst.stop()
    pictures = {}
    for stand in ("off", "on", "off", "on"):
        desk.session.throw(switch.id, stand)
        pictures[stand] = desk.shot()
        desk.view._state.look_at(None)  # nothing is known of where it changed: all is painted
        assert same(pictures[stand], desk.shot())
    assert not same(pictures["off"], pictures["on"])


def test_what_changes_out_of_sight_paints_nothing(desk):
    desk.view._look(Camera(2.0, 5000.0, 5000.0))
    desk.view._burst.stop()
    whole(desk)
    before = desk.view.repaints
    desk.session.do(move([next(iter(desk.plan.parts))], 5.0, 0.0))
    desk.shot()
    assert desk.view.repaints == before


@pytest.mark.parametrize("name", ["quay", "harbour", "street"])
@pytest.mark.parametrize("nearness", [1.0, 5.0])
def test_a_picture_pulled_along_is_the_picture_painted_whole(qtbot, unstriped, name, nearness):
    desk = Desk(qtbot)
    desk.session.open(street(700) if name == "street" else load(f"demo_layouts/{name}.underboard"), None)
    there = desk.view._state.camera
    x, y = there.to_plan(450, 320)
    desk.look(there.scale * nearness, x, y)
    whole(desk)
    before = desk.view.repaints
    for dx, dy in ((31, 0), (0, -17), (-90, 44), (200, 120)):
        desk.view._look(desk.view._state.camera.panned(dx, dy))
        pulled = desk.shot()
    assert desk.view.repaints == before + 4
    state = desk.view._state
    desk.view._frame.still._paint_whole(desk.view.sight(), state.key, frozenset())
    assert same(pulled, desk.shot(), odd_px=60)  # where a dash begins and how a clip cuts a slanted edge


def test_the_next_picture_is_painted_in_slices_and_looks_the_same(qtbot):
    desk = Desk(qtbot, plan=street(700))
    desk.look(0.9, 700, 600)
    whole(desk)
    desk.view.zoom(1.25)
    desk.view._burst.start()
    old = desk.shot()
    assert desk.view._slices.isActive()
    qtbot.waitUntil(lambda: not desk.view._slices.isActive() and not desk.view._burst.isActive())
    sharp = desk.shot()
    assert not same(old, sharp)
    assert same(sharp, whole(desk))
