"""Paints what is selected and what the pointer is over."""

import math
from collections.abc import Iterable, Sequence

from PySide6.QtCore import QPointF, QRect, QRectF, Qt
from PySide6.QtGui import QPainter, QPen

from app.canvas.geometry import Box
from app.canvas.hits.hit import end_rings
from app.canvas.painting.part_painter import shown_box, shown_boxes
from app.canvas.painting.shades import with_alpha
from app.canvas.sight import Sight
from wiring.plan.part import Part
from wiring.plan.places import Point

GAP_PX = 4.0
CORNER_PX = 5.0
STEM_PX = 15.0  # from the corner of the selection to its turning handle, across and up
HANDLE_PX = 5.5
MANY = 300  # from here on plain rectangles
FEW = 6  # are looked up one by one, which is quicker


def selection_box(sight: Sight, selected: frozenset[str]) -> Box | None:
    """Return the box in pixels round the selected parts; None for none, or for too many to turn by hand."""
    parts = [sight.plan.parts[i] for i in selected if i in sight.plan.parts]
    if not parts or len(parts) > MANY:
        return None
    return _round_all(_boxes(sight, parts))


def handle_place(box: Box) -> Point:
    """Return the middle of the turning handle of a selection, in pixels."""
    return box.right + GAP_PX + STEM_PX, box.top - GAP_PX - STEM_PX


def on_handle(box: Box | None, x_px: float, y_px: float) -> bool:
    """Return whether a pixel lies on the turning handle."""
    return box is not None and math.dist(handle_place(box), (x_px, y_px)) <= HANDLE_PX + 3


def paint_selected(painter: QPainter, sight: Sight, selected: Iterable[str], *, handle: bool) -> None:
    """Paint a copper frame round each selected part, and the handle that turns them."""
    ids = frozenset(selected)
    parts = [part for i, part in sight.plan.parts.items() if i in ids] if len(ids) > 1 else _one(sight, ids)
    if not parts:
        return
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.setPen(QPen(sight.shades.copper, 1.6))
    many = len(parts) > MANY
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, not many)
    boxes = _boxes(sight, parts)
    if many:
        painter.setPen(QPen(sight.shades.copper, 1))  # a hairline is painted many times as fast
        painter.drawRects([QRect(round(a), round(b), round(c - a), round(d - b)) for a, b, c, d in boxes])
        return
    rects = [_rect(Box(*row)) for row in boxes]
    for rect in rects:
        painter.drawRoundedRect(rect, CORNER_PX, CORNER_PX)
    if handle:
        box = _round_all(boxes)
        x, y = handle_place(box)
        painter.setPen(QPen(with_alpha(sight.shades.copper, 0.7), 1.2))
        painter.drawLine(QPointF(x, y), QPointF(box.right + GAP_PX - 1, box.top - GAP_PX + 1))
        painter.setPen(QPen(sight.shades.copper, 1.6))
        painter.setBrush(sight.shades.paper)
        painter.drawEllipse(QPointF(x, y), HANDLE_PX, HANDLE_PX)


def paint_bends(painter: QPainter, sight: Sight, selected: Iterable[str]) -> None:
    """Paint a small square on each bend of the selected wires, and the rings that move their ends."""
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, False)
    painter.setPen(QPen(sight.shades.paper, 1))
    painter.setBrush(sight.shades.copper)
    wires = [sight.plan.wires[i] for i in selected if i in sight.plan.wires][:MANY]
    for wire in wires:
        for bend in wire.bends:
            x, y = sight.camera.to_px(*bend)
            painter.drawRect(QRectF(x - 3.5, y - 3.5, 7, 7))
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setPen(QPen(sight.shades.copper, 1.8))
    painter.setBrush(sight.shades.paper)
    for wire in wires:
        for ring in end_rings(sight.geometry.paths.get(wire.id, ()), sight.camera.scale).values():
            painter.drawEllipse(QPointF(*sight.camera.to_px(*ring)), 3.5, 3.5)


def paint_hovered(painter: QPainter, sight: Sight, part_id: str) -> None:
    """Paint a thin frame round the part under the pointer."""
    part = sight.plan.parts.get(part_id)
    if part is None:
        return
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.setPen(QPen(with_alpha(sight.shades.copper, 0.55), 1.2))
    painter.drawRoundedRect(_rect(shown_box(sight, part)), CORNER_PX, CORNER_PX)


def _one(sight: Sight, ids: frozenset[str]) -> list[Part]:
    return [sight.plan.parts[i] for i in ids if i in sight.plan.parts]


def _boxes(sight: Sight, parts: Sequence[Part]) -> Sequence[Sequence[float]]:
    if len(parts) <= FEW:
        return [shown_box(sight, part) for part in parts]
    boxes: list[list[float]] = shown_boxes(sight, [part.id for part in parts]).tolist()
    return boxes


def _round_all(boxes: Sequence[Sequence[float]]) -> Box:
    left, top, right, bottom = zip(*boxes, strict=True)
    return Box(min(left), min(top), max(right), max(bottom))


def _rect(box: Box) -> QRectF:
    return QRectF(
        box.left - GAP_PX,
        box.top - GAP_PX,
        box.right - box.left + 2 * GAP_PX,
        box.bottom - box.top + 2 * GAP_PX,
    )
