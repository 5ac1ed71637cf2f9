"""What stands on the rulers along the top and left edge, in the units of the plan."""

import math
from collections.abc import Sequence
from typing import NamedTuple

import numpy as np
from PySide6.QtCore import QLineF, QPointF
from PySide6.QtGui import QPainter

from app.canvas.camera import NOISE_PX, round_step
from app.canvas.sight import Sight
from app.canvas.table import Floats
from app.theme.words import lined, scaled

WIDE_PX = 22.0
LABEL_LEAST_PX = 62.0
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


class Ticks(NamedTuple):
    """Where the ticks of a ruler stand, in pixels from the corner of the view, and their words."""

    plain: Floats
    labelled: Floats
    words: Sequence[str]  # of those labelled


def ruler_ticks(sight: Sight, *, across: bool) -> Ticks:
    """Return the ticks of the ruler along the top, or of the one down the side, beyond its corner."""
    camera, units = sight.camera, sight.plan.habits.units
    is_us = units == "us"
    step = round_step(scaled(LABEL_LEAST_PX) / camera.scale, US_MM if is_us else METRIC_MM)
    small = step / DIVISIONS[is_us]
    start, length = (camera.left_mm, sight.width_px) if across else (camera.top_mm, sight.height_px)
    first, last = math.floor(start / small), math.ceil((start + length / camera.scale) / small)
    count = np.arange(first, last + 1)
    places = np.floor((count * small - start) * camera.scale + 0.5 + NOISE_PX)  # as lines of the grid
    beyond = places >= WIDE_PX
    count, places = count[beyond], places[beyond]
    is_labelled = count % DIVISIONS[is_us] == 0
    words = [ruler_words(i * small, units, step) for i in count[is_labelled].tolist()]
    return Ticks(places[~is_labelled], places[is_labelled], words)


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
