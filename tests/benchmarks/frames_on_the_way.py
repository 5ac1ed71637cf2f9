"""Times every frame of a walk over a large plan: zooming in and out, pulling the paper, settling."""

import sys
from collections.abc import Iterator
from statistics import quantiles
from time import perf_counter, sleep, thread_time

from PySide6.QtCore import QEvent, QObject, QPoint, QPointF, Qt
from PySide6.QtGui import QMouseEvent, QWheelEvent
from PySide6.QtWidgets import QApplication

from app.canvas.view import PlanView
from app.selection import Selection
from app.session import Session
from wiring.catalogue.shelf import builtin_kinds
from wiring.plan.plan import Plan

PLAIN, SHIFT = Qt.KeyboardModifier.NoModifier, Qt.KeyboardModifier.ShiftModifier
MIDDLE, NONE = Qt.MouseButton.MiddleButton, Qt.MouseButton.NoButton
EVERY_SEC = 0.012  # from one event of the hand to the next
SETTLE_SEC = 0.3
SHORT_MS = 1.0  # a turn of the event loop that takes no longer is not felt
TURNS = 20  # of the event loop in which a frame comes if any does
CENTRE = QPointF(800, 500)
clock = thread_time if "--cpu" in sys.argv else perf_counter


class Frames(QObject):
    """Counts what a hand waits for: from its event to the painted frame, and every turn of the event loop."""

    def __init__(self, view: PlanView) -> None:
        super().__init__()
        self.times_ms: list[float] = []
        self._view, self._painted = view, False
        view.installEventFilter(self)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Note each paint event."""
        self._painted |= event.type() == QEvent.Type.Paint
        return False

    def act(self, event: QEvent) -> None:
        """Post an event as the desktop does, wait for its frame, then let the time to the next one pass.

        A button that goes down or up asks for no frame.
        """
        self._painted, began = False, clock()
        turns = TURNS if event.type() in (QEvent.Type.MouseMove, QEvent.Type.Wheel) else 1
        QApplication.postEvent(self._view, event)
        for _ in range(turns):
            QApplication.processEvents()
            if self._painted:
                break
        self.times_ms.append((clock() - began) * 1000)
        self.rest(EVERY_SEC)

    def rest(self, seconds: float) -> None:
        """Let timers fire; each turn of the event loop that paints or takes long counts as a frame."""
        until = perf_counter() + seconds
        while perf_counter() < until:
            self._painted, began = False, clock()
            QApplication.processEvents()
            took = (clock() - began) * 1000
            if self._painted or took > SHORT_MS:
                self.times_ms.append(took)
            sleep(0.0005)


def walk_ms(plan: Plan) -> tuple[float, float]:
    """Return the worst frame of a walk over a plan and the 95th percentile, in milliseconds."""
    view = PlanView(Session(plan, builtin_kinds()), Selection())
    view.resize(1600, 1000)
    view.show()
    frames = Frames(view)
    frames.rest(SETTLE_SEC)
    frames.times_ms.clear()  # the first look at a plan is no frame on the way
    for event in _hand():
        if event is None:
            frames.rest(SETTLE_SEC)
        else:
            frames.act(event)
    view.removeEventFilter(frames)
    view.close()
    return max(frames.times_ms), quantiles(frames.times_ms, n=20)[-1]


def _hand() -> Iterator[QEvent | None]:
    """Yield what a hand does; None where it rests."""
    for notches in (6, 5, 4, 5):  # 20 notches in, with pulls across the plan on the way
        yield from (_wheel(120) for _ in range(notches))
        yield None
        yield from _pull(30, -9, -4)
        yield None
        yield from _pull(30, 24, 10)
        yield None
        yield from (_wheel(turn, SHIFT) for turn in (120, 120, -120, -120, -120))
        yield None
    yield from (_wheel(-120) for _ in range(20))
    yield None
    yield from (_wheel(turn) for turn in (120, 120, 120, -120, 120, -120, -120, -120))
    yield None


def _pull(steps: int, dx: float, dy: float) -> Iterator[QEvent]:
    yield _mouse(QEvent.Type.MouseButtonPress, CENTRE, MIDDLE, MIDDLE)
    for n in range(1, steps + 1):
        yield _mouse(QEvent.Type.MouseMove, CENTRE + QPointF(dx * n, dy * n), NONE, MIDDLE)
    yield _mouse(QEvent.Type.MouseButtonRelease, CENTRE + QPointF(dx * steps, dy * steps), MIDDLE, NONE)


def _mouse(kind: QEvent.Type, place: QPointF, button: Qt.MouseButton, buttons: Qt.MouseButton) -> QMouseEvent:
    return QMouseEvent(kind, place, place, button, buttons, PLAIN)


def _wheel(turned: int, keys: Qt.KeyboardModifier = PLAIN) -> QWheelEvent:
    return QWheelEvent(
        CENTRE, CENTRE, QPoint(), QPoint(0, turned), NONE, keys, Qt.ScrollPhase.NoScrollPhase, False
    )
