"""Paints joists under the board's surface as they lie across it: light bars with a hatch."""

import math

from PySide6.QtCore import QLineF, QPointF, Qt
from PySide6.QtGui import QPainter, QPen, QPolygonF

from app.canvas.painting.shades import with_alpha
from app.canvas.sight import Sight
from wiring.plan.joist import Joist

LEAST_PX = 2.0
HATCH_PX = 9.0
HATCHED_FROM_PX = 5.0  # a narrower bar is plain


def paint_joists(painter: QPainter, sight: Sight) -> None:
    """Paint every joist of the plan."""
    if not sight.plan.joists:
        return
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    for joist in sight.plan.joists:
        paint_joist(painter, sight, joist)


def paint_joist(painter: QPainter, sight: Sight, joist: Joist) -> None:
    """Paint one joist."""
    shades = sight.shades
    bar = joist_bar(sight, joist)
    painter.setPen(QPen(with_alpha(shades.quiet, 0.45), 1))
    painter.setBrush(with_alpha(shades.quiet, 0.09))
    painter.drawPolygon(bar)
    a, b, d = bar.at(0), bar.at(1), bar.at(3)
    width, length = QLineF(a, d).length(), QLineF(a, b).length()
    if width < HATCHED_FROM_PX or length <= width:
        return
    along, across = (b - a) / length, d - a
    count = int((length - width) / HATCH_PX)
    rim = (length - width - count * HATCH_PX) / 2
    strokes = [
        QLineF(a + along * (rim + i * HATCH_PX), a + along * (rim + i * HATCH_PX + width) + across)
        for i in range(count + 1)
    ]
    painter.setPen(QPen(with_alpha(shades.quiet, 0.22), 1))
    painter.drawLines(strokes)


def joist_bar(sight: Sight, joist: Joist) -> QPolygonF:
    """Return the four corners of a joist in pixels."""
    a, b = QPointF(*sight.camera.to_px(*joist.start)), QPointF(*sight.camera.to_px(*joist.end))
    length = max(math.hypot(b.x() - a.x(), b.y() - a.y()), 1e-6)
    half = max(joist.width_mm * sight.camera.scale, LEAST_PX) / 2
    aside = QPointF(-(b.y() - a.y()) / length * half, (b.x() - a.x()) / length * half)
    return QPolygonF([a - aside, b - aside, b + aside, a + aside])


def paint_bar_preview(painter: QPainter, sight: Sight, joist: Joist) -> None:
    """Paint a joist while it is laid or moved."""
    painter.setPen(QPen(sight.shades.copper, 1.6))
    painter.setBrush(with_alpha(sight.shades.copper, 0.12))
    painter.drawPolygon(joist_bar(sight, joist))
    painter.setBrush(Qt.BrushStyle.NoBrush)
