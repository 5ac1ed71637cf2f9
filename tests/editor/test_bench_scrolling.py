"""The bench is scrolled as the plan is: wheel, touch pad, and the rim while something is dragged."""

import pytest
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QNativeGestureEvent, QPointingDevice, QWheelEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from support.benches import SWITCH, BenchDesk
from support.surfaces import CTRL, PLAIN, SHIFT

from app.canvas.hands.rim_pulling import RESTS_MS

Phase = Qt.ScrollPhase
AT = QPointF(300, 200)


@pytest.fixture
def bench(qtbot):
    return BenchDesk(qtbot)


def wheel(bench, turned, px=(0, 0), keys=PLAIN, phase=Phase.NoScrollPhase):
    where = QPointF(bench.face.mapToGlobal(AT.toPoint()))
    none = Qt.MouseButton.NoButton
    event = QWheelEvent(AT, where, QPoint(*px), QPoint(*turned), none, keys, phase, False)
    QApplication.sendEvent(bench.face, event)


def test_a_wheel_zooms_at_the_pointer_and_with_shift_pulls_aside(bench):
    before = bench.face.camera
    wheel(bench, (0, 120))
    assert bench.face.camera == before.zoomed(1.2, (300, 200))
    wheel(bench, (0, -120))
    wheel(bench, (0, -120), keys=SHIFT)
    assert bench.face.camera.left_px == pytest.approx(before.left_px - 60)
    assert bench.face.camera.scale == pytest.approx(before.scale)


def test_two_fingers_pull_the_face_and_with_ctrl_or_pinched_they_zoom(bench):
    before = bench.face.camera
    wheel(bench, (20, -40), (13, -27), phase=Phase.ScrollBegin)
    assert bench.face.camera == before.panned(13, -27)
    wheel(bench, (0, 60), (0, 30), CTRL, Phase.ScrollBegin)
    assert bench.face.camera.scale > before.scale
    nearer = bench.face.camera.scale
    where, pad = QPointF(bench.face.mapToGlobal(AT.toPoint())), QPointingDevice.primaryPointingDevice()
    pinch = Qt.NativeGestureType.ZoomNativeGesture
    QApplication.sendEvent(bench.face, QNativeGestureEvent(pinch, pad, 2, AT, AT, where, 0.25, QPointF()))
    assert bench.face.camera.scale == pytest.approx(nearer * 1.25)


def test_a_part_held_at_the_rim_pulls_the_face_and_lies_under_the_pointer(bench):
    face = bench.face
    face.look(face.camera.zoomed(3.0, (0, 0)))
    part = bench.plan.parts[SWITCH]
    x, y = part.x_mm - bench.panel.x_mm, part.y_mm - bench.panel.y_mm
    bench.face_move(x, y)
    bench.face_press(x, y)
    bench.face_move(x + 20, y)
    edge = face.width() - 4
    for x_px in (edge - 1, edge):
        bench.face_move(*face.sight().camera.to_face(x_px, 300))
    before = face.camera.left_px
    QTest.qWait(RESTS_MS + 300)
    assert face.camera.left_px < before - 10
    place = face.sight().camera.to_face(edge, 300)
    bench.face_release(*place)
    still = face.camera.left_px
    part = bench.plan.parts[SWITCH]
    assert part.x_mm - bench.panel.x_mm == pytest.approx(place[0], abs=10)
    QTest.qWait(RESTS_MS + 100)
    assert face.camera.left_px == still
