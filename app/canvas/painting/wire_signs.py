"""Writes the colour letters near both ends of a wire and shows which way its current flows."""

import itertools
import math
from collections.abc import Iterable, Sequence

import numpy as np
from PySide6.QtCore import QPointF
from PySide6.QtGui import QPainter, QPen, QPolygonF

from app.canvas.camera import whole_px
from app.canvas.geometry import Box
from app.canvas.painting.label_room import LabelRoom
from app.canvas.painting.near_boxes import NearBoxes
from app.canvas.painting.part_painter import shown_boxes
from app.canvas.painting.plates import Plate
from app.canvas.sight import Sight
from app.canvas.wire_paths import along
from wiring.plan.names import WireId
from wiring.plan.places import Point

LETTERS_FROM = 1.5  # pixels per millimetre from which the letters are written
ARROWS_FROM = 1.8
FROM_END_PX = (
    22.0,
    37.0,
    52.0,
    67.0,
    82.0,
    97.0,
)  # where letters may stand, so that those of neighbours stand in steps
PLATE = Plate(font_px=9, usual_px=12.0, rim_px=2.5, ground=0.92)
NEAR_PX = 20.0  # how far beside letters parts are looked at: signs are never smaller on the screen
LEAST_LEG_PX = 40.0  # a shorter leg has no room for an arrow
FLOWING_A = 0.0005  # below this a wire counts as without current
ARROW = (QPointF(-4, -4.5), QPointF(5.5, 0), QPointF(-4, 4.5))
ARROW_PX = 9.0  # half the edge of a square that holds it, turned any way, with its edge


class WireSigns:
    """Keeps where letters stand, in pixels from the plan's origin, while plan and scale are the same."""

    def __init__(self) -> None:
        self._key: tuple[object, float] = (None, 0.0)
        self._room = LabelRoom()
        self._places: dict[WireId, list[Box]] = {}

    def is_of(self, sight: Sight) -> bool:
        """Return whether what it keeps belongs to that plan at that scale."""
        return self._key[0] is sight.plan and self._key[1] == sight.camera.scale

    def place(self, sight: Sight, ids: Sequence[WireId]) -> None:
        """Find room for the letters of those wires that have none yet."""
        scale = sight.camera.scale
        if scale < LETTERS_FROM:
            return
        if not self.is_of(sight):
            self._key, self._room, self._places = (sight.plan, scale), LabelRoom(), {}
        news = [i for i in ids if i not in self._places]
        if not news:
            return
        wires, paths = sight.plan.wires, sight.geometry.paths
        rows = [_options(paths[i], wires[i].colour, scale) for i in news]
        free = iter(_off_parts(sight, [box for row in rows for end in row for box in end]))
        for wire_id, row in zip(news, rows, strict=True):
            may = [[box for box in end if next(free)] for end in row]
            chosen = (next((box for box in end if self._room.takes(box)), None) for end in may)
            self._places[wire_id] = [box for box in chosen if box is not None]

    def paint(self, painter: QPainter, sight: Sight, ids: Sequence[WireId]) -> None:
        """Paint letters and arrows on those wires, once they are placed and large enough on the screen."""
        scale = sight.camera.scale
        if scale < LETTERS_FROM:
            return
        left, top = sight.camera.left_mm * scale, sight.camera.top_mm * scale
        painter.save()
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        there = flows(sight, ids)
        for wire_id in ids:
            letters = sight.plan.wires[wire_id].colour
            places = self._places.get(wire_id)
            if places:
                pixmap = PLATE.pixmap(letters, sight.shades, sight.ratio)
                for box in places:
                    painter.drawPixmap(whole_px(box.left - left), whole_px(box.top - top), pixmap)
            if wire_id in there:
                _paint_arrow(painter, sight, *_longest_leg(sight, wire_id, there[wire_id]))
        painter.restore()


def _options(path_mm: Sequence[Point], letters: str, scale: float) -> tuple[list[Box], list[Box]]:
    """Return where letters may stand near both ends of a wire, in pixels from the plan's origin."""
    path = [(x * scale, y * scale) for x, y in path_mm]
    length = sum(map(math.dist, path, path[1:]))
    width, high = PLATE.width(letters), PLATE.high_px
    found: tuple[list[Box], list[Box]] = [], []
    for way, boxes in zip((path, path[::-1]), found, strict=True):
        for from_end in FROM_END_PX:
            at = along(way, from_end + width / 4, length)
            if at is None:
                break
            x, y = at
            boxes.append(Box(x - width / 2, y - high / 2, x + width / 2, y + high / 2))
    return found


def _off_parts(sight: Sight, boxes: Sequence[Box]) -> list[bool]:
    """Return for each box, in pixels from the plan's origin, whether no sign of a part covers it."""
    if not boxes:
        return []
    rows = np.array(boxes)
    left, top, *_ = (rows.min(axis=0) / sight.camera.scale).tolist()
    *_, right, bottom = (rows.max(axis=0) / sight.camera.scale).tolist()
    parts = sight.geometry.parts_in(Box(left, top, right, bottom).grown(NEAR_PX / sight.camera.scale))
    if not parts:
        return [True] * len(boxes)
    origin = np.array([sight.camera.left_mm, sight.camera.top_mm] * 2) * sight.camera.scale
    covered = NearBoxes(shown_boxes(sight, parts) + origin).overlapped(rows)
    return [not one for one in covered.tolist()]


def flows(sight: Sight, ids: Iterable[WireId]) -> dict[WireId, bool]:
    """Return which wires carry an arrow, and whether their current flows from start to end."""
    if sight.figures is None or sight.camera.scale < ARROWS_FROM:
        return {}
    figures = sight.figures.wires
    found = ((i, figures[i].current_a) for i in ids if i in figures)
    return {i: current_a > 0 for i, current_a in found if abs(current_a) > FLOWING_A}


def arrow_box(sight: Sight, wire_id: WireId) -> Box:
    """Return the box in pixels that the arrow of a wire fills, either way."""
    (ax, ay), (bx, by) = _longest_leg(sight, wire_id, True)
    x, y = (ax + bx) / 2, (ay + by) / 2
    return Box(x - ARROW_PX, y - ARROW_PX, x + ARROW_PX, y + ARROW_PX)


def _longest_leg(sight: Sight, wire_id: WireId, ahead: bool) -> tuple[Point, Point]:
    path = [sight.camera.to_px(*point) for point in sight.geometry.paths[wire_id]]
    start, end = max(itertools.pairwise(path), key=lambda leg: math.dist(*leg))
    return (start, end) if ahead else (end, start)


def _paint_arrow(painter: QPainter, sight: Sight, start: Point, end: Point) -> None:
    """Paint a small tip in the middle of a leg."""
    if math.dist(start, end) < LEAST_LEG_PX:
        return
    painter.save()
    painter.translate((start[0] + end[0]) / 2, (start[1] + end[1]) / 2)
    painter.rotate(math.degrees(math.atan2(end[1] - start[1], end[0] - start[0])))
    # Light with a dark edge: it shows on black wires and on white ones.
    light, edge = sight.shades.paper, sight.shades.ink
    if sight.shades.dark:
        light, edge = edge, light
    painter.setPen(QPen(edge, 1))
    painter.setBrush(light)
    painter.drawPolygon(QPolygonF(ARROW))
    painter.restore()
