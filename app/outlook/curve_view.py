"""The battery's curve on screen, with a reading under the pointer or moved by the arrow keys."""

from PySide6.QtCore import QEvent, QRectF, Qt
from PySide6.QtGui import QKeyEvent, QMouseEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from app.outlook.curve_painter import CurvePainter, fitted_on, frames, reading_at, when_words
from app.theme.look import Look
from app.theme.ringed import Ringed
from wiring.studies.outlook import Outlook

KEY_SHARE = 0.02  # of the whole course, for one press of an arrow key


class CurveView(Ringed):
    """Shows one outlook."""

    def __init__(self, look: Look, parent: QWidget) -> None:
        super().__init__(parent)
        self._look = look
        self._outlook: Outlook | None = None
        self.hover_hours: float | None = None
        self.setMouseTracking(True)
        self.setMinimumHeight(220)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAccessibleName("Course of the battery")
        look.changed.connect(self.update)

    def show_outlook(self, outlook: Outlook | None) -> None:
        """Show another course."""
        self._outlook = outlook
        self.hover_hours = None
        self.setAccessibleDescription(outlook.words if outlook else "")
        self.update()

    @property
    def reading_words(self) -> str:
        """What the reading says, for those who hear it."""
        if self._outlook is None or self.hover_hours is None:
            return ""
        reading = reading_at(self._outlook.curve, self.hover_hours)
        if reading is None:
            return ""
        light = "" if reading.lightness is None else f", light {reading.lightness:.0f} of 100"
        when = when_words(reading.days, fitted_on(self._outlook))
        return f"After {reading.hours:.0f} hours lit, {when}: {reading.volts:.2f} volts{light}."

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the course."""
        painter = QPainter(self)
        surfaces = self._look.surfaces
        if self._outlook is not None and self._outlook.curve.hours:
            CurvePainter(painter, self._outlook, surfaces, self._look.theme["lit"]).paint(
                QRectF(self.rect()), self.hover_hours
            )
        self.paint_ring(painter, surfaces.copper)
        painter.end()

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Read the course under the pointer."""
        if self._outlook is not None:
            f = frames(self._outlook, QRectF(self.rect()))
            self._read(f.hours.value(event.position().x()))

    def leaveEvent(self, event: QEvent) -> None:
        """Forget the pointer."""
        self.hover_hours = None
        self.update()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Move the reading along the course."""
        steps = {Qt.Key.Key_Left: -1, Qt.Key.Key_Right: 1}
        key = Qt.Key(event.key())
        if key not in steps or self._outlook is None or not self._outlook.curve.hours:
            super().keyPressEvent(event)
            return
        end = self._outlook.curve.hours[-1]
        self._read(min(max((self.hover_hours or 0.0) + steps[key] * end * KEY_SHARE, 0.0), end))

    def _read(self, hours: float) -> None:
        self.hover_hours = hours if hours >= 0 else None
        self.setAccessibleDescription(self.reading_words)
        self.update()
