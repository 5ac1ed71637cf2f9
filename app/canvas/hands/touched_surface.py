"""Hands on the drawing surface: mouse, pen, touch pad, fingers, and parts dragged in from the tray."""

from PySide6.QtCore import QEvent, Qt, QTimer
from PySide6.QtGui import (
    QDragEnterEvent,
    QDragMoveEvent,
    QDropEvent,
    QMouseEvent,
    QNativeGestureEvent,
    QTouchEvent,
    QWheelEvent,
)
from PySide6.QtWidgets import QWidget

from app.canvas.camera import Camera
from app.canvas.gestures.place import place_part
from app.canvas.gestures.throw import thrown_by_press
from app.canvas.hands.rim_pulling import RimPulling
from app.canvas.hands.scrolling import CLOSER, Scrolling, is_touch
from app.canvas.hands.touching import REACH, Touching
from app.canvas.painting.mark_painter import selection_box
from app.canvas.surface import Surface
from app.selection import Selection
from app.session import Session
from wiring.plan.places import Point

MIME = "application/x-underboard-kind"
RESTS_MS = 60  # a pointer that only passes is over a lever for less


class TouchedSurface(Surface):
    """Gives what hands do to the gesture that runs, or begins one."""

    def __init__(self, session: Session, selection: Selection, parent: QWidget | None = None) -> None:
        super().__init__(session, selection, parent)
        self._scrolling = Scrolling(self._camera, self._look, self._shows_any, self._smart_zoom)
        self._touching = Touching(self, self._camera, self._look, self._takes, self._acting.cancel)
        self.setAttribute(Qt.WidgetAttribute.WA_AcceptTouchEvents)
        self._rim = RimPulling(self, lambda: self._pointing.carries, self._pull_at_rim)
        self._rests = QTimer(self)  # runs while the pointer has just come over a lever
        self._rests.setSingleShot(True)
        self._rests.setInterval(RESTS_MS)
        self._rests.timeout.connect(self._foresee)

    def by_fingers(self, event: QEvent) -> bool:
        """Take touches and what a touch pad tells beside scrolling; False for any other event."""
        if is_touch(event) and isinstance(event, QTouchEvent):
            if event.type() == QEvent.Type.TouchBegin:
                self._scrolling.stop()
                self.setFocus(Qt.FocusReason.MouseFocusReason)
            self._reach = REACH
            self._touching.touch(event)
            self._reach = REACH if self._touching.down else 1.0
            event.accept()
            return True
        return isinstance(event, QNativeGestureEvent) and self._scrolling.pinch(event)

    def _takes(self, x_px: float, y_px: float) -> bool:
        """Whether a finger there means a thing or goes on with a tool, rather than pulling the paper."""
        hit = self._hit(x_px, y_px)
        return self._acting.runs or bool(hit.id or hit.terminal or hit.handle or hit.hold or hit.area)

    def _shows_any(self, camera: Camera) -> bool:
        """Whether anything of the plan lies in sight of a camera; an empty plan has nothing to lose."""
        box, seen = self._state.everything(), camera.visible(self.width(), self.height())
        return box is None or (
            box.left < seen.right
            and seen.left < box.right
            and box.top < seen.bottom
            and seen.top < box.bottom
        )

    def _pull_at_rim(self, dx_px: float, dy_px: float) -> None:
        """Pull the paper under what is in hand, but never the whole plan out of sight."""
        if self._shows_any(self._camera().panned(dx_px, dy_px)):
            self._pointing.follow(dx_px, dy_px)

    def _smart_zoom(self, at_px: Point) -> None:
        """Come closer to what lies there, or, when it is near already, show everything."""
        before = self._camera()
        self.show_all()
        if before.scale < self._camera().scale * CLOSER * 0.9:
            self._look(before.zoomed(CLOSER, at_px))

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Begin a gesture, go on with it, or pull the paper."""
        self._scrolling.stop()
        self._rim.press(event.position().x(), event.position().y())
        self._pointing.press(event, self._turn_centre())
        self._shape_cursor()
        self._foresee(adds=bool(event.modifiers() & Qt.KeyboardModifier.ShiftModifier))

    def _foresee(self, *, adds: bool = False) -> None:
        """Tell what a press on the lever under the pointer will do, or letting go where one is pressed."""
        self._rests.stop()
        acting, hit = self._acting, self._hovered
        if acting.goes_back is not None:
            self._session.foresee(*acting.goes_back)
        elif acting.tool == "select" and hit is not None and hit.lever and not adds:
            thrown = thrown_by_press(self._around(), hit.part)
            if thrown is not None:
                self._session.foresee(*thrown)

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        """Bend a wire, show a part in its circuit."""
        one = "" if event.button() != Qt.MouseButton.LeftButton else self._opens(event)
        if one:
            self.opened.emit(one)
        else:
            self._pointing.double(event, self._turn_centre())

    def _opens(self, event: QMouseEvent) -> str:
        """Return the part that a double click opens; "" where it means something else, as on a lever."""
        hit = self._hit(event.position().x(), event.position().y())
        is_free = hit.terminal is None and not (hit.lever or hit.handle or self._acting.runs)
        return hit.part if is_free else ""

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Go on with the gesture and see what is under the pointer."""
        self._pointing.move(event)
        self._rim.move(event.position().x(), event.position().y())
        if not self._pointing.pans:
            self._hover(self._hit(event.position().x(), event.position().y()))
            if self._hovered is not None and self._hovered.lever and not self._acting.runs:
                self._rests.start()
            else:
                self._rests.stop()
        self._shape_cursor()
        self.update()

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """End the gesture."""
        self._rim.stop()
        self._pointing.release(event)
        self._shape_cursor()

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Zoom, or pull the paper."""
        self._scrolling.wheel(event)
        event.accept()

    def leaveEvent(self, event: QEvent) -> None:
        """Forget what was under the pointer."""
        self._rim.stop()
        self._pointing.at_px = None
        self._hover(None)
        self.update()

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        """Take a part from the tray in hand."""
        if event.mimeData().hasFormat(MIME):
            kind = self._session.kinds.get(
                bytes(event.mimeData().data(MIME).data()).decode("utf-8", "replace")
            )
            if kind is not None:
                self._acting.begin(place_part(self._around(), kind))
                event.acceptProposedAction()

    def dragMoveEvent(self, event: QDragMoveEvent) -> None:
        """Let its ghost follow."""
        self._pointing.from_tray("move", event.position())
        self._rim.move(event.position().x(), event.position().y())
        event.acceptProposedAction()

    def dragLeaveEvent(self, event: QEvent) -> None:
        """Let it go."""
        self._rim.stop()
        self._acting.cancel()

    def dropEvent(self, event: QDropEvent) -> None:
        """Set it down."""
        self._rim.stop()
        self._pointing.from_tray("press", event.position())
        event.acceptProposedAction()
        self.setFocus()

    def _turn_centre(self) -> Point | None:
        box = selection_box(self.sight(), self._selection.ids)
        if box is None:
            return None
        return self._state.camera.to_plan((box.left + box.right) / 2, (box.top + box.bottom) / 2)
