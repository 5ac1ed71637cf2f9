"""Wheel, touch pad and pinch over a picture: all as on the plan."""

from typing import TYPE_CHECKING, NamedTuple

from PySide6.QtCore import QEvent, QObject, QPointF
from PySide6.QtGui import QNativeGestureEvent, QWheelEvent

from app.canvas.hands.scrolling import CLOSER, Scrolling
from wiring.plan.places import Point

if TYPE_CHECKING:
    from app.drawing.picture_view import PictureView


class PictureCamera(NamedTuple):
    """How large a picture is shown, between which bounds, and where its left top corner lies."""

    scale: float  # pixels per mm
    left_px: float
    top_px: float
    smallest: float
    largest: float

    def zoomed(self, factor: float, at_px: Point) -> "PictureCamera":
        """Return it nearer or farther; what is under one pixel stays there."""
        scale = min(max(self.scale * factor, self.smallest), self.largest)
        grown = scale / self.scale
        left = at_px[0] + (self.left_px - at_px[0]) * grown
        top = at_px[1] + (self.top_px - at_px[1]) * grown
        return self._replace(scale=scale, left_px=left, top_px=top)

    def panned(self, dx_px: float, dy_px: float) -> "PictureCamera":
        """Return it after the picture was pulled."""
        return self._replace(left_px=self.left_px + dx_px, top_px=self.top_px + dy_px)


class PictureScrolling(QObject):
    """Moves the camera of a view, whose events it sees first."""

    def __init__(self, view: "PictureView") -> None:
        super().__init__(view)
        self._view = view
        self._scrolling = Scrolling(lambda: view.camera, view.look_from, self._shows, self._smart_zoom)
        view.installEventFilter(self)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Take what scrolls, where there is a picture."""
        if isinstance(event, QWheelEvent):
            if self._view.shows_any:
                self._scrolling.wheel(event)
            event.accept()
            return True
        if isinstance(event, QNativeGestureEvent):
            return self._view.shows_any and self._scrolling.pinch(event)
        if event.type() == QEvent.Type.MouseButtonPress:
            self._scrolling.stop()
        return False

    def _shows(self, camera: PictureCamera) -> bool:
        """Whether anything of the picture lies in sight of a camera."""
        view = self._view
        width, height = view.size_mm
        right, bottom = camera.left_px + width * camera.scale, camera.top_px + height * camera.scale
        return camera.left_px < view.width() and right > 0 and camera.top_px < view.height() and bottom > 0

    def _smart_zoom(self, at_px: Point) -> None:
        """Come closer to what lies there, or, when it is near already, show the whole picture."""
        before = self._view.camera
        self._view.show_all()
        if before.scale < self._view.camera.scale * CLOSER * 0.9:
            self._view.look_from(before)
            self._view.zoom(CLOSER, QPointF(*at_px))
