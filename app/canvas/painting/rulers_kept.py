"""The rulers as images, drawn anew only when the camera has moved."""

from PySide6.QtCore import QLineF, QPointF, QRectF
from PySide6.QtGui import QPainter, QPen

from app.canvas.painting.ruler_strip import RulerStrip
from app.canvas.painting.rulers import WIDE_PX
from app.canvas.painting.soft_image import in_device_pixels
from app.canvas.sight import Sight
from app.theme.words import factor
from wiring.plan.places import Point


class KeptRulers:
    """Two strips, and the pointer's place on them."""

    def __init__(self) -> None:
        self._top, self._side = RulerStrip(across=True), RulerStrip(across=False)

    def paint(self, painter: QPainter, sight: Sight, pointer_px: Point | None) -> None:
        """Paint both rulers over everything else."""
        units, dark = sight.plan.habits.units, sight.shades.dark
        camera, look = sight.camera, (sight.ratio, units, dark, factor())
        self._top.draw(sight, (camera.scale, camera.left_mm, sight.width_px, *look))
        self._side.draw(sight, (camera.scale, camera.top_mm, sight.height_px, *look))
        top, side = self._top.image, self._side.image
        with in_device_pixels(painter, top):
            painter.drawImage(QPointF(0, 0), top)
        below = top.height()
        with in_device_pixels(painter, side):
            source = QRectF(0, below, side.width(), side.height() - below)
            painter.drawImage(QPointF(0, below), side, source)
        if pointer_px is not None:
            _paint_pointer(painter, sight, pointer_px)


def _paint_pointer(painter: QPainter, sight: Sight, pointer_px: Point) -> None:
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, False)
    painter.setPen(QPen(sight.shades.copper, 1))
    x, y = round(pointer_px[0]), round(pointer_px[1])
    if x > WIDE_PX:
        painter.drawLine(QLineF(x, 2, x, WIDE_PX - 1))
    if y > WIDE_PX:
        painter.drawLine(QLineF(2, y, WIDE_PX - 1, y))
