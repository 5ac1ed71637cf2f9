"""Paints wireways under the wires: a band as wide as the hole, and its corners."""

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPen, QPolygonF

from app.canvas.painting.shades import with_alpha
from app.canvas.sight import Sight
from wiring.plan.wireway import Wireway

LEAST_PX = 7.0
CORNER_PX = 2.6


def paint_wireways(painter: QPainter, sight: Sight) -> None:
    """Paint the band of every wireway of the plan."""
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    for way in sight.plan.wireways.values():
        _paint_band(painter, sight, way, _places(sight, way))


def _places(sight: Sight, way: Wireway) -> list[QPointF]:
    return [QPointF(*sight.camera.to_px(*p)) for p in way.points]


def _paint_band(painter: QPainter, sight: Sight, way: Wireway, places: list[QPointF]) -> None:
    shades = sight.shades
    band = QPen(with_alpha(shades.quiet, 0.20), max(way.hole_mm * sight.camera.scale, LEAST_PX))
    band.setCapStyle(Qt.PenCapStyle.RoundCap)
    band.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
    middle = QPen(with_alpha(shades.quiet, 0.55), 1)
    middle.setDashPattern([6, 5])
    painter.setBrush(Qt.BrushStyle.NoBrush)
    for pen in (band, middle):
        painter.setPen(pen)
        painter.drawPolyline(QPolygonF(places))
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(with_alpha(shades.quiet, 0.75))
    for place in places:
        painter.drawRect(QRectF(place.x() - CORNER_PX, place.y() - CORNER_PX, 2 * CORNER_PX, 2 * CORNER_PX))
