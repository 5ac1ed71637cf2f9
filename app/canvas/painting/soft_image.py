"""A picture softened a little, to be shown larger or smaller for a moment.

Every pixel is mixed with its neighbour on the slant. So no letter and no hairline falls apart when only the
nearest pixel is taken, which takes a tenth of the time of a smooth change of size.
"""

from collections.abc import Iterator
from contextlib import contextmanager

from PySide6.QtCore import QPointF, QRect, QRectF
from PySide6.QtGui import QImage, QPainter


@contextmanager
def in_device_pixels(painter: QPainter, image: QImage) -> Iterator[None]:
    """Paint an image pixel by pixel: as if neither it nor the painter knew of a finer screen."""
    ratio = image.devicePixelRatio()
    if ratio == 1.0:
        yield
        return
    painter.save()
    painter.scale(1 / painter.device().devicePixelRatioF(), 1 / painter.device().devicePixelRatioF())
    image.setDevicePixelRatio(1.0)
    try:
        yield
    finally:
        image.setDevicePixelRatio(ratio)
        painter.restore()


class SoftImage:
    """Keeps the softened copy of a part of an image until that is another."""

    def __init__(self, old: "SoftImage | None" = None) -> None:
        self._image: QImage = old._image if old is not None else QImage()
        self._of = QRect()

    def spoil(self) -> None:
        """Forget the copy: the image has been painted on."""
        self._of = QRect()

    def paint(self, painter: QPainter, image: QImage, part: QRect, target: QRectF) -> None:
        """Paint that part of an image, in pixels of the screen, into a rectangle of the painter."""
        source = _in_device(image, part)
        self.soften(image, part)
        half_x, half_y = target.width() / source.width() / 2, target.height() / source.height() / 2
        painter.drawImage(target.translated(-half_x, -half_y), self._image, source)

    def soften(self, image: QImage, part: QRect) -> bool:
        """Make the copy of a part of an image, in pixels of the screen; say whether there was none."""
        if self._of == part:
            return False
        self._of = QRect(part)
        self._copy(image, _in_device(image, part).toAlignedRect() & image.rect())
        return True

    def _copy(self, image: QImage, part: QRect) -> None:
        if self._image.size() != image.size():
            self._image = QImage(image.size(), image.format())
        painter = QPainter(self._image)
        painter.setClipRect(part)
        with in_device_pixels(painter, image):
            painter.drawImage(QPointF(0, 0), image)
            painter.setOpacity(0.5)
            painter.setClipRect(part.adjusted(1, 1, 0, 0))
            painter.drawImage(QPointF(1, 1), image)
        painter.end()


def _in_device(image: QImage, part: QRect) -> QRectF:
    ratio = image.devicePixelRatio()
    return QRectF(part.left() * ratio, part.top() * ratio, part.width() * ratio, part.height() * ratio)
