"""Writes in the upper corner of the plan what is looked at alone, so that nobody misses the rest."""

from PySide6.QtCore import QPointF
from PySide6.QtGui import QPainter

from app.canvas.painting.plates import Plate
from app.canvas.painting.rulers import WIDE_PX
from app.canvas.sight import Sight

PLATE = Plate(font_px=12, usual_px=22.0, rim_px=9.0, ground=0.94)
GAP_PX = 8.0


def paint_focus(painter: QPainter, sight: Sight) -> None:
    """Paint the plate while there is a focus."""
    if not sight.focus_words:
        return
    words = f"Only {sight.focus_words}  ·  O: everything"
    x = sight.width_px - PLATE.width(words) - GAP_PX
    painter.drawPixmap(QPointF(x, WIDE_PX + GAP_PX), PLATE.pixmap(words, sight.shades, sight.ratio))
