"""Fingers on a touch screen: one does what the mouse does or pulls the bare paper, two zoom and pull."""

import math
from collections.abc import Callable

from PySide6.QtCore import QEvent, QPointF, Qt
from PySide6.QtGui import QMouseEvent, QTouchEvent
from PySide6.QtWidgets import QWidget

from app.canvas.camera import Camera
from app.canvas.gestures.pointer import DRAG_FROM_PX

REACH = 2.5  # a finger means what lies this many times farther away than a pointer may
TAP_PX = 3 * DRAG_FROM_PX
Type = QEvent.Type
Send = Callable[[QMouseEvent], None]


class Touching:
    """Turns touches into mouse events of the view, or into camera moves."""

    def __init__(
        self,
        view: QWidget,
        camera: Callable[[], Camera],
        look: Callable[[Camera], None],
        on_something: Callable[[float, float], bool],
        leave: Callable[[], object],
    ) -> None:
        self._view, self._camera, self._look = view, camera, look
        self._on_something, self._leave = on_something, leave
        self._mode = (
            ""  # "hand": as the mouse; "paper": pulls it; "pinch"; "over": waits for all to be lifted
        )
        self._from = QPointF()
        self._last: tuple[QPointF, float] = QPointF(), 0.0  # the middle of the fingers and how far apart

    @property
    def down(self) -> bool:
        """Whether a finger is on the screen, so that things are meant from farther away."""
        return bool(self._mode)

    def touch(self, event: QTouchEvent) -> None:
        """Take one event; every one is ours, or Qt would make mouse events of it as well."""
        places = [point.position() for point in event.points()]
        kind = event.type()
        if kind == Type.TouchCancel:
            self._leave()
            self._mode = ""
        elif kind == Type.TouchEnd:
            self._end(places[0] if places else self._from)
        elif len(places) > 1:
            self._pinch(places)
        elif kind == Type.TouchBegin:
            self._begin(places[0])
        elif places:
            self._move(places[0])

    def _begin(self, at: QPointF) -> None:
        self._mode = "hand"  # from here on things are meant from farther away
        self._from, self._last = at, (at, 0.0)
        if self._on_something(at.x(), at.y()):
            self._mouse(Type.MouseButtonPress, at)
        else:
            self._mode = "paper"

    def _move(self, at: QPointF) -> None:
        if self._mode == "hand":
            self._mouse(Type.MouseMove, at)
        elif self._mode == "paper":
            by = at - self._last[0]
            if self._last[1] or math.hypot(*(at - self._from).toTuple()) > TAP_PX:
                self._look(self._camera().panned(by.x(), by.y()))
                self._last = at, 1.0  # from now on it is no tap

    def _pinch(self, places: list[QPointF]) -> None:
        middle = (places[0] + places[1]) / 2
        apart = max(math.hypot(*(places[0] - places[1]).toTuple()), 1.0)
        if self._mode != "pinch":
            if self._mode == "hand":
                self._leave()  # the second finger says that the first meant nothing
            self._mode = "pinch"
        else:
            before, was = self._last
            by = middle - before
            camera = self._camera().zoomed(apart / was, before.toTuple())
            self._look(camera.panned(by.x(), by.y()))
        self._last = middle, apart

    def _end(self, at: QPointF) -> None:
        mode = self._mode
        if mode == "paper" and not self._last[1]:  # a tap on nothing
            self._mouse(Type.MouseButtonPress, at)
            mode = "hand"
        if mode == "hand":
            self._mouse(Type.MouseButtonRelease, at)
        self._mode = ""

    def _mouse(self, kind: QEvent.Type, at: QPointF) -> None:
        left, none = Qt.MouseButton.LeftButton, Qt.MouseButton.NoButton
        button = none if kind == Type.MouseMove else left
        held = none if kind == Type.MouseButtonRelease else left
        where = QPointF(self._view.mapToGlobal(at))
        event = QMouseEvent(kind, at, where, button, held, Qt.KeyboardModifier.NoModifier)
        send: dict[QEvent.Type, Send] = {
            Type.MouseButtonPress: self._view.mousePressEvent,
            Type.MouseMove: self._view.mouseMoveEvent,
            Type.MouseButtonRelease: self._view.mouseReleaseEvent,
        }
        send[kind](event)
