"""One painted picture of what stands still: its pixels, what it shows, and where its words stand."""

import ctypes
import operator
from collections.abc import Hashable, Iterable, Iterator

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QPointF, QRect, QRectF, QSize
from PySide6.QtGui import QImage, QPainter

from app.canvas.camera import Camera
from app.canvas.painting.clips import box_of
from app.canvas.painting.detail import Crowds, Seen, crowds, detail
from app.canvas.painting.harness_painter import Count
from app.canvas.painting.label_painter import LabelPainter
from app.canvas.painting.picture_room import PictureRoom, Way, look_of
from app.canvas.painting.placed_words import Words
from app.canvas.painting.soft_image import SoftImage, in_device_pixels
from app.canvas.painting.way_names import WayNames
from app.canvas.painting.wire_signs import WireSigns
from app.canvas.sight import Sight
from wiring.plan.names import WireId
from wiring.plan.plan import Plan

SOLID, CLEAR = QImage.Format.Format_RGB32, QImage.Format.Format_ARGB32_Premultiplied


class KeptPicture:
    """Pixels with words and without; to be painted by others, moved along and shown by itself."""

    def __init__(self, sight: Sight, old: "KeptPicture | None" = None) -> None:
        self.room, self.camera = PictureRoom(sight), sight.camera  # that of the view it was shown in last
        self.way: Way = (0, 0)  # that the view moves over it
        # The same memory again and again: fresh memory for a whole picture takes longer than to copy one.
        size, ratio = self.room.size, sight.ratio
        self.shown: QImage = _fitting(old.shown if old is not None else None, size, ratio)
        self.under: QImage = _fitting(old.under if old is not None else None, size, ratio)
        self.ground: QImage = _fitting(old.ground if old is not None else None, size, ratio)
        self.laid: QImage = _fitting(old.laid if old is not None else None, size, ratio, CLEAR)  # only wires
        self._soft: SoftImage = SoftImage(old._soft if old is not None else None)
        self._lasting_of: tuple[object, ...] = ()  # what ground and laid were painted of
        self.key: Hashable = None
        self.held_out: frozenset[str] = frozenset()
        self.plan: Plan | None = None  # what it shows, and what is held out of it
        self.crowds, self.judged = Crowds(), sight.camera  # how finely it is painted, last found right there
        self.is_apt = True  # so finely as the view asks for since it was pulled there
        self.flows: dict[WireId, bool] = {}  # the wires with an arrow; whether it points to their end
        self.labels, self.signs = LabelPainter(), WireSigns()
        self.words, self.way_names = Words(), WayNames()
        self.counts: list[Count] = []  # as they stand with the camera they were placed with
        self.counts_camera = self.room.anchor

    @property
    def scale(self) -> float:
        """Pixels to a millimetre of the plan."""
        return self.room.anchor.scale

    @property
    def rect(self) -> QRect:
        """All that is painted of it, in its pixels."""
        return self.room.covered

    def sight_of(self, sight: Sight) -> Sight:
        """Return what is looked at where this picture shows it, in its pixels."""
        width, height = self.room.size.width() / sight.ratio, self.room.size.height() / sight.ratio
        camera, window = self.room.anchor, box_of(self.rect)
        return sight._replace(camera=camera, width_px=width, height_px=height, window=window)

    def is_fine_for(self, sight: Sight, seen: Seen) -> bool:
        """Return whether it is painted as finely as one with so much in it would be."""
        return detail(self.crowds, self.scale) == detail(crowds(seen, sight.lit), self.scale)

    def is_right(self, camera: Camera) -> bool:
        """Return whether it shows what that camera sees, as finely as is fit."""
        return self.is_apt and self.room.shows(camera)

    def is_of(self, sight: Sight, key: Hashable, held_out: frozenset[str]) -> bool:
        """Return whether it shows that state of the plan, from wherever."""
        return self.key == key and self.held_out == held_out and self.room.look == look_of(sight)

    def show(self, painter: QPainter, camera: Camera) -> None:
        """Paint what the view shows of it, and remember which way it goes."""
        if camera is not self.camera:
            (x, y), (u, v) = self.room.place(camera), self.room.place(self.camera)
            self.camera, self.way = camera, (x - u, y - v)
        self.paint(painter, camera)

    def paint(self, painter: QPainter, camera: Camera) -> None:
        """Paint it where a camera of its scale sees it."""
        x, y = self.room.place(camera)
        with in_device_pixels(painter, self.shown):
            painter.drawImage(QPointF(-x, -y), self.shown)

    def paint_for(self, painter: QPainter, camera: Camera) -> None:
        """Paint it where another camera sees it, larger or smaller."""
        if camera.scale == self.scale:
            self.paint(painter, camera)
            return
        self._soft.paint(painter, self.shown, self.rect, self.target(camera))

    def target(self, camera: Camera) -> QRectF:
        """Return where another camera sees what is painted, in pixels of the view."""
        growth = camera.scale / self.scale
        corner = self.room.anchor.to_plan(self.rect.left(), self.rect.top())
        left, top = camera.to_px(*corner)
        return QRectF(left, top, self.rect.width() * growth, self.rect.height() * growth)

    def move(self, dx: int, dy: int) -> Iterator[bool]:
        """Move all pixels by so many of the device, one image a step; yields True: all must be moved."""
        for image in (self.under, self.ground, self.laid):
            _shift(image, dx, dy)
            yield True
        _shift(self.shown, dx, dy)
        self.room.move(dx, dy)
        self._soft.spoil()

    def soften(self) -> bool:
        """Be ready to be shown larger or smaller; say whether there was anything to do."""
        return self._soft.soften(self.shown, self.rect)

    def forget_margin(self) -> None:
        """Keep no more than what was shown last, so that there is less to mend."""
        self.room.covered = self.room.covered & self.room.view(self.camera)

    def has_lasting(self, sight: Sight) -> bool:
        """Return whether surface, wireways and wires are kept as they look now, whatever lamps do."""
        made_of = _lasting_of(sight)  # compared by identity: values of large plans take long to compare
        return len(self._lasting_of) == len(made_of) and all(map(operator.is_, self._lasting_of, made_of))

    def keep_ground(self, rect: QRect) -> None:
        """Keep what is painted so far, surface and wireways, in a rectangle."""
        there, under = _pixels(self.ground), _pixels(self.under)
        rows, columns = self._span(rect)
        there[rows, columns] = under[rows, columns]

    def trust_lasting(self, sight: Sight) -> None:
        """Remember that ground and wires are whole, and of what."""
        self._lasting_of = _lasting_of(sight)

    def strip_words(self, rects: Iterable[QRect]) -> None:
        """Take the words away in rectangles: what lies under them is copied."""
        there, under = _pixels(self.shown), _pixels(self.under)
        self._soft.spoil()
        for rect in rects:
            rows, columns = self._span(rect)
            there[rows, columns] = under[rows, columns]

    def _span(self, rect: QRect) -> tuple[slice, slice]:
        """Return the rows and columns of pixels a rectangle covers."""
        left, top, right, bottom = (
            max(0, round(at * self.room.look[2]))
            for at in (rect.left(), rect.top(), rect.right() + 1, rect.bottom() + 1)
        )
        return slice(top, bottom), slice(left, right)


def _lasting_of(sight: Sight) -> tuple[object, ...]:
    return sight.plan, sight.shades, sight.picture, sight.lit


def _fitting(image: QImage | None, size: QSize, ratio: float, form: QImage.Format = SOLID) -> QImage:
    """Return an image of that size: the given one when it has it."""
    if image is None or image.size() != size or image.devicePixelRatio() != ratio:
        image = QImage(size, form)
        image.setDevicePixelRatio(ratio)
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
