"""Writes the colour letters near both ends of a wire and shows which way its current flows."""

import itertools
import math
from collections.abc import Sequence

from PySide6.QtCore import QPointF
from PySide6.QtGui import QPainter, QPen

from app.canvas.geometry import Box
from app.canvas.label_room import LabelRoom
from app.canvas.plates import Plate
from app.canvas.sight import Sight
from app.canvas.wire_paths import along
from wiring.plan.names import WireId
from wiring.plan.places import Point

LETTERS_FROM = 1.5  # pixels per millimetre from which the letters are written
ARROWS_FROM = 1.8
FROM_END_PX = (22.0, 37.0, 52.0)  # where letters may stand, so that those of neighbours stand in steps
PLATE = Plate(font_px=9, high_px=12.0, rim_px=2.5, ground=0.92)
LEAST_LEG_PX = 40.0  # a shorter leg has no room for an arrow
FLOWING_A = 0.0005  # below this a wire counts as without current


def paint_wire_signs(painter: QPainter, sight: Sight, ids: Sequence[WireId]) -> None:
    """Paint letters and arrows on those wires, as far as they are large enough on the screen."""
    if sight.camera.scale < LETTERS_FROM:
        return
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    room = LabelRoom()
    for wire_id in ids:
        path = [sight.camera.to_px(*point) for point in sight.geometry.paths[wire_id]]
        for way in (path, path[::-1]):
            _paint_letters(painter, sight, sight.plan.wires[wire_id].colour, way, room)
        figure = sight.figures.wires.get(wire_id) if sight.figures is not None else None
        if figure is not None and sight.camera.scale >= ARROWS_FROM and abs(figure.current_a) > FLOWING_A:
            _paint_arrow(painter, sight, path if figure.current_a > 0 else path[::-1])
    painter.restore()


def _paint_letters(
    painter: QPainter, sight: Sight, letters: str, path: Sequence[Point], room: LabelRoom
) -> None:
    width, high = PLATE.width(letters), PLATE.high_px
    for distance in FROM_END_PX:
        at = along(path, distance + width / 4)
        if at is None:
            return
        box = Box(at[0] - width / 2, at[1] - high / 2, at[0] + width / 2, at[1] + high / 2)
        if room.is_free(box):
            room.take(box)
            place = QPointF(round(box.left), round(box.top))
            painter.drawPixmap(place, PLATE.pixmap(letters, sight.shades, sight.ratio))
            return


def _paint_arrow(painter: QPainter, sight: Sight, path: Sequence[Point]) -> None:
    """Paint a small tip in the middle of the longest leg."""
    start, end = max(itertools.pairwise(path), key=lambda leg: math.dist(*leg))
    if math.dist(start, end) < LEAST_LEG_PX:
        return
    painter.save()
    painter.translate((start[0] + end[0]) / 2, (start[1] + end[1]) / 2)
    painter.rotate(math.degrees(math.atan2(end[1] - start[1], end[0] - start[0])))
    painter.setPen(QPen(sight.shades.paper, 1))
    painter.setBrush(sight.shades.ink)
    painter.drawPolygon([QPointF(-3.5, -4), QPointF(4.5, 0), QPointF(-3.5, 4)])
    painter.restore()
