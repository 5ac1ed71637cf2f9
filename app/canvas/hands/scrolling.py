"""Wheel, touch pad and pinch on the drawing surface: pull the paper, or zoom where the pointer is."""

from collections.abc import Callable
from typing import Generic, Protocol, Self, TypeVar

from PySide6.QtCore import QEvent, QPointF, Qt
from PySide6.QtGui import QGuiApplication, QInputDevice, QNativeGestureEvent, QTouchEvent, QWheelEvent

from wiring.plan.places import Point

NOTCH = 120.0  # eighths of a degree of one click of a mouse wheel
ZOOM_PER_NOTCH = 1.2
MOST_AT_ONCE = 2.0  # one event never zooms by more, so that a flick does not lose the place
PX_PER_EIGHTH = 0.5  # what a wheel that knows no pixels pulls
SAME_SCROLL_MS = 400  # scroll events of a pad that follow each other sooner belong together
LEAST_SPREAD = 0.05  # of the fingers of a pinch, as a share of that at its beginning
CLOSER = 2.5  # what a double tap with two fingers zooms by
Kind = Qt.NativeGestureType


class Movable(Protocol):
    """A camera, of the plan or of a face."""

    def zoomed(self, factor: float, at_px: Point) -> Self:
        """Return it nearer or farther; what is under one pixel stays there."""

    def panned(self, dx_px: float, dy_px: float) -> Self:
        """Return it after the paper was pulled."""


C = TypeVar("C", bound=Movable)


class Scrolling(Generic[C]):
    """Turns wheels and native gestures into camera moves.

    What a scroll means is settled when the fingers come down: Ctrl pressed while it runs out changes nothing.
    """

    def __init__(
        self,
        camera: Callable[[], C],
        look: Callable[[C], None],
        shows: Callable[[C], bool],
        smart: Callable[[Point], None],
    ) -> None:
        self._camera, self._look, self._shows, self._smart = camera, look, shows, smart
        self._zooms = False  # what the scroll that is under way means
        self._coasts = True  # whether its momentum still counts
        self._spread = 1.0  # of the fingers of a pinch, as a share of that at its beginning
        self._fingers_ms = -SAME_SCROLL_MS  # when fingers scrolled last, on the clock of the events

    def stop(self) -> None:
        """Let what is left of a scroll run out without moving anything: something else has begun."""
        self._coasts = False

    def wheel(self, event: QWheelEvent) -> None:
        """Zoom with a wheel; two fingers on a touch pad pull the paper, with Ctrl they zoom."""
        ctrl = bool(event.modifiers() & Qt.KeyboardModifier.ControlModifier)
        phase = event.phase()
        if phase in (Qt.ScrollPhase.ScrollBegin, Qt.ScrollPhase.NoScrollPhase):
            self._zooms, self._coasts = ctrl, True
        is_coasting = phase == Qt.ScrollPhase.ScrollMomentum
        if is_coasting and (self._zooms or not self._coasts):
            return
        if self._by_fingers(event) and not self._zooms:
            by = QPointF(event.pixelDelta())
            self._pull(by if not by.isNull() else QPointF(event.angleDelta()) * PX_PER_EIGHTH, is_coasting)
            return
        across, down = event.angleDelta().x(), event.angleDelta().y()
        shift = bool(event.modifiers() & Qt.KeyboardModifier.ShiftModifier)
        if not self._zooms and (shift or not down):  # a wheel that tilts pulls the paper aside
            self._pull(QPointF((down or across) * PX_PER_EIGHTH, 0), is_coasting)
        else:
            self._zoom(ZOOM_PER_NOTCH ** ((down or across) / NOTCH), event.position())

    def pinch(self, event: QNativeGestureEvent) -> bool:
        """Zoom or pull with two fingers; False for a gesture that means nothing here."""
        kind = event.gestureType()
        if kind in (Kind.BeginNativeGesture, Kind.EndNativeGesture):
            self.stop()
            self._spread = 1.0
        elif kind == Kind.ZoomNativeGesture:
            # Each value is to be added, so that fingers that go back come to where they began.
            before, self._spread = self._spread, max(self._spread + event.value(), LEAST_SPREAD)
            self._zoom(self._spread / before, event.position())
        elif kind == Kind.PanNativeGesture:
            self._pull(event.delta(), is_coasting=False)
        elif kind == Kind.SmartZoomNativeGesture:
            self._smart((event.position().x(), event.position().y()))
        else:
            return False
        return True

    def _by_fingers(self, event: QWheelEvent) -> bool:
        """Whether a scroll comes from a touch pad.

        Phases and pixels tell so for certain. Else the device does, but wherever Wayland is below, Qt takes a
        mouse for a touch pad too: whole notches are a wheel's, unless fingers scrolled just now.
        """
        fingers = event.phase() != Qt.ScrollPhase.NoScrollPhase or not event.pixelDelta().isNull()
        if not fingers and _is_pad(event):
            soon = event.timestamp() - self._fingers_ms < SAME_SCROLL_MS
            fingers = soon or bool(event.angleDelta().x() % NOTCH or event.angleDelta().y() % NOTCH)
        if fingers:
            self._fingers_ms = event.timestamp()
        return fingers

    def _pull(self, by: QPointF, is_coasting: bool) -> None:
        there = self._camera().panned(by.x(), by.y())
        if is_coasting and not self._shows(there):  # momentum never throws the plan out of sight
            self.stop()
            return
        self._look(there)

    def _zoom(self, factor: float, at: QPointF) -> None:
        factor = min(max(factor, 1 / MOST_AT_ONCE), MOST_AT_ONCE)
        self._look(self._camera().zoomed(factor, (at.x(), at.y())))


def _is_pad(event: QWheelEvent) -> bool:
    """Whether the device is said to be a touch pad, where that means anything."""
    device = event.device()
    is_said = device is not None and device.type() == QInputDevice.DeviceType.TouchPad
    return is_said and not QGuiApplication.platformName().startswith("wayland")


def is_touch(event: QEvent) -> bool:
    """Whether an event tells of fingers on a touch screen."""
    return isinstance(event, QTouchEvent) and event.device().type() == QInputDevice.DeviceType.TouchScreen
