"""Paints figures on small plates beside parts and wires."""

from collections.abc import Iterable

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QPainter, QPen

from app.canvas.geometry import Box
from app.canvas.painting.label_room import LabelRoom
from app.canvas.painting.part_painter import shown_box
from app.canvas.painting.shades import with_alpha
from app.canvas.readings import short_reading
from app.canvas.sight import Sight
from app.theme.fonts import screen_font
from app.theme.words import lined

HIGH_PX = 17.0
MOST = 40
GAP_PX = 18.0  # leaves the label below its part in sight


def paint_readings(painter: QPainter, sight: Sight, ids: Iterable[str]) -> None:
    """Paint the figures of those parts and wires, greyed while they belong to an older plan."""
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setFont(screen_font(11))
    room, asked = LabelRoom(), list(ids)[:MOST]
    boxes = {one: _about(sight, one) for one in asked}
    for one, about in boxes.items():
        if about is not None and one in sight.plan.parts:
            room.take(about)  # of many that are asked for none is hidden by the figures of another
    for one, about in boxes.items():
        words = short_reading(sight, one, len(asked))
        if not words or about is None:
            continue
        width = painter.fontMetrics().horizontalAdvance(words) + 14.0
        place = room.find(about, width, lined(HIGH_PX))
        if place is not None:
            rect = QRectF(place.left, place.top, width, lined(HIGH_PX))
            _paint_plate(painter, sight, rect, words)
    painter.restore()


def _about(sight: Sight, one: str) -> Box | None:
    part = sight.plan.parts.get(one)
    if part is not None:
        box = shown_box(sight, part)
        return Box(box.left - 4, box.top - 6, box.right + 4, box.bottom + lined(GAP_PX))
    path = sight.geometry.paths.get(one)
    if not path:
        return None
    a, b = path[len(path) // 2 - 1], path[len(path) // 2]
    x, y = sight.camera.to_px((a[0] + b[0]) / 2, (a[1] + b[1]) / 2)
    return Box(x - 6, y - 6, x + 6, y + 6)


def _paint_plate(painter: QPainter, sight: Sight, rect: QRectF, words: str) -> None:
    shades = sight.shades
    painter.setPen(QPen(with_alpha(shades.board_edge, 0.7), 1))
    painter.setBrush(with_alpha(shades.raised, 0.95))
    painter.drawRoundedRect(rect, 4, 4)
    painter.setPen(shades.quiet if sight.stale else shades.ink)
    painter.drawText(rect, Qt.AlignmentFlag.AlignCenter, words)
