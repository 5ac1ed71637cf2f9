"""Pulls the paper under a view on screens of any fineness, and compares with what is painted anew."""

import numpy as np
import pytest
from PySide6.QtGui import QImage, QPainter
from support.surfaces import Desk

from app.canvas.painting import wire_pens
from tests.benchmarks.canvas import street
from wiring.files.store import load

CLEAR_OF = 8  # a colour is another one to the eye from so many steps of 255


def opened(qtbot, name, scale) -> Desk:
    desk = Desk(qtbot)
    desk.session.open(street(700) if name == "street" else load(f"demo_layouts/{name}.underboard"), None)
    x, y = desk.view._state.camera.to_plan(450, 320)
    desk.look(scale, x, y)
    return desk


def paint(desk, ratio=1.0) -> QImage:
    """Return the still picture as a screen shows it that has so many device pixels to a pixel."""
    sight, state = desk.view.sight()._replace(ratio=ratio), desk.view._state
    image = QImage(round(sight.width_px * ratio), round(sight.height_px * ratio), QImage.Format.Format_RGB32)
    image.setDevicePixelRatio(ratio)
    painter = QPainter(image)
    waits = desk.view._burst.isActive()
    desk.view._frame.still.paint(painter, sight, state.key, frozenset(), state.stirred_since, may_wait=waits)
    painter.end()
    return image


def anew(desk, ratio=1.0) -> QImage:
    """Return the same painted from corner to corner."""
    sight = desk.view.sight()._replace(ratio=ratio)
    desk.view._frame.still._paint_whole(sight, desk.view._state.key, frozenset())
    return paint(desk, ratio)


def odd(one: QImage, other: QImage) -> int:
    """Return how many pixels differ to the eye."""
    a, b = (
        np.frombuffer(i.constBits(), np.uint8).reshape(i.height(), i.width(), 4).astype(int)
        for i in (one, other)
    )
    return int(np.count_nonzero(np.abs(a - b).max(axis=2) > CLEAR_OF))


def pull(desk, dx, dy):
    """Pull the paper by so many pixels; the hand moves on."""
    desk.view._look(desk.view._state.camera.panned(dx, dy))


def work(desk, ratio=1.0, steps=10_000, *, settled=False):
    """Let what comes next be painted between the events, so many slices as short as they can be."""
    sight, state = desk.view.sight()._replace(ratio=ratio), desk.view._state
    for _ in range(steps):
        told = desk.view._frame.still.work(sight, state.key, frozenset(), 0.0, settled=settled)
        if told == "nothing":
            break


@pytest.fixture
def unstriped(monkeypatch):
    """Wires without stripes: where a dash of one begins hangs on where its line meets the picture's edge."""
    real = wire_pens.insulation
    monkeypatch.setattr(wire_pens, "insulation", lambda letters: (real(letters)[0], ""))
    wire_pens.wire_pens.cache_clear()
    yield
    wire_pens.wire_pens.cache_clear()
