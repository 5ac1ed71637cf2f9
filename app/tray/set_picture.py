"""A small picture of a kept set: its parts where they stand, and the wires between them."""

from collections.abc import Mapping
from itertools import pairwise

from PySide6.QtCore import QLineF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QPainter, QPen, QPixmap

from app.theme.paint_picture import paint_items
from wiring.catalogue.kind import Kind
from wiring.edits.fragment import Fragment
from wiring.pictures.theme import Theme
from wiring.plan.lengths import wire_path
from wiring.plan.plan import Plan
from wiring.standards.colours import colour

LARGEST_SCALE = 1.6  # pixels a millimetre
RIM_MM = 6.0


def set_picture(
    fragment: Fragment, kinds: Mapping[str, Kind], theme: Theme, size: QSize, ratio: float
) -> QPixmap:
    """Return the picture of a set, as large as fits."""
    from wiring.drawings.signs.all_signs import sign

    pixmap = QPixmap(size * ratio)
    pixmap.setDevicePixelRatio(ratio)
    pixmap.fill(Qt.GlobalColor.transparent)
    parts = [p for p in fragment.parts if p.kind in kinds]
    if not parts:
        return pixmap
    plan = Plan(parts={p.id: p for p in parts}, wires={w.id: w for w in fragment.wires})
    box = _around(plan, kinds)
    scale = min(size.width() / box.width(), size.height() / box.height(), LARGEST_SCALE)
    painter = QPainter(pixmap)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.translate(size.width() / 2, size.height() / 2)
    painter.scale(scale, scale)
    painter.translate(-box.center())
    for wire in plan.wires.values():
        path = wire_path(plan, kinds, wire)
        painter.setPen(QPen(QColor(colour(wire.colour).rgb), 1.4 / scale))
        painter.drawLines([QLineF(*a, *b) for a, b in pairwise(path)])
    for part in parts:
        painter.save()
        painter.translate(part.x_mm, part.y_mm)
        painter.rotate(part.turn_deg)
        paint_items(painter, sign(kinds[part.kind], part), theme)
        painter.restore()
    painter.end()
    return pixmap


def _around(plan: Plan, kinds: Mapping[str, Kind]) -> QRectF:
    box = QRectF()
    for part in plan.parts.values():
        reach = max(kinds[part.kind].width_mm, kinds[part.kind].height_mm) / 2 + RIM_MM
        box = box.united(QRectF(part.x_mm - reach, part.y_mm - reach, 2 * reach, 2 * reach))
    return box
