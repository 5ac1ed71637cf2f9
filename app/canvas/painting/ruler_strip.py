"""Draws a ruler into an image: ticks straight into its memory, words from stamps that are kept."""

import math
from collections.abc import Hashable
from functools import lru_cache

import numpy as np
from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QImage, QPainter, QPixmap

from app.canvas.painting.rulers import WIDE_PX, Ticks, paint_value, ruler_ticks
from app.canvas.painting.shades import with_alpha
from app.canvas.sight import Sight
from app.canvas.table import Floats
from app.theme.fonts import fixed_font, screen_font
from app.theme.words import factor, scaled

GROUND = 0.94  # how much of the plan under a ruler it covers
LONG_PX, SHORT_PX = 9.0, 4.0  # ticks with words, and those without
FONT_PX = 10
UNIT_MOST_PX = 12  # letters of the unit in the corner, which is as wide as the ruler
AIR_PX = 2.0  # left free before words on their stamp


class RulerStrip:
    """One ruler; drawn anew into the same memory while the view keeps its size."""

    def __init__(self, *, across: bool) -> None:
        self._across = across
        self.image = QImage()
        self._key: Hashable = None

    def draw(self, sight: Sight, key: Hashable) -> None:
        """Draw the ruler along the top with the corner, or the one down the side, unless it shows that."""
        if key == self._key:
            return
        self._key = key
        across, shades, image = self._across, sight.shades, self._image(sight)
        ticks = ruler_ticks(sight, across=across)
        image.fill(with_alpha(shades.raised, GROUND))
        self._draw_lines(sight, ticks)
        painter = QPainter(image)
        for at, words in zip(ticks.labelled.tolist(), ticks.words, strict=True):
            stamp = _stamp(words, shades.quiet.rgba(), across, sight.ratio, factor())
            place = QPointF(at + 3 - AIR_PX, 0) if across else QPointF(0, at - 3 + AIR_PX - _high(stamp))
            painter.drawPixmap(place, stamp)
        if across:
            painter.setPen(shades.quiet)
            painter.setFont(fixed_font(min(scaled(FONT_PX), UNIT_MOST_PX)))
            unit = "ft" if sight.plan.habits.units == "us" else "mm"
            painter.drawText(QRectF(0, 0, WIDE_PX, WIDE_PX), Qt.AlignmentFlag.AlignCenter, unit)
        painter.end()

    def _image(self, sight: Sight) -> QImage:
        wide, high = (sight.width_px, WIDE_PX + 1) if self._across else (WIDE_PX + 1, sight.height_px)
        width, height, ratio = round(wide * sight.ratio), round(high * sight.ratio), sight.ratio
        now = self.image
        if (now.width(), now.height(), now.devicePixelRatio()) != (width, height, ratio):
            self.image = QImage(width, height, QImage.Format.Format_ARGB32_Premultiplied)
            self.image.setDevicePixelRatio(ratio)
        return self.image

    def _draw_lines(self, sight: Sight, ticks: Ticks) -> None:
        image, ratio, shades = self.image, sight.ratio, sight.shades
        pixels = np.frombuffer(image.bits(), np.uint32).reshape(image.height(), -1)
        along = pixels if self._across else pixels.T  # rows lie along the ruler
        line, edge = max(1, round(ratio)), round(WIDE_PX * ratio)
        if self._across:
            along[:edge, :edge] = shades.raised.rgba()
            along[:edge, edge : edge + line] = shades.faint.rgba()
        for places, reach_px in ((ticks.plain, SHORT_PX), (ticks.labelled, LONG_PX)):
            upper = round((WIDE_PX - reach_px) * ratio)
            along[upper:edge, _columns(places, ratio, along.shape[1])] = shades.board_edge.rgba()
        along[edge : edge + line] = shades.faint.rgba()


def _columns(places_px: Floats, ratio: float, most: int) -> np.ndarray[tuple[int], np.dtype[np.intp]]:
    first = np.rint(places_px * ratio).astype(np.intp)
    columns = (first[:, None] + np.arange(max(1, round(ratio)))).ravel()
    return columns[columns < most]


def _high(stamp: QPixmap) -> float:
    return stamp.height() / stamp.devicePixelRatio()


@lru_cache(maxsize=512)
def _stamp(words: str, ink: int, across: bool, ratio: float, _words: float) -> QPixmap:
    """Return what is written at a tick, alone."""
    font = screen_font(FONT_PX)
    long_px = math.ceil(QFontMetricsF(font).horizontalAdvance(words)) + 2 * AIR_PX
    wide, high = (long_px, WIDE_PX) if across else (WIDE_PX, long_px)
    pixmap = QPixmap(math.ceil(wide * ratio), math.ceil(high * ratio))
    pixmap.setDevicePixelRatio(ratio)
    pixmap.fill(Qt.GlobalColor.transparent)
    painter = QPainter(pixmap)
    painter.setFont(font)
    painter.setPen(QColor.fromRgba(ink))
    # `paint_value` writes three pixels beside the tick, which stands before the words or under them.
    paint_value(painter, words, AIR_PX - 3 if across else _high(pixmap) - AIR_PX + 3, across)
    painter.end()
    return pixmap
