"""Paints wires: one by one with edges where there is time for it, in batches by colour where not."""

import itertools
import math
from collections import defaultdict
from collections.abc import Iterable, Iterator, Sequence

from PySide6.QtCore import QLineF, QPointF, Qt
from PySide6.QtGui import QPainter, QPainterPath, QPen

from app.canvas.painting.shades import with_alpha
from app.canvas.painting.wire_crowd import WireCrowd, paint_lines
from app.canvas.painting.wire_pens import WirePens, wire_pens
from app.canvas.painting.wire_signs import WireSigns
from app.canvas.sight import Sight
from wiring.plan.names import WireId
from wiring.plan.places import Point

MANY = 450  # visible wires from which they are painted in batches: square corners, no smoothing
CROWD = 2000  # from which they are hairlines
CORNER_MM = 6.0
STEP, LINES_STEP, CROWD_STEP = 8, 150, 400  # wires painted before there may be time for something else
SIGNS_MOST = 200  # wires in sight that carry letters and arrows
SIGNS_STEP = 25  # wires whose letters are placed before there may be time for something else


class WirePainter:
    """Paints wires and keeps their rounded outlines until they run another way."""

    def __init__(self) -> None:
        self._outlines: dict[WireId, tuple[tuple[Point, ...], QPainterPath]] = {}
        self._lines: dict[WireId, tuple[tuple[Point, ...], list[QLineF]]] = {}
        self._crowd = WireCrowd()
        self.signs = WireSigns()  # where the letters of the wires in sight stand

    def paint(self, painter: QPainter, sight: Sight, ids: Sequence[WireId], many: int = MANY) -> None:
        """Paint those wires as the plan has them; more than `many` in batches and without letters."""
        signs = self.signs if self.signs.is_of(sight) else WireSigns()
        for _ in self.steps(painter, sight, ids, ids, len(ids), signs, many):
            pass

    def steps(
        self,
        painter: QPainter,
        sight: Sight,
        ids: Sequence[WireId],
        among: Sequence[WireId],
        crowd: int,
        signs: WireSigns,
        many: int = MANY,
    ) -> Iterator[None]:
        """Paint those wires in short steps.

        `among` are all wires of a picture of which they are a part, `crowd` is how many are in the view.
        """
        if crowd > CROWD:
            for n in range(0, len(ids), CROWD_STEP):
                paint_lines(painter, sight, self._crowd.lines(sight, ids[n : n + CROWD_STEP]))
                yield
            return
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.save()
        try:
            _to_plan(painter, sight)
            if crowd > many:
                yield from self._paint_batches(painter, sight, ids)
            else:
                for n, wire_id in enumerate(ids):
                    self._paint_one(painter, sight, wire_id)
                    if n % STEP == STEP - 1:
                        yield
        finally:
            painter.restore()
        if crowd <= min(SIGNS_MOST, many):
            for n in range(0, len(among), SIGNS_STEP):
                signs.place(sight, among[n : n + SIGNS_STEP])
                yield
            signs.paint(painter, sight, ids)

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

    def _paint_batches(self, painter: QPainter, sight: Sight, ids: Sequence[WireId]) -> Iterator[None]:
        for n, wire_id in enumerate(ids):
            self._segments(wire_id, sight.geometry.paths[wire_id])
            if n % LINES_STEP == LINES_STEP - 1:
                yield
        alike = self._alike(sight, ids)
        yield
        painter.setRenderHint(QPainter.RenderHint.Antialiasing, False)
        for (size, letters), lines in sorted(alike.items(), key=lambda look: look[0]):
            pens = wire_pens(size, letters, sight.camera.scale, sight.shades.dark)
            for pen in pens.plain:
                painter.setPen(pen)
                painter.drawLines(lines)
            yield

    def _alike(self, sight: Sight, ids: Sequence[WireId]) -> dict[tuple[str, str], list[QLineF]]:
        """Return the segments of wires by size and colour."""
        alike: dict[tuple[str, str], list[QLineF]] = defaultdict(list)
        for wire_id in ids:
            wire = sight.plan.wires[wire_id]
            alike[wire.size, wire.colour] += self._segments(wire_id, sight.geometry.paths[wire_id])
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
