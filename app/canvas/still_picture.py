"""The picture of all that stands still, kept as a pixmap until what it shows is another thing."""

import math
from collections.abc import Callable, Hashable, Sequence
from time import perf_counter

from PySide6.QtCore import QPointF, QRect, QRectF, QSize
from PySide6.QtGui import QPainter, QPixmap

from app.canvas.area_names import area_names, paint_area_names
from app.canvas.camera import Camera
from app.canvas.flag_painter import flag_boxes, paint_flags
from app.canvas.geometry import Box
from app.canvas.halo_painter import paint_halos
from app.canvas.harness_painter import harness_counts, paint_counts, paint_harnesses
from app.canvas.label_painter import LabelPainter
from app.canvas.part_painter import PartPainter
from app.canvas.sight import Sight
from app.canvas.surface_painter import paint_surface
from app.canvas.wire_painter import WirePainter
from app.canvas.wireway_painter import paint_wireway_names, paint_wireways
from wiring.plan.names import PartId, WireId

SLOW_SEC = 0.010  # a picture that takes longer is painted anew only after a burst of zooming or panning
REST_SHARE = 6.0  # and within a burst only after this many times that time
HALO_RIM_PX = 60.0
LIGHT_MM = 40.0  # no lamp shines farther on the plan
STROKE_PX = 30.0  # no sign or wire shows farther beside its box
MOST_MENDED = 0.6  # of the picture; for more of it all is painted
DIMMED = 0.16  # how much shows of what is not in focus


StirredSince = Callable[[object], list[Box] | None]  # where the picture of an older key is out of date


class StillPicture:
    """Paints surface, light, wires, parts, labels and flags, but not what is held out of it.

    What lies under the words is kept apart: after a change only the region in which something lies otherwise
    is painted anew.
    """

    def __init__(self, parts: PartPainter, wires: WirePainter) -> None:
        self._parts, self._wires, self._labels = parts, wires, LabelPainter()
        self._pixmap: QPixmap | None = None
        self._under: QPixmap | None = None  # the same without words
        self._is_under_kept = False
        self._key: Hashable = None
        self._look: Hashable = None
        self._held_out: frozenset[str] = frozenset()
        self._camera = Camera()
        self._painted_at = 0.0
        self.took_sec = 0.0
        self.painted = 0  # how often it was painted anew

    def paint(
        self,
        painter: QPainter,
        sight: Sight,
        key: Hashable,
        held_out: frozenset[str],
        stirred_since: StirredSince,
        *,
        in_burst: bool,
    ) -> bool:
        """Paint the kept picture; False when in a burst it was only an older one, shifted and scaled."""
        look = sight.width_px, sight.height_px, sight.ratio
        is_there = self._pixmap is not None and look == self._look
        is_same = is_there and key == self._key and held_out == self._held_out
        if self._pixmap is not None and is_same and sight.camera == self._camera:
            painter.drawPixmap(QPointF(0, 0), self._pixmap)
            return True
        began = perf_counter()
        rests = began - self._painted_at < REST_SHARE * self.took_sec
        if in_burst and is_same and self.took_sec > SLOW_SEC and rests:
            self._paint_old(painter, sight)
            return False
        is_there = is_there and sight.camera == self._camera
        clip = self._to_mend(sight, held_out, stirred_since) if is_there else None
        if clip is None or not clip.isEmpty():
            self._paint_anew(sight, held_out, clip, keep=clip is not None or not in_burst)
            self._painted_at = perf_counter()
            if clip is None:
                self.took_sec = self._painted_at - began
            self.painted += 1
        self._key, self._look, self._held_out, self._camera = key, look, held_out, sight.camera
        assert self._pixmap is not None
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

    def _to_mend(self, sight: Sight, held_out: frozenset[str], stirred_since: StirredSince) -> QRect | None:
        """Return the pixels in which the picture is out of date, none when in none; None for all of it."""
        boxes = stirred_since(self._key)
        if boxes is None or not self._is_under_kept or sight.lit is not None:
            return None
        let_go = sight.geometry.around(held_out ^ self._held_out)
        clip = QRect()
        rim = HALO_RIM_PX if sight.figures is None else max(HALO_RIM_PX, LIGHT_MM * sight.camera.scale)
        for box in [*boxes, let_go] if let_go is not None else boxes:
            left, top = sight.camera.to_px(box.left, box.top)
            right, bottom = sight.camera.to_px(box.right, box.bottom)
            clip |= (
                QRectF(left, top, right - left, bottom - top).adjusted(-rim, -rim, rim, rim).toAlignedRect()
            )
        clip &= QRect(0, 0, math.ceil(sight.width_px), math.ceil(sight.height_px))
        is_most = clip.width() * clip.height() > MOST_MENDED * sight.width_px * sight.height_px
        return None if is_most else clip

    def _paint_anew(self, sight: Sight, held_out: frozenset[str], clip: QRect | None, *, keep: bool) -> None:
        box = sight.visible.grown(HALO_RIM_PX / sight.camera.scale)
        parts = [i for i in sight.geometry.parts_in(box) if i not in held_out]
        wires = [i for i in sight.geometry.wires_in(box) if i not in held_out]
        # The same memory again and again: fresh memory for a whole picture takes longer than to copy one.
        self._pixmap = _fitting(self._pixmap, sight)
        self._under = _fitting(self._under, sight)
        self._is_under_kept = keep
        painter = QPainter(self._under if keep else self._pixmap)
        if clip is not None:
            painter.setClipRect(clip)
        self._paint_under(painter, sight, parts, wires, clip)
        painter.end()
        painter = QPainter(self._pixmap)
        if keep:
            painter.setCompositionMode(QPainter.CompositionMode.CompositionMode_Source)
            painter.drawPixmap(QPointF(0, 0), self._under)
            painter.setCompositionMode(QPainter.CompositionMode.CompositionMode_SourceOver)
        lit = sight.lit
        if lit is not None:
            parts, wires = [i for i in parts if i in lit], [i for i in wires if i in lit]
        self._paint_words(painter, sight, parts, wires)
        painter.end()

    def _paint_under(
        self,
        painter: QPainter,
        sight: Sight,
        parts: Sequence[PartId],
        wires: Sequence[WireId],
        clip: QRect | None,
    ) -> None:
        paint_surface(painter, sight)
        paint_wireways(painter, sight)
        if sight.lit is not None:
            painter.setOpacity(DIMMED)
            self._wires.paint(painter, sight, [i for i in wires if i not in sight.lit])
            self._parts.paint(painter, sight, [i for i in parts if i not in sight.lit])
            painter.setOpacity(1.0)
            parts, wires = [i for i in parts if i in sight.lit], [i for i in wires if i in sight.lit]
        near_parts, near_wires = _near(sight, parts, wires, clip)
        paint_halos(painter, sight, parts)
        self._wires.paint(painter, sight, near_wires, among=wires)
        paint_wireway_names(painter, sight)
        paint_harnesses(painter, sight)
        self._parts.paint(painter, sight, near_parts, among=parts)

    def _paint_words(
        self, painter: QPainter, sight: Sight, parts: Sequence[PartId], wires: Sequence[WireId]
    ) -> None:
        names = area_names(sight)
        paint_area_names(painter, sight, names)
        taken = [*(n.box for n in names), *flag_boxes(sight, parts)]
        counts = harness_counts(sight, parts, taken)
        paint_counts(painter, sight, counts)
        self._labels.paint(painter, sight, parts, [*taken, *(c.box for c in counts)])
        paint_flags(painter, sight, parts, wires)


def _fitting(pixmap: QPixmap | None, sight: Sight) -> QPixmap:
    """Return a pixmap of the size of the view: that one when it is."""
    size = QSize(round(sight.width_px * sight.ratio), round(sight.height_px * sight.ratio))
    if pixmap is None or pixmap.size() != size or pixmap.devicePixelRatio() != sight.ratio:
        pixmap = QPixmap(size)
        pixmap.setDevicePixelRatio(sight.ratio)
    return pixmap


def _near(
    sight: Sight, parts: Sequence[PartId], wires: Sequence[WireId], clip: QRect | None
) -> tuple[Sequence[PartId], Sequence[WireId]]:
    """Return the parts and wires that may show in a clip of the picture."""
    if clip is None:
        return parts, wires
    corners = (clip.left(), clip.top()), (clip.right() + 1, clip.bottom() + 1)
    (left, top), (right, bottom) = (sight.camera.to_plan(*corner) for corner in corners)
    box = Box(left, top, right, bottom).grown(STROKE_PX / sight.camera.scale)
    near = frozenset((*sight.geometry.parts_in(box), *sight.geometry.wires_in(box)))
    return [i for i in parts if i in near], [i for i in wires if i in near]
