"""Paints where the keyboard is on the plan: a ring round a corner it holds, a cross where it steers."""

from PySide6.QtCore import QLineF, QPointF, Qt
from PySide6.QtGui import QPainter, QPen

from app.canvas.painting.shades import Shades
from wiring.plan.places import Point

RING_PX, ARM_PX, GAP_PX = 9.0, 14.0, 4.0


def paint_grip_ring(painter: QPainter, shades: Shades, at_px: Point) -> None:
    """Paint a ring round a corner, light within dark, so that it shows on any ground."""
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    for colour, width in ((shades.paper, 5.0), (shades.copper, 2.5)):
        painter.setPen(QPen(colour, width))
        painter.drawEllipse(QPointF(*at_px), RING_PX, RING_PX)


def paint_steered(painter: QPainter, shades: Shades, at_px: Point) -> None:
    """Paint an open cross at a pixel."""
    x, y = at_px
    arms = [
        QLineF(x + dx * GAP_PX, y + dy * GAP_PX, x + dx * ARM_PX, y + dy * ARM_PX)
        for dx, dy in ((1, 0), (-1, 0), (0, 1), (0, -1))
    ]
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, False)
    for colour, width in ((shades.paper, 4.0), (shades.copper, 2.0)):
        painter.setPen(QPen(colour, width))
        painter.drawLines(arms)
