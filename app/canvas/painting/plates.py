"""Short words on a piece of paper colour, each painted once and kept."""

from functools import lru_cache
from typing import NamedTuple

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QPainter, QPixmap

from app.canvas.painting.shades import Shades, with_alpha
from app.theme.fonts import fixed_font, screen_font
from app.theme.words import factor, lined, scaled

CORNER_PX = 3.0


class Plate(NamedTuple):
    """The make of a plate: size of its letters, height, room beside the words, how much the ground covers."""

    font_px: int
    usual_px: float  # height at the usual size of words
    rim_px: float
    ground: float

    def width(self, text: str) -> float:
        """Return how wide the plate of a text is, in pixels."""
        return _advance(text, scaled(self.font_px)) + 2 * self.rim_px

    @property
    def high_px(self) -> float:
        """Return how high the plate is, in pixels."""
        return lined(self.usual_px)

    def pixmap(self, text: str, shades: Shades, ratio: float) -> QPixmap:
        """Return the plate of a text."""
        return _painted(self, text, shades.ink.rgba(), shades.paper.rgba(), ratio, factor())


@lru_cache(maxsize=8192)
def _advance(text: str, font_px: int) -> float:
    return QFontMetricsF(fixed_font(font_px, "semibold")).horizontalAdvance(text)


@lru_cache(maxsize=4096)
def _painted(plate: Plate, text: str, ink: int, paper: int, ratio: float, _words: float) -> QPixmap:
    width = plate.width(text)
    pixmap = QPixmap(round(width * ratio), round(plate.high_px * ratio))
    pixmap.setDevicePixelRatio(ratio)
    pixmap.fill(Qt.GlobalColor.transparent)
    painter = QPainter(pixmap)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(with_alpha(QColor.fromRgba(paper), plate.ground))
    rect = QRectF(0, 0, width, plate.high_px)
    painter.drawRoundedRect(rect, CORNER_PX, CORNER_PX)
    painter.setPen(QColor.fromRgba(ink))
    painter.setFont(screen_font(plate.font_px, "semibold"))
    painter.drawText(rect, Qt.AlignmentFlag.AlignCenter, text)
    painter.end()
    return pixmap
