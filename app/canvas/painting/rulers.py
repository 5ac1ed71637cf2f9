"""Paints the rulers along the top and left edge in the units of the plan."""

import math

from PySide6.QtCore import QLineF, QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPen

from app.canvas.camera import round_step
from app.canvas.painting.shades import with_alpha
from app.canvas.sight import Sight
from app.theme.fonts import fixed_font, screen_font
from app.theme.words import lined, scaled

WIDE_PX = 22.0
LABEL_LEAST_PX = 62.0
UNIT_MOST_PX = 12  # letters of the unit in the corner, which is as wide as the ruler
METRIC_MM = (10.0, 20.0, 50.0, 100.0, 200.0, 500.0, 1000.0, 2000.0, 5000.0)
US_MM = tuple(25.4 * inches for inches in (1, 3, 6, 12, 24, 60, 120))
DIVISIONS = {True: 6, False: 5}  # small ticks between two labels, for feet and inches, and for metres


def ruler_words(value_mm: float, units: str, step_mm: float) -> str:
    """Return how a place on the ruler is written: ``1.2 m``, ``350``, ``4' 6"``."""
    if units == "us":
        inches = round(value_mm / 25.4)
        feet, rest = divmod(abs(inches), 12)
        sign = "−" if inches < 0 else ""
        if not feet:
            return f'{sign}{rest}"'
        return f"{sign}{feet}'" + (f' {rest}"' if rest else "")
    sign = "−" if value_mm < -1e-9 else ""
    value = abs(value_mm)
    if value >= 999.5 or step_mm >= 1000:
        return f"{sign}{value / 1000:.2f}".rstrip("0").rstrip(".") + " m"
    return f"{sign}{value:.0f}"


def paint_ruler(painter: QPainter, sight: Sight, *, across: bool) -> None:
    """Paint the ruler along the top with the corner, or the one down the side."""
    shades, width, height = sight.shades, sight.width_px, sight.height_px
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, False)
    ground = QRectF(0, 0, width, WIDE_PX) if across else QRectF(0, WIDE_PX, WIDE_PX, height - WIDE_PX)
    painter.fillRect(ground, with_alpha(shades.raised, 0.94))
    painter.setFont(screen_font(10))
    _paint_ticks(painter, sight, across=across)
    painter.setPen(QPen(shades.faint, 1))
    painter.drawLine(ruler_line(0, WIDE_PX, width if across else height, WIDE_PX, across))
    if not across:
        return
    painter.fillRect(QRectF(0, 0, WIDE_PX, WIDE_PX), shades.raised)
    painter.drawLine(QLineF(0, WIDE_PX, WIDE_PX, WIDE_PX))
    painter.drawLine(QLineF(WIDE_PX, 0, WIDE_PX, WIDE_PX))
    painter.setPen(shades.quiet)
    painter.setFont(fixed_font(min(scaled(10), UNIT_MOST_PX)))
    unit = "ft" if sight.plan.habits.units == "us" else "mm"
    painter.drawText(QRectF(0, 0, WIDE_PX, WIDE_PX), Qt.AlignmentFlag.AlignCenter, unit)


def _paint_ticks(painter: QPainter, sight: Sight, *, across: bool) -> None:
    camera, shades = sight.camera, sight.shades
    is_us = sight.plan.habits.units == "us"
    step = round_step(scaled(LABEL_LEAST_PX) / camera.scale, US_MM if is_us else METRIC_MM)
    small = step / DIVISIONS[is_us]
    start, length = (camera.left_mm, sight.width_px) if across else (camera.top_mm, sight.height_px)
    ticks = []
    for i in range(math.floor(start / small), math.ceil((start + length / camera.scale) / small) + 1):
        at = round((i * small - start) * camera.scale)
        if at < WIDE_PX:
            continue
        labelled = i % DIVISIONS[is_us] == 0
        reach = 9 if labelled else 4
        ticks.append(ruler_line(at, WIDE_PX - reach, at, WIDE_PX, across))
        if labelled:
            painter.setPen(shades.quiet)
            paint_value(painter, ruler_words(i * small, sight.plan.habits.units, step), at, across)
    painter.setPen(QPen(shades.board_edge, 1))
    painter.drawLines(ticks)


def ruler_line(x1: float, y1: float, x2: float, y2: float, across: bool) -> QLineF:
    """Return a line of the upper ruler, or the same one of that down the side."""
    return QLineF(x1, y1, x2, y2) if across else QLineF(y1, x1, y2, x2)


def paint_value(painter: QPainter, words: str, at: float, across: bool) -> None:
    """Write what a tick stands for beside it."""
    if across:
        painter.drawText(QPointF(at + 3, lined(11, 0.45)), words)
        return
    painter.save()
    painter.translate(lined(11, 0.45), at - 3)
    painter.rotate(-90)
    painter.drawText(QPointF(0, 0), words)
    painter.restore()
