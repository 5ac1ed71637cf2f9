"""The picture of all that stands still, kept as a pixmap until what it shows is another thing."""

from collections.abc import Hashable
from time import perf_counter

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QPainter, QPixmap

from app.canvas.area_names import area_names, paint_area_names
from app.canvas.camera import Camera
from app.canvas.flag_painter import flag_boxes, paint_flags
from app.canvas.halo_painter import paint_halos
from app.canvas.harness_painter import harness_counts, paint_counts, paint_harnesses
from app.canvas.label_painter import LabelPainter
from app.canvas.part_painter import PartPainter
from app.canvas.sight import Sight
from app.canvas.surface_painter import paint_surface
from app.canvas.wire_painter import WirePainter
from app.canvas.wireway_painter import paint_wireway_names, paint_wireways

SLOW_SEC = 0.010  # a picture that takes longer is painted anew only after a burst of zooming or panning
REST_SHARE = 6.0  # and within a burst only after this many times that time
HALO_RIM_PX = 60.0
DIMMED = 0.16  # how much shows of what is not in focus


class StillPicture:
    """Paints surface, light, wires, parts, labels and flags, but not what is held out of it."""

    def __init__(self, parts: PartPainter, wires: WirePainter) -> None:
        self._parts, self._wires, self._labels = parts, wires, LabelPainter()
        self._pixmap: QPixmap | None = None
        self._shown: Hashable = None
        self._camera = Camera()
        self._painted_at = 0.0
        self.took_sec = 0.0
        self.painted = 0  # how often it was painted anew

    def paint(
        self, painter: QPainter, sight: Sight, key: Hashable, held_out: frozenset[str], *, in_burst: bool
    ) -> bool:
        """Paint the kept picture; False when in a burst it was only an older one, shifted and scaled."""
        shown = (key, sight.width_px, sight.height_px, sight.ratio, held_out)
        is_same = self._pixmap is not None and shown == self._shown
        if self._pixmap is not None and is_same and sight.camera == self._camera:
            painter.drawPixmap(QPointF(0, 0), self._pixmap)
            return True
        began = perf_counter()
        rests = began - self._painted_at < REST_SHARE * self.took_sec
        if in_burst and is_same and self.took_sec > SLOW_SEC and rests:
            self._paint_old(painter, sight)
            return False
        self._pixmap = self._made(sight, held_out)
        self._painted_at = perf_counter()
        self.took_sec = self._painted_at - began
        self.painted += 1
        self._shown, self._camera = shown, sight.camera
        painter.drawPixmap(QPointF(0, 0), self._pixmap)
        return True

    def _paint_old(self, painter: QPainter, sight: Sight) -> None:
        assert self._pixmap is not None
        painter.fillRect(QRectF(0, 0, sight.width_px, sight.height_px), sight.shades.around)
        growth = sight.camera.scale / self._camera.scale
        left, top = sight.camera.to_px(self._camera.left_mm, self._camera.top_mm)
        size = self._pixmap.deviceIndependentSize()
        target = QRectF(left, top, size.width() * growth, size.height() * growth)
        painter.drawPixmap(target, self._pixmap, QRectF(self._pixmap.rect()))

    def _made(self, sight: Sight, held_out: frozenset[str]) -> QPixmap:
        pixmap = QPixmap(round(sight.width_px * sight.ratio), round(sight.height_px * sight.ratio))
        pixmap.setDevicePixelRatio(sight.ratio)
        painter = QPainter(pixmap)
        paint_surface(painter, sight)
        paint_wireways(painter, sight)
        rim_mm = HALO_RIM_PX / sight.camera.scale
        box = sight.visible.grown(rim_mm)
        parts = [i for i in sight.geometry.parts_in(box) if i not in held_out]
        wires = [i for i in sight.geometry.wires_in(box) if i not in held_out]
        if sight.lit is not None:
            painter.setOpacity(DIMMED)
            self._wires.paint(painter, sight, [i for i in wires if i not in sight.lit])
            self._parts.paint(painter, sight, [i for i in parts if i not in sight.lit])
            painter.setOpacity(1.0)
            parts, wires = [i for i in parts if i in sight.lit], [i for i in wires if i in sight.lit]
        paint_halos(painter, sight, parts)
        self._wires.paint(painter, sight, wires)
        paint_wireway_names(painter, sight)
        paint_harnesses(painter, sight)
        self._parts.paint(painter, sight, parts)
        names = area_names(sight)
        paint_area_names(painter, sight, names)
        taken = [*(n.box for n in names), *flag_boxes(sight, parts)]
        counts = harness_counts(sight, parts, taken)
        paint_counts(painter, sight, counts)
        self._labels.paint(painter, sight, parts, [*taken, *(c.box for c in counts)])
        paint_flags(painter, sight, parts, wires)
        painter.end()
        return pixmap
