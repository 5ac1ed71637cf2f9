"""The battery's curve on screen, with a reading under the pointer or moved by the arrow keys."""

from PySide6.QtCore import QEvent, QRectF, Qt
from PySide6.QtGui import QColor, QKeyEvent, QMouseEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from app.outlook.course_frames import HOURS, along, frames, reading_at, when_words
from app.outlook.curve_painter import CurvePainter
from app.theme.look import Look
from app.theme.ringed import Ringed
from app.theme.sizes import chart_height
from wiring.studies.outlook import Outlook

LEAST_HEIGHT = 220
KEY_SHARE = 0.02  # of the whole course, for one press of an arrow key


class CurveView(Ringed):
    """Shows one outlook."""

    def __init__(self, look: Look, parent: QWidget) -> None:
        super().__init__(parent)
        self._look = look
        self._outlook: Outlook | None = None
        self.hover: float | None = None  # in what lies along the foot
        self.what = HOURS
        self.setMouseTracking(True)
        chart_height(self, LEAST_HEIGHT)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAccessibleName("Course of the battery")
        look.changed.connect(self.update)

    def show_outlook(self, outlook: Outlook | None) -> None:
        """Show another course."""
        self._outlook = outlook
        self.hover = None
        self.setAccessibleDescription(outlook.words if outlook else "")
        self.update()

    def show_along(self, what: str) -> None:
        """Lay hours lit or the calendar along the foot."""
        self.what, self.hover = what, None
        self.update()

    def paint_on(self, painter: QPainter, room: QRectF) -> None:
        """Paint the course into a room, on the ground it has on screen."""
        painter.fillRect(room, QColor(self._look.surfaces.paper))
        if self._outlook is not None and self._outlook.curve.hours:
            CurvePainter(painter, self._outlook, self._look.surfaces, self.what).paint(room, None)

    @property
    def reading_words(self) -> str:
        """What the reading says, for those who hear it."""
        if self._outlook is None or self.hover is None:
            return ""
        reading = reading_at(self._outlook.curve, self.hover, self.what)
        if reading is None:
            return ""
        light = "" if reading.lightness is None else f", light {reading.lightness:.0f} of 100"
        when = when_words(reading.days, self._outlook.counted_from)
        return f"After {reading.hours:.0f} hours lit, {when}: {reading.volts:.2f} volts{light}."

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the course."""
        painter = QPainter(self)
        surfaces = self._look.surfaces
        if self._outlook is not None and self._outlook.curve.hours:
            CurvePainter(painter, self._outlook, surfaces, self.what).paint(QRectF(self.rect()), self.hover)
        self.paint_ring(painter, surfaces.copper)
        painter.end()

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Read the course under the pointer."""
        if self._outlook is not None:
            f = frames(self._outlook, QRectF(self.rect()), self.what)
            self._read(f.across.value(event.position().x()))

    def leaveEvent(self, event: QEvent) -> None:
        """Forget the pointer."""
        self.hover = None
        self.update()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Move the reading along the course."""
        steps = {Qt.Key.Key_Left: -1, Qt.Key.Key_Right: 1}
        key = Qt.Key(event.key())
        if key not in steps or self._outlook is None or not self._outlook.curve.hours:
            super().keyPressEvent(event)
            return
        end = along(self._outlook.curve, self.what)[-1]
        self._read(min(max((self.hover or 0.0) + steps[key] * end * KEY_SHARE, 0.0), end))

    def _read(self, place: float) -> None:
        self.hover = place if place >= 0 else None
        self.setAccessibleDescription(self.reading_words)
        self.update()
