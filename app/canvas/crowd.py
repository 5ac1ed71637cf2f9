"""Paints very many parts as plain rectangles, for a plan seen from so far that nothing else would show."""

from collections.abc import Sequence

from PySide6.QtCore import QRectF
from PySide6.QtGui import QPainter, QPen

from app.canvas.sight import Sight
from wiring.pictures.many_records import collector_paused
from wiring.plan.names import PartId
from wiring.plan.part import Part


class Crowd:
    """Keeps the rectangle of each part until it is another one: making it takes longer than painting."""

    def __init__(self) -> None:
        self._kept: dict[PartId, tuple[Part, QRectF]] = {}

    def paint(self, painter: QPainter, sight: Sight, ids: Sequence[PartId]) -> None:
        """Paint the rectangles of those parts."""
        painter.save()
        painter.setRenderHint(QPainter.RenderHint.Antialiasing, False)
        painter.scale(sight.camera.scale, sight.camera.scale)
        painter.translate(-sight.camera.left_mm, -sight.camera.top_mm)
        pen = QPen(sight.shades.ink, 1)
        pen.setCosmetic(True)
        painter.setPen(pen)
        painter.setBrush(sight.shades.raised)
        if len(self._kept) < len(ids) / 2:  # the first look at a plan
            with collector_paused():
                for part_id in ids:
                    self._rect(sight, part_id)
        painter.drawRects([self._rect(sight, part_id) for part_id in ids])
        painter.restore()

    def _rect(self, sight: Sight, part_id: PartId) -> QRectF:
        part = sight.plan.parts[part_id]
        known = self._kept.get(part_id)
        if known is None or known[0] is not part:
            left, top, right, bottom = sight.geometry.parts.get(part_id)[:4].tolist()
            known = self._kept[part_id] = (part, QRectF(left, top, right - left, bottom - top))
        return known[1]
