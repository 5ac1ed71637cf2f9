"""Circuit drawings and sheets are scrolled as the plan is: by wheel, touch pad and pinch."""

import pytest
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QNativeGestureEvent, QPointingDevice, QWheelEvent
from PySide6.QtWidgets import QApplication
from support.surfaces import CTRL, PLAIN, SHIFT

from app.drawing.picture_view import PictureView
from app.theme.look import Look
from wiring.pictures.picture import Picture

Phase = Qt.ScrollPhase
AT = QPointF(300, 200)


@pytest.fixture
def view(qtbot):
    parent_less = PictureView(Look(), None)
    qtbot.addWidget(parent_less)
    parent_less.resize(800, 600)
    parent_less.show()
    parent_less.show_picture(Picture((), 200.0, 100.0, 0.0, 0.0))
    return parent_less


def wheel(view, turned, px=(0, 0), keys=PLAIN, phase=Phase.NoScrollPhase):
    where, none = QPointF(view.mapToGlobal(AT.toPoint())), Qt.MouseButton.NoButton
    event = QWheelEvent(AT, where, QPoint(*px), QPoint(*turned), none, keys, phase, False)
    QApplication.sendEvent(view, event)


def test_a_wheel_zooms_at_the_pointer_and_with_shift_pulls_aside(view):
    place, before = view.millimetres(AT), view.camera
    wheel(view, (0, 120))
    assert view.camera.scale == pytest.approx(before.scale * 1.2)
    assert view.millimetres(AT) == pytest.approx(place)
    nearer = view.camera
    wheel(view, (0, -120), keys=SHIFT)
    assert view.camera == nearer.panned(-60, 0)


def test_two_fingers_pull_the_picture_and_with_ctrl_or_pinched_they_zoom(view):
    before = view.camera
    wheel(view, (20, -40), (13, -27), phase=Phase.ScrollBegin)
    assert view.camera == before.panned(13, -27)
    wheel(view, (0, 60), (0, 30), CTRL, Phase.ScrollBegin)
    nearer = view.camera.scale
    assert nearer > before.scale
    where, pad = QPointF(view.mapToGlobal(AT.toPoint())), QPointingDevice.primaryPointingDevice()
    pinch = Qt.NativeGestureType.ZoomNativeGesture
    QApplication.sendEvent(view, QNativeGestureEvent(pinch, pad, 2, AT, AT, where, 0.25, QPointF()))
    assert view.camera.scale == pytest.approx(nearer * 1.25)


def test_where_there_is_no_picture_nothing_moves(view):
    view.show_picture(None)
    before = view.camera
    wheel(view, (0, 120))
    wheel(view, (20, -40), (13, -27), phase=Phase.ScrollBegin)
    assert view.camera == before
