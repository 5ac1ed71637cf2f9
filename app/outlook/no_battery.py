"""What the battery view shows while the plan has no battery: a course yet to come, drawn faintly."""

import math

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPen, QPolygonF
from PySide6.QtWidgets import QWidget

from app.outlook.chart_pen import ChartPen
from app.theme.look import Look

MARGIN = 40.0
MOST_HIGH = 420.0
POINTS = 60


class NoBattery(QWidget):
    """Nothing to read, only to look at."""

    def __init__(self, look: Look, parent: QWidget) -> None:
        super().__init__(parent)
        self._look = look
        look.changed.connect(self.update)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the grid and the fall of some battery."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        pen = ChartPen(painter, self._look.surfaces)
        room = QRectF(self.rect()).adjusted(MARGIN / 2, MARGIN, -MARGIN, -MARGIN)
        room.setHeight(min(room.height(), MOST_HIGH))
        painter.setPen(QPen(pen.faint(pen.s.ink, 22), 1))
        for n in range(6):
            y = room.top() + room.height() * n / 5
            painter.drawLine(QPointF(room.left(), y), QPointF(room.right(), y))
        course = QPolygonF(
            [
                QPointF(
                    room.left() + room.width() * n / POINTS, room.top() + room.height() * _fallen(n / POINTS)
                )
                for n in range(POINTS + 1)
            ]
        )
        line = QPen(pen.faint(pen.s.copper, 110), 2)
        line.setStyle(Qt.PenStyle.DashLine)
        painter.setPen(line)
        painter.drawPolyline(course)
        painter.end()


def _fallen(share: float) -> float:
    """Return how far a battery's volts have fallen after that share of its life: a picture, no forecast."""
    return 0.1 + 0.16 * (1 - math.exp(-share * 14)) + 0.3 * share + 0.34 * share**9
