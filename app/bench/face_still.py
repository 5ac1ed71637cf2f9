"""Keeps the picture of a face while nothing on it changes, so that the pointer moves over it at no cost."""

from collections.abc import Callable

from PySide6.QtCore import QPointF
from PySide6.QtGui import QPainter, QPixmap

from app.bench.face_sight import FaceSight


class FaceStill:
    """The last picture, and what it was painted from."""

    def __init__(self) -> None:
        self._picture = QPixmap()
        self._same: tuple[object, ...] = ()  # by identity
        self._equal: tuple[object, ...] = ()  # by value
        self.painted = 0  # how often, for measurements

    def paint(
        self, painter: QPainter, sight: FaceSight, paint: Callable[[QPainter, FaceSight], None]
    ) -> None:
        """Lay down the picture, painted anew when it would look otherwise."""
        whole = sight.whole
        same = sight.plan, whole.plan, whole.positions, whole.figures, whole.shades, whole.kinds
        equal = sight.panel.id, sight.camera, sight.selected, sight.items, whole.width_px, whole.height_px
        fresh = len(self._same) == len(same) and all(a is b for a, b in zip(self._same, same, strict=True))
        if not fresh or self._equal != (*equal, whole.ratio):
            self._same, self._equal = same, (*equal, whole.ratio)
            self._picture = QPixmap(round(whole.width_px * whole.ratio), round(whole.height_px * whole.ratio))
            self._picture.setDevicePixelRatio(whole.ratio)
            still = QPainter(self._picture)
            paint(still, sight)
            still.end()
            self.painted += 1
        painter.drawPixmap(QPointF(0, 0), self._picture)
