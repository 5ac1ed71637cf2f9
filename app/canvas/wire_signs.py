"""Writes the colour letters near both ends of a wire and shows which way its current flows."""

import itertools
import math
from collections.abc import Sequence

from PySide6.QtCore import QPointF
from PySide6.QtGui import QPainter, QPen, QPolygonF

from app.canvas.camera import whole_px
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
ARROW = (QPointF(-3.5, -4), QPointF(4.5, 0), QPointF(-3.5, 4))


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
        for wire_id in ids:
            if wire_id not in self._places:
                letters = sight.plan.wires[wire_id].colour
                self._places[wire_id] = self._placed(sight.geometry.paths[wire_id], letters, scale)

    def paint(self, painter: QPainter, sight: Sight, ids: Sequence[WireId]) -> None:
        """Paint letters and arrows on those wires, once they are placed and large enough on the screen."""
        scale = sight.camera.scale
        if scale < LETTERS_FROM:
            return
        left, top = sight.camera.left_mm * scale, sight.camera.top_mm * scale
        painter.save()
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        flows = sight.figures.wires if sight.figures is not None and scale >= ARROWS_FROM else {}
        for wire_id in ids:
            letters = sight.plan.wires[wire_id].colour
            places = self._places.get(wire_id)
            if places:
                pixmap = PLATE.pixmap(letters, sight.shades, sight.ratio)
                for box in places:
                    painter.drawPixmap(whole_px(box.left - left), whole_px(box.top - top), pixmap)
            figure = flows.get(wire_id)
            if figure is not None and abs(figure.current_a) > FLOWING_A:
                path = [sight.camera.to_px(*point) for point in sight.geometry.paths[wire_id]]
                _paint_arrow(painter, sight, path if figure.current_a > 0 else path[::-1])
        painter.restore()

    def _placed(self, path_mm: Sequence[Point], letters: str, scale: float) -> list[Box]:
        """Take room for the letters near both ends of a wire, as far as there is any."""
        path = [(x * scale, y * scale) for x, y in path_mm]
        length = sum(map(math.dist, path, path[1:]))
        width, high = PLATE.width(letters), PLATE.high_px
        found = []
        for way in (path, path[::-1]):
            for from_end in FROM_END_PX:
                at = along(way, from_end + width / 4, length)
                if at is None:
                    break
                x, y = at
                box = Box(x - width / 2, y - high / 2, x + width / 2, y + high / 2)
                if self._room.takes(box):
                    found.append(box)
                    break
        return found


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
    painter.drawPolygon(QPolygonF(ARROW))
    painter.restore()
