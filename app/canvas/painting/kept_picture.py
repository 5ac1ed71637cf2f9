"""One painted picture of what stands still: its pixels, what it shows, and where its words stand."""

import ctypes
import math
import operator
from collections.abc import Hashable, Iterable

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QPointF, QRect, QRectF, QSize
from PySide6.QtGui import QImage, QPainter

from app.canvas.camera import Camera
from app.canvas.painting.harness_painter import Count
from app.canvas.painting.label_painter import LabelPainter
from app.canvas.painting.placed_words import Words
from app.canvas.painting.way_names import WayNames
from app.canvas.painting.wire_signs import WireSigns
from app.canvas.sight import Sight
from wiring.plan.names import WireId
from wiring.plan.plan import Plan

SAME_PX = 0.01  # a picture so little off its place is in its place
RIM_PX = 1  # a strip laid bare is painted anew with so much more

SOLID, CLEAR = QImage.Format.Format_RGB32, QImage.Format.Format_ARGB32_Premultiplied

Look = tuple[float, float, float]


def look_of(sight: Sight) -> Look:
    """Return size and sharpness of the view, which every picture of it must have."""
    return sight.width_px, sight.height_px, sight.ratio


class KeptPicture:
    """Pixels with words and without; to be painted by others, moved along and shown by itself."""

    def __init__(self, sight: Sight, old: "KeptPicture | None" = None) -> None:
        # The same memory again and again: fresh memory for a whole picture takes longer than to copy one.
        self.shown: QImage = _fitting(old.shown if old is not None else None, sight)
        self.under: QImage = _fitting(old.under if old is not None else None, sight)
        self.ground: QImage = _fitting(old.ground if old is not None else None, sight)
        self.laid: QImage = _fitting(old.laid if old is not None else None, sight, CLEAR)  # wires, no more
        self._lasting_of: tuple[object, ...] = ()  # what ground and laid were painted of
        self.look, self.camera = look_of(sight), sight.camera
        self.key: Hashable = None
        self.held_out: frozenset[str] = frozenset()
        self.plan: Plan | None = None  # what it shows, and what is held out of it
        self.flows: dict[WireId, bool] = {}  # the wires with an arrow; whether it points to their end
        self.labels, self.signs = LabelPainter(), WireSigns()
        self.words, self.way_names = Words(), WayNames()
        self.counts: list[Count] = []  # as they stand with the camera they were placed with
        self.counts_camera = sight.camera

    @property
    def rect(self) -> QRect:
        """All of it, in pixels of the view."""
        return QRect(0, 0, math.ceil(self.look[0]), math.ceil(self.look[1]))

    def is_of(self, sight: Sight, key: Hashable, held_out: frozenset[str]) -> bool:
        """Return whether it shows that state of the plan, from wherever."""
        return self.key == key and self.held_out == held_out and self.look == look_of(sight)

    def is_in_place(self, camera: Camera, within_px: float = SAME_PX) -> bool:
        """Return whether it lies where that camera looks."""
        return camera.scale == self.camera.scale and all(
            abs(by) * self.look[2] <= within_px for by in self._off_px(camera)
        )

    def paint(self, painter: QPainter) -> None:
        """Paint it from corner to corner."""
        painter.drawImage(QPointF(0, 0), self.shown)

    def paint_for(self, painter: QPainter, camera: Camera) -> None:
        """Paint it where another camera sees it, larger or smaller."""
        growth = camera.scale / self.camera.scale
        left, top = camera.to_px(self.camera.left_mm, self.camera.top_mm)
        painter.save()
        painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
        target = QRectF(left, top, self.look[0] * growth, self.look[1] * growth)
        painter.drawImage(target, self.shown, QRectF(self.shown.rect()))
        painter.restore()

    def pull(self, camera: Camera) -> list[QRect] | None:
        """Move the pixels to where that camera sees them; the answer is what is laid bare.

        None, and nothing is moved, when most of it would be; only whole pixels are moved.
        """
        ratio = self.look[2]
        dx, dy = (round(by * ratio) for by in self._off_px(camera))
        wide, high = self.shown.width(), self.shown.height()
        if camera.scale != self.camera.scale or 2 * abs(dx) > wide or 2 * abs(dy) > high:
            return None
        for image in (self.shown, self.under, self.ground, self.laid):
            _shift(image, dx, dy)
        scale = camera.scale * ratio
        self.camera = Camera(camera.scale, self.camera.left_mm - dx / scale, self.camera.top_mm - dy / scale)
        if self.is_in_place(camera):
            self.camera = camera
        width, height = math.ceil(self.look[0]), math.ceil(self.look[1])
        across, down = (math.ceil(abs(by) / ratio) + RIM_PX if by else 0 for by in (dx, dy))
        bare = [
            QRect(0 if dx > 0 else width - across, 0, across, height),
            QRect(0, 0 if dy > 0 else height - down, width, down),
        ]
        return [strip for strip in bare if not strip.isEmpty()]

    def has_lasting(self, sight: Sight) -> bool:
        """Return whether surface, wireways and wires are kept as they look now, whatever lamps do."""
        made_of = _lasting_of(sight)  # compared by identity: values of large plans take long to compare
        return len(self._lasting_of) == len(made_of) and all(map(operator.is_, self._lasting_of, made_of))

    def keep_ground(self, rect: QRect | None) -> None:
        """Keep what is painted so far, surface and wireways, in a rectangle or everywhere."""
        there, under = _pixels(self.ground), _pixels(self.under)
        rows, columns = self._span(rect) if rect is not None else (slice(None), slice(None))
        there[rows, columns] = under[rows, columns]

    def trust_lasting(self, sight: Sight) -> None:
        """Remember that ground and wires are whole, and of what."""
        self._lasting_of = _lasting_of(sight)

    def strip_words(self, rects: Iterable[QRect] | None) -> None:
        """Take the words away, in rectangles or everywhere: what lies under them is copied."""
        there, under = _pixels(self.shown), _pixels(self.under)
        if rects is None:
            there[:] = under
            return
        for rect in rects:
            rows, columns = self._span(rect)
            there[rows, columns] = under[rows, columns]

    def _span(self, rect: QRect) -> tuple[slice, slice]:
        """Return the rows and columns of pixels a rectangle covers."""
        left, top, right, bottom = (
            max(0, round(at * self.look[2]))
            for at in (rect.left(), rect.top(), rect.right() + 1, rect.bottom() + 1)
        )
        return slice(top, bottom), slice(left, right)

    def _off_px(self, camera: Camera) -> tuple[float, float]:
        return camera.to_px(self.camera.left_mm, self.camera.top_mm)


def _lasting_of(sight: Sight) -> tuple[object, ...]:
    return sight.plan, sight.camera, sight.shades, sight.picture, sight.lit


def _fitting(image: QImage | None, sight: Sight, form: QImage.Format = SOLID) -> QImage:
    """Return an image of the size of the view: that one when it is."""
    size = QSize(round(sight.width_px * sight.ratio), round(sight.height_px * sight.ratio))
    if image is None or image.size() != size or image.devicePixelRatio() != sight.ratio:
        image = QImage(size, form)
        image.setDevicePixelRatio(sight.ratio)
    return image


def _pixels(image: QImage) -> NDArray[np.uint32]:
    return np.frombuffer(image.bits(), np.uint32).reshape(image.height(), -1)


def _shift(image: QImage, dx: int, dy: int) -> None:
    """Move the pixels of an image; what comes in from outside is anything."""
    flat = _pixels(image).reshape(-1)
    by = dy * image.width() + dx
    start, size = flat.ctypes.data, 4 * (len(flat) - abs(by))
    if by > 0:
        ctypes.memmove(start + 4 * by, start, size)
    elif by < 0:
        ctypes.memmove(start, start - 4 * by, size)
