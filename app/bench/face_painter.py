"""Paints the bench: the plate and its spacing, what is on it, marks of what is chosen or does not fit."""

import math

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QFontMetricsF, QPainter, QPen, QPolygonF

from app.bench.bench import Pencil
from app.bench.face_ground import paint_on_face
from app.bench.face_hit import FaceHit
from app.bench.face_items import back_items, back_words, front_items, part_items
from app.bench.face_pointer import FacePreview
from app.bench.face_rulers import WIDE_PX, paint_rulers
from app.bench.face_sight import FaceSight, item_box, part_box
from app.bench.face_still import FaceStill
from app.bench.face_wire_painter import paint_chosen_wires, paint_hovered_wire, paint_pulled
from app.bench.face_wires import insulated, laid_anew
from app.canvas.painting.misfit_painter import paint_rings
from app.canvas.painting.shades import with_alpha
from app.theme.fonts import screen_font
from wiring.drawings.panel_face import line_colour
from wiring.edits.panel_spacing import spacing_of
from wiring.pictures.picture import Path, Pen
from wiring.plan.panel_bodies import APART_MM, Body, bodies_on, misfits
from wiring.plan.panel_places import to_face
from wiring.plan.places import Point

DOTS_FROM_PX, MOST_DOTS = 7.0, 6000
GAP_PX = 4.0
SIDE_WORDS = {
    False: ("FRONT", "as you stand before it"),
    True: ("FROM BEHIND", "left and right are swapped"),
}


def paint_bench(
    painter: QPainter,
    still: FaceStill,
    sight: FaceSight,
    preview: FacePreview,
    hovered: FaceHit | None,
    pencil: Pencil,
    wire_look: tuple[str, str],
    at_px: Point | None,
) -> None:
    """Paint everything; a preview is shown as if it were done; `at_px` is where the pointer is."""
    shown = _as_previewed(sight, preview)
    still.paint(painter, shown, _paint_still)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    if hovered is not None and preview == FacePreview():
        _paint_hovered(painter, shown, hovered)
        paint_hovered_wire(painter, shown, hovered)
    if preview.lands:
        paint_pulled(painter, shown, preview)
    if len(preview.line) > 1:
        paint_on_face(painter, shown, tuple(insulated([preview.line], *(preview.look or wire_look))))
    if preview.ghost is not None:
        painter.setOpacity(0.75)
        paint_on_face(painter, shown, part_items(shown, preview.ghost))
        painter.setOpacity(1.0)
    if preview.outline:
        _paint_outline(painter, shown, preview.outline, pencil)
    if preview.band is not None:
        rect = _rect(shown, (*preview.band[0], *preview.band[1])).normalized()
        painter.setPen(QPen(shown.whole.shades.copper, 1))
        painter.setBrush(with_alpha(shown.whole.shades.copper, 0.10))
        painter.drawRect(rect)
    paint_rulers(painter, shown, at_px)
    _paint_side(painter, shown)


def _paint_still(painter: QPainter, sight: FaceSight) -> None:
    """Paint what stands still while the pointer moves."""
    painter.fillRect(QRectF(0, 0, sight.whole.width_px, sight.whole.height_px), sight.whole.shades.around)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    _paint_plate(painter, sight)
    paint_on_face(painter, sight, back_items(sight) if sight.camera.behind else front_items(sight))
    _paint_misfits(painter, sight)
    _paint_chosen(painter, sight)
    if sight.camera.behind:
        paint_chosen_wires(painter, sight)
        paint_on_face(painter, sight, back_words(sight))


def _as_previewed(sight: FaceSight, preview: FacePreview) -> FaceSight:
    plan = preview.plan
    if plan is None or sight.panel.id not in plan.panels:
        return sight
    shown = sight._replace(plan=plan, panel=plan.panels[sight.panel.id])
    return shown._replace(laid=laid_anew(shown)) if sight.camera.behind else shown


def _paint_plate(painter: QPainter, sight: FaceSight) -> None:
    shades, panel = sight.whole.shades, sight.panel
    rect = _rect(sight, (0.0, 0.0, panel.width_mm, panel.height_mm))
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(shades.shadow)
    painter.drawRoundedRect(rect.translated(0, 4), 3, 3)
    painter.setBrush(shades.raised)
    pen = QPen(shades.board_edge, 1.4)
    if sight.camera.behind:
        pen.setDashPattern([6, 3])
    painter.setPen(pen)
    painter.drawRoundedRect(rect, 3, 3)
    spacing = spacing_of(sight.plan, panel)
    if spacing * sight.camera.scale < DOTS_FROM_PX:
        spacing *= math.ceil(DOTS_FROM_PX / (spacing * sight.camera.scale))
    across, down = int(panel.width_mm / spacing) + 1, int(panel.height_mm / spacing) + 1
    if across * down > MOST_DOTS:
        return
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(with_alpha(shades.quiet, 0.45))
    for row in range(down):
        for column in range(across):
            x, y = sight.camera.to_px((column * spacing, row * spacing))
            painter.drawEllipse(QPointF(x, y), 0.9, 0.9)


def _paint_misfits(painter: QPainter, sight: FaceSight) -> None:
    """Ring the bodies that cannot be mounted: the room each needs, hatched, with a diamond beside it."""
    bodies = bodies_on(sight.plan, sight.kinds, sight.panel)
    wrong = misfits(bodies, sight.panel)
    rings = (_ring(sight, body) for body in bodies if body.part.id in wrong)
    paint_rings(painter, sight.whole.shades, rings)


def _ring(sight: FaceSight, body: Body) -> tuple[QRectF, bool]:
    rim = APART_MM / 2
    left, top = to_face(sight.panel, (body.box[0], body.box[1]))
    right, bottom = to_face(sight.panel, (body.box[2], body.box[3]))
    return _rect(sight, (left - rim, top - rim, right + rim, bottom + rim)), bool(body.radius_mm)


def _paint_chosen(painter: QPainter, sight: FaceSight) -> None:
    painter.setBrush(Qt.BrushStyle.NoBrush)
    copper = sight.whole.shades.copper
    painter.setPen(QPen(copper, 1.6))
    for part in sight.at_back if sight.camera.behind else sight.parts:
        if part.id in sight.selected:
            painter.drawRoundedRect(_framed(sight, part_box(sight, part)), 4, 4)
    for item in sorted(sight.items):
        painter.setPen(QPen(copper, 1.6))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        if item.sort == "text" and item.number < len(sight.panel.texts):
            painter.drawRoundedRect(_framed(sight, item_box(sight.panel, item)), 3, 3)
        elif item.sort == "line" and item.number < len(sight.panel.lines):
            places = [QPointF(*sight.camera.to_px(p)) for p in sight.panel.lines[item.number].points]
            painter.drawPolyline(QPolygonF(places))
            painter.setPen(QPen(sight.whole.shades.raised, 1))
            painter.setBrush(copper)
            for place in places:
                painter.drawRect(QRectF(place.x() - 3.5, place.y() - 3.5, 7, 7))


def _paint_hovered(painter: QPainter, sight: FaceSight, hit: FaceHit) -> None:
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.setPen(QPen(with_alpha(sight.whole.shades.copper, 0.55), 1.2))
    part = sight.plan.parts.get(hit.part)
    if part is not None and part.id not in sight.selected:
        painter.drawRoundedRect(_framed(sight, part_box(sight, part)), 4, 4)
    elif hit.item is not None and hit.item not in sight.items:
        painter.drawRoundedRect(_framed(sight, item_box(sight.panel, hit.item)), 3, 3)


def _paint_outline(painter: QPainter, sight: FaceSight, points: tuple[Point, ...], pencil: Pencil) -> None:
    paint_on_face(
        painter, sight, (Path(points, Pen(line_colour(pencil.line_colour), pencil.line_mm), opacity=0.6),)
    )
    painter.setPen(QPen(sight.whole.shades.raised, 1))
    painter.setBrush(sight.whole.shades.copper)
    for point in points:
        painter.drawEllipse(QPointF(*sight.camera.to_px(point)), 3.5, 3.5)


def _paint_side(painter: QPainter, sight: FaceSight) -> None:
    """Say in the corner which side is up: an open sign for the front, a solid one for the back."""
    shades, behind = sight.whole.shades, sight.camera.behind
    title, says = SIDE_WORDS[behind]
    bold = screen_font(12, "bold")
    width = QFontMetricsF(bold).horizontalAdvance(title) + 16
    plate = QRectF(WIDE_PX + 12, WIDE_PX + 8, width, 22)
    words = f"{sight.panel.name}, {says}"
    room = QFontMetricsF(screen_font(12)).horizontalAdvance(words) + 10
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(with_alpha(shades.around, 0.9))
    painter.drawRect(plate.adjusted(-3, -3, room + 6, 3))
    painter.setPen(QPen(shades.ink, 1.3))
    painter.setBrush(shades.ink if behind else shades.paper)
    painter.drawRoundedRect(plate, 3, 3)
    painter.setFont(bold)
    painter.setPen(shades.paper if behind else shades.ink)
    painter.drawText(plate, Qt.AlignmentFlag.AlignCenter, title)
    painter.setFont(screen_font(12))
    painter.setPen(shades.quiet)
    beside = QRectF(plate.right() + 8, plate.top(), room, 22)
    painter.drawText(beside, Qt.AlignmentFlag.AlignVCenter, words)


def _rect(sight: FaceSight, box: tuple[float, float, float, float]) -> QRectF:
    a, b = sight.camera.to_px((box[0], box[1])), sight.camera.to_px((box[2], box[3]))
    return QRectF(QPointF(*a), QPointF(*b)).normalized()


def _framed(sight: FaceSight, box: tuple[float, float, float, float]) -> QRectF:
    return _rect(sight, box).adjusted(-GAP_PX, -GAP_PX, GAP_PX, GAP_PX)
