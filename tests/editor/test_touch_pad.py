"""Wheel, touch pad, pinch and fingers on the plan; events as Qt makes them for each device."""

import pytest
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QGuiApplication, QInputDevice, QNativeGestureEvent, QPointingDevice, QWheelEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from support.gesture_runs import BATTERY
from support.surfaces import CTRL, PLAIN, SHIFT, desk

__all__ = ["desk"]
Phase = Qt.ScrollPhase
Gesture = Qt.NativeGestureType
AT = (300, 200)


def wheel(desk, turned=(0, 0), px=(0, 0), keys=PLAIN, phase=Phase.NoScrollPhase, at=AT, device=None, ms=0):
    place = QPointF(*at)
    where = QPointF(desk.view.mapToGlobal(place.toPoint()))
    none = Qt.MouseButton.NoButton
    synthesised = Qt.MouseEventSource.MouseEventNotSynthesized
    more = (synthesised, device) if device is not None else ()
    event = QWheelEvent(place, where, QPoint(*px), QPoint(*turned), none, keys, phase, False, *more)
    event.setTimestamp(ms)
    QApplication.sendEvent(desk.view, event)


def gesture(desk, kind, value=0.0, delta=(0, 0), at=AT):
    place = QPointF(*at)
    where = QPointF(desk.view.mapToGlobal(place.toPoint()))
    pad = QPointingDevice.primaryPointingDevice()
    event = QNativeGestureEvent(kind, pad, 2, place, place, where, value, QPointF(*delta))
    QApplication.sendEvent(desk.view, event)


def camera(desk):
    return desk.view.sight().camera


def under(desk, at=AT):
    return camera(desk).to_plan(*at)


def test_two_fingers_pull_the_paper_by_as_many_pixels_and_the_plan_stays(desk):
    before, plan = camera(desk), desk.plan
    wheel(desk, px=(13, -27), turned=(20, -40), phase=Phase.ScrollBegin)
    wheel(desk, px=(7, 7), turned=(10, 10), phase=Phase.ScrollUpdate)
    wheel(desk, phase=Phase.ScrollEnd)
    assert camera(desk) == before.panned(20, -20)
    assert desk.plan is plan


def test_with_ctrl_they_zoom_and_the_place_under_them_stays(desk):
    before, place = camera(desk), under(desk)
    wheel(desk, px=(0, 30), turned=(0, 60), keys=CTRL, phase=Phase.ScrollBegin)
    assert camera(desk).scale > before.scale
    assert under(desk) == pytest.approx(place)
    wheel(desk, px=(0, -30), turned=(0, -60), keys=CTRL, phase=Phase.ScrollUpdate)
    assert camera(desk).scale == pytest.approx(before.scale)


def test_momentum_keeps_the_meaning_the_scroll_began_with(desk):
    wheel(desk, px=(0, 10), turned=(0, 20), phase=Phase.ScrollBegin)
    before = camera(desk)
    wheel(desk, px=(0, 40), turned=(0, 80), keys=CTRL, phase=Phase.ScrollMomentum)  # Ctrl came too late
    assert camera(desk) == before.panned(0, 40)
    wheel(desk, px=(0, 10), turned=(0, 20), keys=CTRL, phase=Phase.ScrollBegin)
    before = camera(desk)
    wheel(desk, px=(0, 40), turned=(0, 80), keys=CTRL, phase=Phase.ScrollMomentum)
    assert camera(desk) == before  # a zoom ends with the fingers


def test_momentum_stops_when_something_else_begins_and_never_loses_the_plan(desk):
    wheel(desk, px=(0, 10), phase=Phase.ScrollBegin)
    desk.click(700, 500)
    before = camera(desk)
    wheel(desk, px=(0, 400), phase=Phase.ScrollMomentum)
    assert camera(desk) == before
    wheel(desk, px=(0, 10), phase=Phase.ScrollBegin)
    for _ in range(200):
        wheel(desk, px=(90, 90), phase=Phase.ScrollMomentum)
    box, seen = desk.view._state.everything(), desk.view.sight().visible
    assert box.left < seen.right and box.top < seen.bottom


def test_a_wheel_zooms_by_notches_pulls_with_shift_and_tilts_aside(desk):
    before, place = camera(desk), under(desk)
    wheel(desk, turned=(0, 120))
    assert camera(desk).scale == pytest.approx(before.scale * 1.2)
    assert under(desk) == pytest.approx(place)
    wheel(desk, turned=(0, -120), keys=CTRL)
    assert camera(desk).scale == pytest.approx(before.scale)
    wheel(desk, turned=(0, 120), keys=SHIFT)
    wheel(desk, turned=(-120, 0))
    assert camera(desk).left_mm == pytest.approx(before.left_mm)
    assert camera(desk).scale == pytest.approx(before.scale)
    wheel(desk, turned=(120, 0))
    assert camera(desk).left_mm == pytest.approx(before.left_mm - 60)


def test_one_flick_never_zooms_by_more_than_twice(desk):
    before = camera(desk)
    wheel(desk, turned=(0, 120 * 40))
    assert camera(desk).scale == pytest.approx(before.scale * 2)


def test_a_pinch_zooms_at_the_pointer_and_ends(desk):
    before, place = camera(desk), under(desk)
    gesture(desk, Gesture.BeginNativeGesture)
    gesture(desk, Gesture.ZoomNativeGesture, 0.25)
    gesture(desk, Gesture.EndNativeGesture)
    assert camera(desk).scale == pytest.approx(before.scale * 1.25)
    assert under(desk) == pytest.approx(place)
    gesture(desk, Gesture.RotateNativeGesture, 30.0)
    assert camera(desk).scale == pytest.approx(before.scale * 1.25)


def test_a_pinch_that_goes_back_comes_to_where_it_began(desk):
    before = camera(desk)
    gesture(desk, Gesture.BeginNativeGesture)
    for value in (0.5, 0.5, -0.5, -0.5, -0.5, 0.5):
        gesture(desk, Gesture.ZoomNativeGesture, value)
    gesture(desk, Gesture.EndNativeGesture)
    assert camera(desk).scale == pytest.approx(before.scale)
    gesture(desk, Gesture.ZoomNativeGesture, -3.0)  # no pinch closes by more than all there is
    assert camera(desk).scale > 0


@pytest.fixture(scope="module")
def pad():
    kinds, can = QInputDevice.DeviceType, QInputDevice.Capability
    return QPointingDevice(
        "pad", 77, kinds.TouchPad, QPointingDevice.PointerType.Finger, can.Scroll | can.Position, 2, 3
    )


def test_on_x11_a_pad_without_pixels_pulls_and_a_wheel_taken_for_one_zooms(desk, pad):
    before = camera(desk)
    wheel(desk, turned=(0, -15), device=pad, ms=1000)
    wheel(desk, turned=(0, -120), device=pad, ms=1020)  # as fast as a notch, by chance
    assert camera(desk) == before.panned(0, -67.5)
    wheel(desk, turned=(0, 120), device=pad, ms=9000)  # a mouse under XWayland
    assert camera(desk).scale == pytest.approx(before.scale * 1.2)


def test_on_wayland_the_device_says_nothing(desk, pad, monkeypatch):
    monkeypatch.setattr(QGuiApplication, "platformName", staticmethod(lambda: "wayland"))
    before = camera(desk)
    wheel(desk, turned=(0, 15), device=pad)  # a fine wheel: its events have neither phase nor pixels
    assert camera(desk).scale == pytest.approx(before.scale * 1.2 ** (15 / 120))
    before = camera(desk)
    wheel(desk, turned=(0, 30), px=(0, 12), phase=Phase.ScrollUpdate, device=pad)
    assert camera(desk) == before.panned(0, 12)


def test_a_double_tap_with_two_fingers_comes_closer_and_goes_back(desk):
    desk.view.show_all()
    whole, place = camera(desk), under(desk)
    gesture(desk, Gesture.SmartZoomNativeGesture, 1.0)
    assert camera(desk).scale == pytest.approx(whole.scale * 2.5)
    assert under(desk) == pytest.approx(place)
    gesture(desk, Gesture.SmartZoomNativeGesture, 1.0)
    assert camera(desk).scale == pytest.approx(whole.scale)


@pytest.fixture(scope="module")
def screen():
    return QTest.createTouchDevice(QInputDevice.DeviceType.TouchScreen)


def touch(desk, screen):
    return QTest.touchEvent(desk.view, screen, False)


def test_one_finger_on_bare_paper_pulls_it(desk, screen):
    before, plan = camera(desk), desk.plan
    start, finger = desk.px(700, 500), touch(desk, screen)
    finger.press(0, start).commit()
    for by in (10, 40, 80):
        finger.move(0, start + QPoint(-by, by // 2)).commit()
    finger.release(0, start + QPoint(-80, 40)).commit()
    assert camera(desk).left_mm == pytest.approx(before.left_mm + 80, abs=13)
    assert camera(desk).top_mm == pytest.approx(before.top_mm - 40, abs=13)
    assert desk.plan is plan and not desk.selection.ids


def test_a_tap_selects_and_a_tap_on_nothing_lets_go(desk, screen):
    for place, chosen in ((desk.px(100, 300), {BATTERY}), (desk.px(700, 500), set())):
        finger = touch(desk, screen)
        finger.press(0, place).commit()
        finger.release(0, place).commit()
        assert desk.selection.ids == chosen


def test_one_finger_on_a_part_moves_it(desk, screen):
    at, finger = desk.px(100, 300), touch(desk, screen)
    finger.press(0, at).commit()
    for by in (10, 30, 60):
        finger.move(0, at + QPoint(by, by)).commit()
    finger.release(0, at + QPoint(60, 60)).commit()
    part = desk.plan.parts[BATTERY]
    assert (part.x_mm, part.y_mm) == pytest.approx((160, 360), abs=5)


def test_two_fingers_zoom_about_their_middle_and_leave_what_the_first_began(desk, screen):
    before, plan = camera(desk), desk.plan
    one, two, fingers = desk.px(100, 300), desk.px(300, 300), touch(desk, screen)
    fingers.press(0, one).commit()
    fingers.move(0, one + QPoint(20, 0)).commit()  # a drag of the battery has begun
    assert desk.view.is_busy
    fingers.stationary(0).press(1, two).commit()
    middle = (one + QPoint(20, 0) + two) / 2
    place = under(desk, middle.toTuple())
    fingers.move(0, one - QPoint(40, 0)).move(1, two + QPoint(60, 0)).commit()
    assert camera(desk).scale == pytest.approx(before.scale * 300 / 180)
    assert under(desk, middle.toTuple()) == pytest.approx(place, abs=1)  # places are whole pixels
    assert not desk.view.is_busy
    fingers.release(0, one).release(1, two).commit()
    assert desk.plan is plan
