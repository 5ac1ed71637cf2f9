"""Paints wireways: under the wires a band as wide as the hole and its corners, over them its name."""

import math
from itertools import pairwise

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QFontMetricsF, QPainter, QPen, QPolygonF

from app.canvas.painting.shades import with_alpha
from app.canvas.sight import Sight
from app.theme.fonts import screen_font
from app.theme.words import lined
from wiring.plan.wireway import Wireway

LEAST_PX = 7.0
CORNER_PX = 2.6
FONT = (11, "regular")
NAME_HIGH_PX = 15.0
NAME_GROUND = 0.94  # how much of the wires under a name its ground covers


def paint_wireways(painter: QPainter, sight: Sight) -> None:
    """Paint the band of every wireway of the plan."""
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    for way in sight.plan.wireways.values():
        _paint_band(painter, sight, way, _places(sight, way))


def paint_wireway_names(painter: QPainter, sight: Sight) -> None:
    """Write the names of the wireways over the wires, so that none runs through a word."""
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    for way in sight.plan.wireways.values():
        _paint_name(painter, sight, way, _places(sight, way))


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


def _paint_name(painter: QPainter, sight: Sight, way: Wireway, places: list[QPointF]) -> None:
    """Write the name beside the longest stretch, where it has room."""
    a, b = max(pairwise(places), key=lambda ends: _length(*ends))
    font = screen_font(*FONT)
    width = QFontMetricsF(font).horizontalAdvance(way.name) + 8
    if width > _length(a, b):
        return
    half = max(way.hole_mm * sight.camera.scale, LEAST_PX) / 2
    painter.save()
    painter.translate((a + b) / 2)
    angle = math.degrees(math.atan2(b.y() - a.y(), b.x() - a.x()))
    painter.rotate(angle if -90 < angle <= 90 else angle + 180)
    rect = QRectF(-width / 2, half + 1, width, lined(NAME_HIGH_PX))
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(with_alpha(sight.shades.paper, NAME_GROUND))
    painter.drawRoundedRect(rect, 3, 3)
    painter.setFont(font)
    painter.setPen(sight.shades.quiet)
    painter.drawText(rect, Qt.AlignmentFlag.AlignCenter, way.name)
    painter.restore()


def _length(a: QPointF, b: QPointF) -> float:
    return math.hypot(b.x() - a.x(), b.y() - a.y())
