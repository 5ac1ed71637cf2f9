"""Paints rulers along a face: millimetres or inches from its upper left corner as seen from the front."""

import math

from PySide6.QtCore import QLineF, QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPen

from app.bench.face_sight import FaceSight
from app.canvas.camera import round_step
from app.canvas.painting.rulers import paint_value, ruler_line
from app.canvas.painting.shades import with_alpha
from app.theme.fonts import screen_font
from wiring.plan.places import Point
from wiring.quantities.face_lengths import INCH_MM, length_words

WIDE_PX = 22.0
LABEL_LEAST_PX = 46.0
METRIC_MM = (5.0, 10.0, 20.0, 50.0, 100.0, 200.0, 500.0)
US_MM = tuple(INCH_MM * inches for inches in (0.5, 1, 2, 6, 12, 24))
DIVISIONS = {True: 4, False: 5}  # small ticks between two labels, for inches and for millimetres


def paint_rulers(painter: QPainter, sight: FaceSight, at_px: Point | None) -> None:
    """Paint both rulers over everything else, on them the face and the place of the pointer."""
    shades, whole = sight.whole.shades, sight.whole
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, False)
    ground = with_alpha(shades.raised, 0.96)
    painter.fillRect(QRectF(0, 0, whole.width_px, WIDE_PX), ground)
    painter.fillRect(QRectF(0, WIDE_PX, WIDE_PX, whole.height_px - WIDE_PX), ground)
    _paint_face_on(painter, sight)
    painter.setFont(screen_font(10))
    for across in (True, False):
        _paint_ticks(painter, sight, across=across)
        if at_px is not None:
            place = at_px[0] if across else at_px[1]
            painter.setPen(QPen(shades.copper, 1))
            painter.drawLine(ruler_line(place, 0, place, WIDE_PX, across))
    painter.fillRect(QRectF(0, 0, WIDE_PX, WIDE_PX), shades.raised)
    painter.setPen(QPen(shades.faint, 1))
    painter.drawLine(QLineF(0, WIDE_PX, whole.width_px, WIDE_PX))
    painter.drawLine(QLineF(WIDE_PX, 0, WIDE_PX, whole.height_px))
    painter.setPen(shades.quiet)
    unit = "in" if _is_us(sight) else "mm"
    painter.drawText(QRectF(0, 0, WIDE_PX, WIDE_PX), Qt.AlignmentFlag.AlignCenter, unit)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    _paint_size(painter, sight)


def _paint_face_on(painter: QPainter, sight: FaceSight) -> None:
    """Let the stretch of each ruler that the face takes up stand out."""
    left, right = sorted(sight.camera.to_px((x, 0.0))[0] for x in (0.0, sight.panel.width_mm))
    top, bottom = (sight.camera.to_px((0.0, y))[1] for y in (0.0, sight.panel.height_mm))
    tint = with_alpha(sight.whole.shades.copper, 0.12)
    painter.fillRect(QRectF(left, 0, right - left, WIDE_PX), tint)
    painter.fillRect(QRectF(0, top, WIDE_PX, bottom - top), tint)


def _paint_ticks(painter: QPainter, sight: FaceSight, *, across: bool) -> None:
    camera, shades, us = sight.camera, sight.whole.shades, _is_us(sight)
    step = round_step(LABEL_LEAST_PX / camera.scale, US_MM if us else METRIC_MM)
    small = step / DIVISIONS[us]
    long = sight.panel.width_mm if across else sight.panel.height_mm
    room = sight.whole.width_px if across else sight.whole.height_px
    ticks = []
    for i in range(math.floor(long / small + 1e-6) + 1):
        mm = i * small
        px = round(camera.to_px((mm, 0.0))[0] if across else camera.to_px((0.0, mm))[1])
        if not WIDE_PX <= px <= room:
            continue
        labelled = i % DIVISIONS[us] == 0
        ticks.append(ruler_line(px, WIDE_PX - (9 if labelled else 4), px, WIDE_PX, across))
        if labelled:
            painter.setPen(shades.quiet)
            words = f"{mm / INCH_MM:g}" if us else f"{mm:g}"
            paint_value(painter, words, px, across)
    painter.setPen(QPen(shades.board_edge, 1))
    painter.drawLines(ticks)


def _paint_size(painter: QPainter, sight: FaceSight) -> None:
    """Write width and height outside the edges, as a drawing has them."""
    panel, shades, us = sight.panel, sight.whole.shades, _is_us(sight)
    a, b = sight.camera.to_px((0.0, 0.0)), sight.camera.to_px((panel.width_mm, panel.height_mm))
    rect = QRectF(QPointF(*a), QPointF(*b)).normalized()
    painter.setFont(screen_font(11))
    painter.setPen(QPen(shades.quiet, 1))
    y = rect.bottom() + 15
    painter.drawLine(QPointF(rect.left(), y), QPointF(rect.right(), y))
    words = length_words(panel.width_mm, us=us)
    painter.drawText(QRectF(rect.left(), y + 2, rect.width(), 18), Qt.AlignmentFlag.AlignCenter, words)
    x = rect.right() + 15
    painter.drawLine(QPointF(x, rect.top()), QPointF(x, rect.bottom()))
    painter.save()
    painter.translate(x + 11, rect.center().y())
    painter.rotate(90)
    words = length_words(panel.height_mm, us=us)
    painter.drawText(QRectF(-80, -9, 160, 18), Qt.AlignmentFlag.AlignCenter, words)
    painter.restore()
    for end_x, end_y in ((rect.left(), y), (rect.right(), y), (x, rect.top()), (x, rect.bottom())):
        painter.drawLine(QPointF(end_x - 3, end_y + 3), QPointF(end_x + 3, end_y - 3))


def _is_us(sight: FaceSight) -> bool:
    return sight.plan.habits.units == "us"
