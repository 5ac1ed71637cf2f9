"""Paints what a running gesture shows: parts and wires as they would be, ghost, band, guides, landing."""

import numpy as np
from PySide6.QtCore import QLineF, QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPen, QPolygonF

from app.canvas.geometry import Box
from app.canvas.gestures.pointer import Preview
from app.canvas.painting.harness_painter import paint_harnesses
from app.canvas.painting.joist_painter import paint_bar_preview
from app.canvas.painting.misfit_painter import paint_misfits
from app.canvas.painting.part_painter import PartPainter
from app.canvas.painting.plates import Plate
from app.canvas.painting.shades import with_alpha
from app.canvas.painting.wire_painter import WirePainter
from app.canvas.painting.wire_pens import wire_pens
from app.canvas.painting.wireway_painter import paint_wireways
from app.canvas.sight import Sight
from app.canvas.sub_plan import sub_plan, with_ways
from app.canvas.touched import Touched
from wiring.plan.places import Point
from wiring.plan.plan import Plan
from wiring.quantities.wording import worded

TERMINALS_MOST = 900
WIRES_SMOOTH = 24  # with more wires pulled along, they are drawn plain until they are let go
SIZE_PLATE = Plate(font_px=11, usual_px=16.0, rim_px=4.0, ground=0.92)
DOT_PX, LANDING_PX = 3.4, 7.5


def paint_preview(
    painter: QPainter,
    sight: Sight,
    preview: Preview,
    parts: PartPainter,
    wires: WirePainter,
    wire_look: tuple[str, str],
    kept: Touched,
) -> None:
    """Paint a preview over the still picture; `wire_look` is size and colour of a wire being pulled."""
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    if preview.plan is not None:
        _paint_touched(painter, sight, preview.plan, preview.touched, parts, kept)
    else:
        kept.forget()
    _paint_guides(painter, sight, preview)
    if preview.ghost is not None:
        painter.setOpacity(0.72)
        parts.paint_one(painter, sight, preview.ghost)
        painter.setOpacity(1.0)
    paint_misfits(painter, sight, preview)
    if preview.lands:
        _paint_terminals(painter, sight)
    if len(preview.line) > 1:
        _paint_line(painter, sight, preview, preview.look or wire_look)
    if preview.landing is not None and preview.landing in sight.geometry.terminals:
        at = QPointF(*sight.camera.to_px(*sight.geometry.terminals.get(preview.landing).tolist()))
        painter.setPen(QPen(sight.shades.copper, 2))
        painter.setBrush(with_alpha(sight.shades.copper, 0.25))
        painter.drawEllipse(at, LANDING_PX, LANDING_PX)
    if preview.band is not None:
        _paint_band(painter, sight, preview)
    if preview.frame is not None:
        _paint_frame(painter, sight, preview.frame)
    for bar in (preview.bar, *preview.bars) if preview.bar is not None else preview.bars:
        paint_bar_preview(painter, sight, bar)
    if preview.outline:
        _paint_outline(painter, sight, preview.outline)


def _paint_touched(
    painter: QPainter, sight: Sight, plan: Plan, touched: frozenset[str], parts: PartPainter, kept: Touched
) -> None:
    with kept.laid(sight, plan, touched) as there:
        some = sub_plan(there.plan, touched)
        # A painter of its own: outlines of a preview are worth nothing a moment later.
        wires = [w for w in some.wires if w in there.geometry.paths]
        led = there._replace(plan=with_ways(there.plan, touched))
        paint_wireways(painter, led)
        WirePainter().paint(painter, there, wires, many=WIRES_SMOOTH)
        paint_harnesses(painter, led)
        # Parts that stand still lie over the ends of the wires that are being pulled along.
        parts.paint(painter, there, sorted(some.parts, key=lambda p: p in touched))


def _paint_guides(painter: QPainter, sight: Sight, preview: Preview) -> None:
    pen = QPen(with_alpha(sight.shades.copper, 0.8), 1)
    pen.setDashPattern([4, 3])
    painter.setPen(pen)
    for a, b in preview.guides:
        painter.drawLine(QLineF(QPointF(*sight.camera.to_px(*a)), QPointF(*sight.camera.to_px(*b))))


def _paint_terminals(painter: QPainter, sight: Sight) -> None:
    rows, box = sight.geometry.terminals.values, sight.visible
    inside = (
        (rows[:, 0] >= box.left)
        & (rows[:, 0] <= box.right)
        & (rows[:, 1] >= box.top)
        & (rows[:, 1] <= box.bottom)
    )
    seen = rows[np.flatnonzero(inside)[:TERMINALS_MOST]]
    camera = sight.camera
    pixels = ((seen - np.array([camera.left_mm, camera.top_mm])) * camera.scale).tolist()
    radius = min(max(DOT_PX, 1.5 * camera.scale), 6.0)
    painter.setPen(QPen(sight.shades.paper, 1.2))
    painter.setBrush(sight.shades.copper)
    for x, y in pixels:
        painter.drawEllipse(QPointF(x, y), radius, radius)


def _paint_line(painter: QPainter, sight: Sight, preview: Preview, wire_look: tuple[str, str]) -> None:
    pens = wire_pens(*wire_look, sight.camera.scale, sight.shades.dark)
    points = [QPointF(*sight.camera.to_px(*p)) for p in preview.line]
    line = QPolygonF(points)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    for pen in (pens.edge, pens.core, pens.stripe):
        if pen is None:
            continue
        on_screen = QPen(pen)
        on_screen.setWidthF(pen.widthF() * sight.camera.scale)
        painter.setPen(on_screen)
        painter.drawPolyline(line)
    painter.setPen(QPen(sight.shades.paper, 1))
    painter.setBrush(sight.shades.copper)
    for corner in points[1:-1]:
        painter.drawRect(QRectF(corner.x() - 2.5, corner.y() - 2.5, 5, 5))


def _paint_band(painter: QPainter, sight: Sight, preview: Preview) -> None:
    assert preview.band is not None
    a, b = (QPointF(*sight.camera.to_px(*p)) for p in preview.band)
    pen = QPen(sight.shades.copper, 1)
    if b.x() < a.x():
        pen.setDashPattern([4, 3])
    painter.setPen(pen)
    painter.setBrush(with_alpha(sight.shades.copper, 0.10))
    painter.drawRect(QRectF(a, b).normalized())


def _paint_frame(painter: QPainter, sight: Sight, box: Box) -> None:
    """Paint the rectangle of an area and its size."""
    rect = QRectF(
        QPointF(*sight.camera.to_px(box.left, box.top)), QPointF(*sight.camera.to_px(box.right, box.bottom))
    )
    painter.setPen(QPen(sight.shades.copper, 1.6))
    painter.setBrush(with_alpha(sight.shades.copper, 0.08))
    painter.drawRoundedRect(rect, 4, 4)
    units = sight.plan.habits.units
    across, down = (box.right - box.left) / 1000, (box.bottom - box.top) / 1000
    size = f"{worded(across, 'length', units)} × {worded(down, 'length', units)}"
    plate = SIZE_PLATE.pixmap(size, sight.shades, sight.ratio)
    painter.drawPixmap(rect.bottomLeft() + QPointF(0, 5), plate)


def _paint_outline(painter: QPainter, sight: Sight, points: tuple[Point, ...]) -> None:
    places = [QPointF(*sight.camera.to_px(*point)) for point in points]
    painter.setPen(QPen(sight.shades.copper, 2))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawPolyline(QPolygonF(places))
    painter.setPen(QPen(sight.shades.paper, 1))
    painter.setBrush(sight.shades.copper)
    for place in places:
        painter.drawEllipse(place, 3.5, 3.5)
