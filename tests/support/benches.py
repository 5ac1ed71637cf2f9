"""A panel on the bench of a view without a screen; places are given in millimetres of its face."""

from PySide6.QtCore import QEvent, QPoint, QPointF, Qt
from PySide6.QtGui import QMouseEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from support.editing import KINDS, done
from support.surfaces import LEFT, PLAIN, Desk

from wiring.edits.connect import connect
from wiring.edits.panels import add_panel, change_panel
from wiring.edits.place_part import place
from wiring.plan.names import TerminalRef
from wiring.plan.plan import Plan

PANEL, SWITCH, BUTTON, LAMP, STRIP = "n1", "p2", "p3", "p4", "p5"


def panel_plan() -> Plan:
    """Return a panel of 200 by 100 mm with a switch, a button and an indicator, wired to a strip above it."""
    return done(
        Plan(),
        add_panel("Quay panel", 100, 300, 200, 100),
        change_panel(PANEL, spacing_mm=10.0),
        place(KINDS["toggle-on-off"], 140, 350),
        place(KINDS["push-to-make"], 190, 350),
        place(KINDS["indicator-red"], 240, 330),
        place(KINDS["terminal-strip-8"], 200, 100),
        connect(TerminalRef(SWITCH, "13"), TerminalRef(STRIP, "1"), colour="RD", size="22 AWG"),
        connect(TerminalRef(SWITCH, "14"), TerminalRef(STRIP, "2"), [(140, 200), (180, 200)], colour="GN"),
        connect(TerminalRef(BUTTON, "13"), TerminalRef(STRIP, "3"), colour="YE"),
        connect(TerminalRef(LAMP, "A"), TerminalRef(STRIP, "4"), colour="BU", size="18 AWG"),
        connect(TerminalRef(SWITCH, "14"), TerminalRef(BUTTON, "14"), colour="OG"),
    )


class BenchDesk(Desk):
    """A desk whose panel lies on the bench at four pixels a millimetre."""

    def __init__(self, qtbot, plan=None, *, opened=True):
        super().__init__(qtbot, plan if plan is not None else panel_plan(), centre=(200, 300))
        self.bench = self.view.bench.bench
        self.face = self.view.bench.face
        if opened:
            self.view.bench.open(PANEL)
            self.face.look(self.face.camera._replace(scale=4.0, left_px=50.0, top_px=80.0))

    @property
    def panel(self):
        return self.plan.panels[PANEL]

    def on_face(self, x, y) -> QPoint:
        sight = self.face.sight()
        px, py = sight.camera.to_px((x, y))
        return QPoint(round(px), round(py))

    def face_move(self, x, y, keys=PLAIN):
        place_px = QPointF(self.on_face(x, y))
        where = QPointF(self.face.mapToGlobal(place_px.toPoint()))
        event = QMouseEvent(QEvent.Type.MouseMove, place_px, where, Qt.MouseButton.NoButton, self._down, keys)
        QApplication.sendEvent(self.face, event)

    def face_press(self, x, y, keys=PLAIN):
        self._down = LEFT
        QTest.mousePress(self.face, LEFT, keys, self.on_face(x, y))

    def face_release(self, x, y, keys=PLAIN):
        self._down = Qt.MouseButton.NoButton
        QTest.mouseRelease(self.face, LEFT, keys, self.on_face(x, y))

    def face_click(self, x, y, keys=PLAIN):
        self.face_move(x, y)
        self.face_press(x, y, keys)
        self.face_release(x, y, keys)

    def face_double(self, x, y):
        QTest.mouseDClick(self.face, LEFT, PLAIN, self.on_face(x, y))

    def face_drag(self, a, b, keys=PLAIN):
        self.face_move(*a)
        self.face_press(*a, keys)
        for share in (0.4, 1.0):
            self.face_move(a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share, keys)
        self.face_release(*b, keys)

    def face_key(self, key, keys=PLAIN):
        QTest.keyClick(self.face, key, keys)

    def face_type(self, words):
        QTest.keyClicks(self.face.typing.line, words)
        QTest.keyClick(self.face.typing.line, Qt.Key.Key_Return)

    def where(self, part_id):
        part = self.plan.parts[part_id]
        return part.x_mm - self.panel.x_mm, part.y_mm - self.panel.y_mm
