"""Wheel, touch pad and the rim of the view on the panel bench: all as on the plan."""

from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QObject, Qt
from PySide6.QtGui import QGuiApplication, QMouseEvent, QNativeGestureEvent, QWheelEvent

from app.bench.face_camera import FaceCamera
from app.canvas.hands.rim_pulling import RimPulling
from app.canvas.hands.scrolling import CLOSER, Scrolling
from wiring.plan.places import Point

if TYPE_CHECKING:
    from app.bench.face_view import FaceView

Type = QEvent.Type


class FaceScrolling(QObject):
    """Moves the camera of a view, whose events it sees first."""

    def __init__(self, view: "FaceView") -> None:
        super().__init__(view)
        self._view = view
        self._scrolling = Scrolling(lambda: view.camera, view.look, self._shows, self._smart_zoom)
        self._rim = RimPulling(view, self._carries, self._follow)
        view.installEventFilter(self)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Take what scrolls, and see where the pointer goes."""
        kind = event.type()
        if isinstance(event, QWheelEvent):
            self._scrolling.wheel(event)
            event.accept()
            return True
        if isinstance(event, QNativeGestureEvent):
            return self._scrolling.pinch(event)
        if isinstance(event, QMouseEvent):
            at = event.position().x(), event.position().y()
            if kind in (Type.MouseButtonPress, Type.MouseButtonDblClick):
                self._scrolling.stop()
                self._rim.press(*at)
            elif kind == Type.MouseMove:
                self._rim.move(*at)
            else:
                self._rim.stop()
        elif kind in (Type.Leave, Type.KeyPress, Type.FocusOut):
            self._rim.stop()
        return False

    def _carries(self) -> bool:
        shown = self._view.acting.preview
        return shown.begun and not shown.held and shown.landing is None

    def _follow(self, dx_px: float, dy_px: float) -> None:
        view = self._view
        there = view.camera.panned(dx_px, dy_px)
        if not self._shows(there):
            return
        view.look(there)
        keys = QGuiApplication.keyboardModifiers()
        free = bool(keys & Qt.KeyboardModifier.ControlModifier)
        adds = bool(keys & Qt.KeyboardModifier.ShiftModifier)
        view.acting.send(view.pointer_here("move")._replace(adds=adds, free=free))

    def _shows(self, camera: FaceCamera) -> bool:
        """Whether anything of the face lies in sight of a camera."""
        panel = self._view.panel
        high = panel.height_mm * camera.scale if panel is not None else 0.0
        right, bottom = camera.left_px + camera.width_mm * camera.scale, camera.top_px + high
        view = self._view
        return camera.left_px < view.width() and right > 0 and camera.top_px < view.height() and bottom > 0

    def _smart_zoom(self, at_px: Point) -> None:
        """Come closer to what lies there, or, when it is near already, show the whole face."""
        before = self._view.camera
        self._view.fit()
        if before.scale < self._view.camera.scale * CLOSER * 0.9:
            self._view.look(before.zoomed(CLOSER, at_px))
