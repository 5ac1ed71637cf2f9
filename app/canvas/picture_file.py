"""A picture from a file, read once: its bytes, its type and its size in pixels; smaller copies of it."""

from pathlib import Path
from typing import NamedTuple

from PySide6.QtCore import QBuffer, QByteArray, QIODevice, QSize, Qt
from PySide6.QtGui import QColor, QImage, QImageReader, QPainter
from PySide6.QtSvg import QSvgRenderer

MEDIA = {".png": "image/png", ".jpg": "image/jpeg", ".jpeg": "image/jpeg", ".svg": "image/svg+xml"}
FILTER = "Pictures (*.png *.jpg *.jpeg *.svg)"
LARGEST_PX = 4096  # more pixels a side show nothing more at any scale one works at, and cost memory
LARGEST_BYTES = 64 * 1024 * 1024
LARGEST_MB = 1024  # of memory while a picture is read; a photograph of 12 000 by 9 000 takes 430
DRAWING_PX = 2400  # what an SVG's longer side is made into
COPIES = ((4096, 85), (3000, 80), (2400, 75), (1800, 70))  # longer side in pixels, quality of the JPEG


class NotAPicture(Exception):  # noqa: N818 - an answer to the user
    """The file cannot be shown; the message is one plain sentence."""


class PictureFile(NamedTuple):
    """What was read; the size is that of the file, as it is meant to be seen."""

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
    size = _size_of(media, data)
    if size is None:
        raise NotAPicture(f"{path.name} is damaged or empty; open it in a viewer and save it anew.")
    return PictureFile(media, data, size.width(), size.height())


def smaller_copy(picture: PictureFile, most_bytes: int) -> PictureFile | None:
    """Return the largest JPEG copy of a photograph that takes no more bytes; None when there is none."""
    image = image_of(picture.media, picture.data)
    if image is None or picture.media == "image/svg+xml":
        return None
    for side, quality in COPIES:
        copy = _on_paper(_within(image, side))
        held = QBuffer()
        held.open(QIODevice.OpenModeFlag.WriteOnly)
        copy.save(held, "JPG", quality)  # type: ignore[call-overload]  # the stub knows bytes only
        data = bytes(held.data().data())
        if 0 < len(data) <= most_bytes:
            return PictureFile("image/jpeg", data, copy.width(), copy.height())
    return None


def image_of(media: str, data: bytes) -> QImage | None:
    """Return the picture in pixels, upright and no larger than is shown; None when it is none."""
    if media == "image/svg+xml":
        return _drawn(data)
    held = QBuffer()
    reader = _reader(held, data)
    size = reader.size()
    if max(size.width(), size.height()) > LARGEST_PX:
        reader.setScaledSize(size.scaled(LARGEST_PX, LARGEST_PX, Qt.AspectRatioMode.KeepAspectRatio))
    image = reader.read()
    return None if image.isNull() else image


def _reader(held: QBuffer, data: bytes) -> QImageReader:
    held.setData(QByteArray(data))
    held.open(QIODevice.OpenModeFlag.ReadOnly)
    QImageReader.setAllocationLimit(LARGEST_MB)
    reader = QImageReader(held)
    reader.setAutoTransform(True)  # a photograph knows how the camera was held
    return reader


def _size_of(media: str, data: bytes) -> QSize | None:
    """Return the size of a picture that can be read to its end; None for any other."""
    image = image_of(media, data)
    if image is None or media == "image/svg+xml":
        return image.size() if image is not None else None
    held = QBuffer()
    size = _reader(held, data).size()
    is_turned = (size.width() > size.height()) != (image.width() > image.height())
    return size.transposed() if is_turned else size


def _within(image: QImage, side: int) -> QImage:
    if max(image.width(), image.height()) <= side:
        return image
    smooth = Qt.TransformationMode.SmoothTransformation
    return image.scaled(side, side, Qt.AspectRatioMode.KeepAspectRatio, smooth)


def _on_paper(image: QImage) -> QImage:
    """Return the picture on white, where it lets through what is under it: a JPEG cannot."""
    if not image.hasAlphaChannel():
        return image
    paper = QImage(image.size(), QImage.Format.Format_RGB32)
    paper.fill(QColor("white"))
    painter = QPainter(paper)
    painter.drawImage(0, 0, image)
    painter.end()
    return paper


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
