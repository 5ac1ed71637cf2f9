"""Paints parts: their light, their signs, their designations."""

import math
from collections.abc import Sequence

import numpy as np
from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPen

from app.canvas.geometry import Box
from app.canvas.label_room import LabelRoom
from app.canvas.sight import Sight
from app.canvas.stamps import Stamps, paint_sign, shown_scale
from app.theme.fonts import screen_font
from wiring.catalogue.kind import Kind
from wiring.drawings.signs.hand import State
from wiring.plan.names import PartId
from wiring.plan.part import Part
from wiring.standards.lightness import lightness

CROWD = 1500  # visible parts from which they are painted as plain rectangles
LABELS_FROM = 0.4  # pixels per millimetre from which designations are written
LABELS_MOST = 500
WIRE_END_PX = 22.0  # of each wire's end that labels leave free
OWN_WORDS_FROM = 1.3  # and from which the builder's own words follow


class PartPainter:
    """Paints parts from stamps it keeps."""

    def __init__(self) -> None:
        self._stamps = Stamps()

    def paint(self, painter: QPainter, sight: Sight, ids: Sequence[PartId]) -> None:
        """Paint those parts as the plan has them."""
        if len(ids) > CROWD:
            _paint_crowd(painter, sight, ids)
            return
        painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform, False)
        for part_id in ids:
            self.paint_one(painter, sight, sight.plan.parts[part_id])

    def paint_one(self, painter: QPainter, sight: Sight, part: Part) -> None:
        """Paint one part where it stands."""
        kind = sight.kinds.get(part.kind)
        state, scale = part_state(sight, part, kind), sight.camera.scale
        x, y = sight.camera.to_px(part.x_mm, part.y_mm)
        stamp = self._stamps.stamp(kind, part, state, scale, sight.shades, sight.ratio)
        if stamp is not None:
            painter.drawPixmap(QPointF(round(x + stamp.dx), round(y + stamp.dy)), stamp.pixmap)
            return
        painter.save()
        painter.translate(x, y)
        paint_sign(painter, kind, part, state, scale, sight.shades)
        painter.restore()


def part_state(sight: Sight, part: Part, kind: Kind | None) -> State:
    """Return the position a part stands in and how bright it looks."""
    light = None
    if kind is not None and sight.figures is not None:  # an old light is better than a flicker
        figure = sight.figures.parts.get(part.id)
        light = figure.light if figure is not None else None
    return State(sight.positions.get(part.id, ""), None if light is None else lightness(light))


def _paint_crowd(painter: QPainter, sight: Sight, ids: Sequence[PartId]) -> None:
    camera = sight.camera
    boxes = np.array([sight.geometry.parts.get(i)[:4] for i in ids])
    pixels = (boxes - np.array([camera.left_mm, camera.top_mm] * 2)) * camera.scale
    sizes = np.maximum(pixels[:, 2:] - pixels[:, :2], 3.0)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, False)
    painter.setPen(QPen(sight.shades.ink, 1))
    painter.setBrush(sight.shades.raised)
    rows = np.column_stack((pixels[:, :2], sizes)).tolist()
    painter.drawRects([QRectF(*row) for row in rows])


class LabelPainter:
    """Writes the designations of parts beneath them, where there is room."""

    def paint(self, painter: QPainter, sight: Sight, ids: Sequence[PartId]) -> None:
        """Write what fits without running over another label."""
        if (sight.camera.scale < LABELS_FROM and len(ids) > 60) or len(ids) > LABELS_MOST:
            return
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setFont(screen_font(11, "semibold"))
        room = LabelRoom()
        for part_id in ids:
            room.take(shown_box(sight, sight.plan.parts[part_id]))
            _keep_wire_ends_free(sight, part_id, room)
        for part_id in ids:
            part = sight.plan.parts[part_id]
            words = f"-{part.designation}"
            if part.label and sight.camera.scale >= OWN_WORDS_FROM:
                words += f"  {part.label}"
            _paint_label(painter, sight, words, shown_box(sight, part), room)


def _keep_wire_ends_free(sight: Sight, part_id: PartId, room: LabelRoom) -> None:
    """Keep labels off the first stretch of the wires that end on a part."""
    for wire_id in sight.geometry.wires_of((part_id,)):
        path, wire = sight.geometry.paths.get(wire_id, ()), sight.plan.wires.get(wire_id)
        if len(path) < 2 or wire is None:
            continue
        end, onward = path[:2] if wire.start.part == part_id else path[:-3:-1]
        (x, y), (u, v) = sight.camera.to_px(*end), sight.camera.to_px(*onward)
        share = min(1.0, WIRE_END_PX / max(math.dist((x, y), (u, v)), 1e-6))
        u, v = x + (u - x) * share, y + (v - y) * share
        room.take(Box(min(x, u) - 1, min(y, v) - 1, max(x, u) + 1, max(y, v) + 1))


def _paint_label(painter: QPainter, sight: Sight, words: str, box: Box, room: LabelRoom) -> None:
    metrics = painter.fontMetrics()
    place = room.find(box, metrics.horizontalAdvance(words) + 6.0, metrics.height())
    if place is None:
        return
    rect = QRectF(place.left, place.top, place.right - place.left, place.bottom - place.top)
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(sight.shades.label_ground)
    painter.drawRoundedRect(rect, 3, 3)
    painter.setPen(sight.shades.ink)
    painter.drawText(rect, Qt.AlignmentFlag.AlignCenter, words)


def shown_box(sight: Sight, part: Part) -> Box:
    """Return the upright box in pixels that a part's sign fills on the screen."""
    row = sight.geometry.parts.get(part.id)
    camera = sight.camera
    left, top = camera.to_px(row[0], row[1])
    right, bottom = camera.to_px(row[2], row[3])
    own = Box(*row[8:12].tolist())
    growth = shown_scale(own, camera.scale) / camera.scale
    if growth <= 1.0:
        return Box(left, top, right, bottom)
    x, y = camera.to_px(row[4], row[5])
    return Box(
        x + (left - x) * growth, y + (top - y) * growth, x + (right - x) * growth, y + (bottom - y) * growth
    )
