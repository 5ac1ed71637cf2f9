"""Paints wires: one by one with edges where there is time for it, in batches by colour where not."""

import itertools
import math
from collections import defaultdict
from collections.abc import Iterable, Sequence

from PySide6.QtCore import QLineF, QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPainterPath, QPen

from app.canvas.shades import with_alpha
from app.canvas.sight import Sight
from app.canvas.wire_pens import WirePens, wire_pens
from app.theme.fonts import screen_font
from wiring.plan.names import WireId
from wiring.plan.places import Point
from wiring.plan.plan import Plan

MANY = 450  # visible wires from which they are painted in batches: square corners, no smoothing
CROWD = 2000  # from which they are hairlines
CORNER_MM = 6.0
LETTERS_FROM = 1.15  # pixels per millimetre from which the colour letters are written on the wires
ARROWS_FROM = 1.6
LETTERS_MOST = 160
FLOWING_A = 0.0005  # below this a wire counts as without current


class WirePainter:
    """Paints wires and keeps their rounded outlines until they run another way."""

    def __init__(self) -> None:
        self._outlines: dict[WireId, tuple[tuple[Point, ...], QPainterPath]] = {}
        self._lines: dict[WireId, tuple[tuple[Point, ...], list[QLineF]]] = {}
        self._whole: tuple[Plan, dict[tuple[str, str], list[QLineF]]] | None = None

    def paint(self, painter: QPainter, sight: Sight, ids: Sequence[WireId]) -> None:
        """Paint those wires as the plan has them."""
        if not ids:
            return
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.save()
        _to_plan(painter, sight)
        if len(ids) > MANY:
            self._paint_batches(painter, sight, ids)
        else:
            for wire_id in ids:
                self._paint_one(painter, sight, wire_id)
        painter.restore()
        if len(ids) <= LETTERS_MOST:
            for wire_id in ids:
                self._paint_signs(painter, sight, wire_id)

    def glow(self, painter: QPainter, sight: Sight, ids: Iterable[WireId], share: float) -> None:
        """Lay a copper glow round wires and paint them again over it."""
        seen = [w for w in ids if w in sight.geometry.paths and w in sight.plan.wires]
        if not seen:
            return
        painter.save()
        _to_plan(painter, sight)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing, len(seen) <= MANY)
        for wire_id in seen:
            extra_px = 7.0
            pen = QPen(with_alpha(sight.shades.copper, share), 1)
            pen.setWidthF((self._pens(sight, wire_id).width_px + extra_px) / sight.camera.scale)
            pen.setCapStyle(Qt.PenCapStyle.RoundCap)
            pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
            painter.strokePath(self.outline(wire_id, sight.geometry.paths[wire_id]), pen)
        painter.restore()
        self.paint(painter, sight, seen)

    def outline(self, wire_id: WireId, path: tuple[Point, ...]) -> QPainterPath:
        """Return the way of a wire with its corners rounded, in plan millimetres."""
        known = self._outlines.get(wire_id)
        if known is None or known[0] is not path:
            known = self._outlines[wire_id] = (path, rounded(path))
        return known[1]

    def _paint_one(self, painter: QPainter, sight: Sight, wire_id: WireId) -> None:
        pens = self._pens(sight, wire_id)
        outline = self.outline(wire_id, sight.geometry.paths[wire_id])
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        for pen in (pens.edge, pens.core, pens.stripe):
            if pen is not None:
                painter.setPen(pen)
                painter.drawPath(outline)

    def _paint_batches(self, painter: QPainter, sight: Sight, ids: Sequence[WireId]) -> None:
        alike = self._alike(sight, ids)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing, False)
        for (size, letters), lines in alike.items():
            pens = wire_pens(size, letters, sight.camera.scale, sight.shades.dark)
            for pen in (pens.hair,) if len(ids) > CROWD else pens.plain:
                painter.setPen(pen)
                painter.drawLines(lines)

    def _alike(self, sight: Sight, ids: Sequence[WireId]) -> dict[tuple[str, str], list[QLineF]]:
        """Return the segments of wires by size and colour, kept while the whole of one plan is looked at."""
        whole = len(ids) == len(sight.plan.wires)
        if whole and self._whole is not None and self._whole[0] is sight.plan:
            return self._whole[1]
        alike: dict[tuple[str, str], list[QLineF]] = defaultdict(list)
        for wire_id in ids:
            wire = sight.plan.wires[wire_id]
            alike[wire.size, wire.colour] += self._segments(wire_id, sight.geometry.paths[wire_id])
        if whole:
            self._whole = sight.plan, alike
        return alike

    def _segments(self, wire_id: WireId, path: tuple[Point, ...]) -> list[QLineF]:
        known = self._lines.get(wire_id)
        if known is None or known[0] is not path:
            lines = [QLineF(*a, *b) for a, b in itertools.pairwise(path)]
            known = self._lines[wire_id] = (path, lines)
        return known[1]

    def _pens(self, sight: Sight, wire_id: WireId) -> WirePens:
        wire = sight.plan.wires[wire_id]
        return wire_pens(wire.size, wire.colour, sight.camera.scale, sight.shades.dark)

    def _paint_signs(self, painter: QPainter, sight: Sight, wire_id: WireId) -> None:
        """Write the colour letters near both ends, and show which way current flows."""
        scale, path = sight.camera.scale, sight.geometry.paths[wire_id]
        wire = sight.plan.wires[wire_id]
        if scale >= LETTERS_FROM:
            for a, b in ((path[0], path[1]), (path[-1], path[-2])):
                _paint_letters(painter, sight, wire.colour, sight.camera.to_px(*a), sight.camera.to_px(*b))
        figure = sight.figures.wires.get(wire_id) if sight.figures is not None else None
        if figure is not None and scale >= ARROWS_FROM and abs(figure.current_a) > FLOWING_A:
            _paint_arrow(painter, sight, path if figure.current_a > 0 else path[::-1])


def rounded(path: Sequence[Point], radius_mm: float = CORNER_MM) -> QPainterPath:
    """Return a polyline with its corners rounded as far as its legs allow."""
    made = QPainterPath(QPointF(*path[0]))
    for before, corner, after in zip(path, path[1:], path[2:], strict=False):
        first, second = math.dist(before, corner), math.dist(corner, after)
        if min(first, second) < 1e-6:
            continue
        reach = min(radius_mm, first / 2, second / 2)
        made.lineTo(*_toward(corner, before, reach / first))
        made.quadTo(QPointF(*corner), QPointF(*_toward(corner, after, reach / second)))
    made.lineTo(*path[-1])
    return made


def _toward(a: Point, b: Point, share: float) -> Point:
    return a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share


def _to_plan(painter: QPainter, sight: Sight) -> None:
    painter.scale(sight.camera.scale, sight.camera.scale)
    painter.translate(-sight.camera.left_mm, -sight.camera.top_mm)


def _paint_letters(painter: QPainter, sight: Sight, letters: str, end: Point, onward: Point) -> None:
    painter.setFont(screen_font(9, "semibold"))
    width = painter.fontMetrics().horizontalAdvance(letters) + 6.0
    length = math.dist(end, onward)
    if length < 2 * width + 26:
        return
    x, y = _toward(end, onward, (15 + width / 2) / length)
    box = QRectF(x - width / 2, y - 6, width, 12)
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(with_alpha(sight.shades.paper, 0.92))
    painter.drawRoundedRect(box, 3, 3)
    painter.setPen(sight.shades.ink)
    painter.drawText(box, Qt.AlignmentFlag.AlignCenter, letters)
    painter.setBrush(Qt.BrushStyle.NoBrush)


def _paint_arrow(painter: QPainter, sight: Sight, path: Sequence[Point]) -> None:
    """Paint a small tip in the middle of the longest leg."""
    a, b = max(itertools.pairwise(path), key=lambda leg: math.dist(*leg))
    start, end = sight.camera.to_px(*a), sight.camera.to_px(*b)
    if math.dist(start, end) < 40:
        return
    x, y = _toward(start, end, 0.5)
    painter.save()
    painter.translate(x, y)
    painter.rotate(math.degrees(math.atan2(end[1] - start[1], end[0] - start[0])))
    painter.setPen(QPen(sight.shades.paper, 1))
    painter.setBrush(sight.shades.ink)
    painter.drawPolygon([QPointF(-3.5, -4), QPointF(4.5, 0), QPointF(-3.5, 4)])
    painter.restore()
