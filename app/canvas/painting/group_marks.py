"""Paints the frame round parts that are one thing: dashed, fainter while only some of it is selected."""

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QPainter, QPen

from app.canvas.painting.mark_painter import selection_box
from app.canvas.painting.shades import with_alpha
from app.canvas.sight import Sight
from wiring.plan.groups import members, things_of
from wiring.plan.names import PartId

AWAY_PX = 19.0  # beyond the labels of its parts, with the turning handle on its corner
CORNER_PX = 9.0
DASHES = [5.0, 4.0]
MOST = 1500  # with more selected, frames would cover the plan and take long to lay
WHOLE, SOME, HOVERED = 1.0, 0.6, 0.5  # how strong the frame is


def paint_group_marks(
    painter: QPainter, sight: Sight, selected: frozenset[str], hovered: PartId = ""
) -> None:
    """Paint a frame round every thing of which something is selected, and round the one under the pointer."""
    things = things_of(sight.plan, selected) if len(selected) <= MOST else ()
    for thing in things:
        _paint_frame(painter, sight, thing, WHOLE if selected.issuperset(thing) else SOME)
    under = members(sight.plan, hovered)
    if under and under not in things:
        _paint_frame(painter, sight, under, HOVERED)


def _paint_frame(painter: QPainter, sight: Sight, thing: tuple[PartId, ...], strength: float) -> None:
    box = selection_box(sight, frozenset(thing))
    if box is None:
        return
    pen = QPen(with_alpha(sight.shades.copper, strength), 1.2)
    pen.setDashPattern(DASHES)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.setPen(pen)
    rect = QRectF(box.left, box.top, box.right - box.left, box.bottom - box.top)
    painter.drawRoundedRect(rect.adjusted(-AWAY_PX, -AWAY_PX, AWAY_PX, AWAY_PX), CORNER_PX, CORNER_PX)
