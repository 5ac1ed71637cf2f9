"""A drawing surface on an unseen screen, with hands and keys to work on it."""

import pytest
from PySide6.QtCore import QEvent, QPoint, QPointF, Qt
from PySide6.QtGui import QMouseEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from support.gesture_runs import KINDS, bench_plan

from app.canvas.camera import Camera
from app.canvas.view import PlanView
from app.selection import Selection
from app.session import Session
from wiring.plan.names import TerminalRef

LEFT, MIDDLE = Qt.MouseButton.LeftButton, Qt.MouseButton.MiddleButton
PLAIN, SHIFT, CTRL = (
    Qt.KeyboardModifier.NoModifier,
    Qt.KeyboardModifier.ShiftModifier,
    Qt.KeyboardModifier.ControlModifier,
)


class Desk:
    """The bench plan under a view at one pixel a millimetre; places are given in millimetres."""

    def __init__(self, qtbot, plan=None, scale=1.0, centre=(300, 220)):
        self.session = Session(plan if plan is not None else bench_plan(), KINDS)
        self.selection = Selection()
        self.view = PlanView(self.session, self.selection)
        qtbot.addWidget(self.view)
        self.view.resize(900, 640)
        self.view.show()
        qtbot.waitExposed(self.view)
        self.view.activateWindow()
        self.view.setFocus()
        self.look(scale, *centre)
        self._down = Qt.MouseButton.NoButton
        self.hints = []
        self.view.wished.connect(self.hints.append)

    def look(self, scale, x, y):
        self.view._look(Camera(scale, x - 450 / scale, y - 320 / scale))
        self.view._burst.stop()  # the hand rests: the next frame is sharp

    @property
    def plan(self):
        return self.session.plan

    def px(self, x, y) -> QPoint:
        return self.view.px(x, y)

    def move(self, x, y, keys=PLAIN):
        place = QPointF(self.px(x, y))
        where = QPointF(self.view.mapToGlobal(place.toPoint()))
        event = QMouseEvent(QEvent.Type.MouseMove, place, where, Qt.MouseButton.NoButton, self._down, keys)
        QApplication.sendEvent(self.view, event)

    def press(self, x, y, keys=PLAIN, button=LEFT):
        self._down = button
        QTest.mousePress(self.view, button, keys, self.px(x, y))

    def release(self, x, y, keys=PLAIN, button=LEFT):
        self._down = Qt.MouseButton.NoButton
        QTest.mouseRelease(self.view, button, keys, self.px(x, y))

    def click(self, x, y, keys=PLAIN):
        self.move(x, y)
        self.press(x, y, keys)
        self.release(x, y, keys)

    def drag(self, a, b, keys=PLAIN, button=LEFT):
        self.move(*a)
        self.press(*a, keys, button)
        for share in (0.3, 0.7, 1.0):
            self.move(a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share, keys)
        self.release(*b, keys, button)

    def key(self, key, keys=PLAIN):
        QTest.keyClick(self.view, key, keys)

    def terminal(self, part, name):
        x, y = self.view.sight().geometry.terminals.get(TerminalRef(part, name)).tolist()
        return x, y

    def shot(self):
        return self.view.grab().toImage()


@pytest.fixture
def desk(qtbot):
    return Desk(qtbot)
