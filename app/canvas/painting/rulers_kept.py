"""The rulers as a pixmap, painted anew only when the camera has moved."""

from collections.abc import Hashable

from PySide6.QtCore import QLineF, QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPen, QPixmap

from app.canvas.painting.rulers import WIDE_PX, paint_ruler
from app.canvas.sight import Sight
from app.theme.words import factor
from wiring.plan.places import Point


class KeptRulers:
    """Two strips, and the pointer's place on them."""

    def __init__(self) -> None:
        self._key: Hashable = None
        self._top, self._side = QPixmap(), QPixmap()

    def paint(self, painter: QPainter, sight: Sight, pointer_px: Point | None) -> None:
        """Paint both rulers over everything else."""
        units, dark = sight.plan.habits.units, sight.shades.dark
        key = (sight.camera, sight.width_px, sight.height_px, sight.ratio, units, dark, factor())
        if key != self._key:
            self._top = _strip(sight, sight.width_px, WIDE_PX + 1, across=True)
            self._side = _strip(sight, WIDE_PX + 1, sight.height_px, across=False)
            self._key = key
        painter.drawPixmap(QPointF(0, 0), self._top)
        below = WIDE_PX + 1
        size = QRectF(0, below, WIDE_PX + 1, sight.height_px - below)
        source = QRectF(0, below * sight.ratio, size.width() * sight.ratio, size.height() * sight.ratio)
        painter.drawPixmap(size, self._side, source)
        if pointer_px is not None:
            _paint_pointer(painter, sight, pointer_px)


def _strip(sight: Sight, width_px: float, height_px: float, *, across: bool) -> QPixmap:
    pixmap = QPixmap(round(width_px * sight.ratio), round(height_px * sight.ratio))
    pixmap.setDevicePixelRatio(sight.ratio)
    pixmap.fill(Qt.GlobalColor.transparent)
    painter = QPainter(pixmap)
    paint_ruler(painter, sight, across=across)
    painter.end()
    return pixmap


def _paint_pointer(painter: QPainter, sight: Sight, pointer_px: Point) -> None:
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, False)
    painter.setPen(QPen(sight.shades.copper, 1))
    x, y = round(pointer_px[0]), round(pointer_px[1])
    if x > WIDE_PX:
        painter.drawLine(QLineF(x, 2, x, WIDE_PX - 1))
    if y > WIDE_PX:
        painter.drawLine(QLineF(2, y, WIDE_PX - 1, y))
