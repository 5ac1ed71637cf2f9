"""A picture from a file, read once: its bytes, its type and its size in pixels."""

from pathlib import Path
from typing import NamedTuple

from PySide6.QtCore import QByteArray, QSize
from PySide6.QtGui import QImage, QPainter
from PySide6.QtSvg import QSvgRenderer

MEDIA = {".png": "image/png", ".jpg": "image/jpeg", ".jpeg": "image/jpeg", ".svg": "image/svg+xml"}
FILTER = "Pictures (*.png *.jpg *.jpeg *.svg)"
LARGEST_PX = 6000  # a drawing is made into pixels of at most this many a side
LARGEST_BYTES = 64 * 1024 * 1024
DRAWING_PX = 2400  # what an SVG's longer side is made into


class NotAPicture(Exception):  # noqa: N818 - an answer to the user
    """The file cannot be shown; the message is one plain sentence."""


class PictureFile(NamedTuple):
    """What was read."""

    media: str
    data: bytes
    width_px: int
    height_px: int


def read_picture(path: Path) -> PictureFile:
    """Read a PNG, JPEG or SVG; NotAPicture says why it cannot be used."""
    media = MEDIA.get(path.suffix.lower())
    if media is None:
        raise NotAPicture(f"{path.name} is no PNG, JPEG or SVG; choose another picture.")
    try:
        if path.stat().st_size > LARGEST_BYTES:
            raise NotAPicture(f"{path.name} is larger than 64 MB; save a smaller copy of it first.")
        data = path.read_bytes()
    except OSError as fault:
        raise NotAPicture(f"{path.name} cannot be read: {fault.strerror or 'the disk refused'}.") from None
    image = image_of(media, data)
    if image is None:
        raise NotAPicture(f"{path.name} is damaged or empty; open it in a viewer and save it anew.")
    return PictureFile(media, data, image.width(), image.height())


def image_of(media: str, data: bytes) -> QImage | None:
    """Return the picture in pixels; None when it is none."""
    if media == "image/svg+xml":
        return _drawn(data)
    image = QImage.fromData(QByteArray(data))
    if image.isNull():
        return None
    if max(image.width(), image.height()) > LARGEST_PX:
        return None
    return image


def _drawn(data: bytes) -> QImage | None:
    renderer = QSvgRenderer(QByteArray(data))
    size = renderer.defaultSize()
    if not renderer.isValid() or size.isEmpty():
        return None
    growth = DRAWING_PX / max(size.width(), size.height())
    image = QImage(
        QSize(max(round(size.width() * growth), 1), max(round(size.height() * growth), 1)),
        QImage.Format.Format_ARGB32_Premultiplied,
    )
    image.fill(0)
    painter = QPainter(image)
    renderer.render(painter)
    painter.end()
    return image
