"""Paints parts: their light, their signs, their designations."""

from collections.abc import Iterator, Sequence
from typing import NamedTuple

import numpy as np
from PySide6.QtCore import QPointF
from PySide6.QtGui import QPainter

from app.canvas.camera import whole_px
from app.canvas.geometry import Box
from app.canvas.hits.hit import SMALLEST_PX
from app.canvas.painting.crowd import paint_crowd
from app.canvas.painting.stamps import Stamp, Stamps, paint_sign
from app.canvas.sight import Sight
from app.canvas.table import Floats
from wiring.catalogue.kind import Kind
from wiring.drawings.signs.hand import State
from wiring.plan.names import PartId
from wiring.plan.part import Part
from wiring.standards.lightness import lightness

CROWD = 1500  # visible parts from which they are painted as plain rectangles

STEP, CROWD_STEP = 24, 1000  # parts painted before there may be time for something else


class _Shown(NamedTuple):
    part: Part
    position: str
    light: float | None
    stamp: Stamp | None


class PartPainter:
    """Paints parts from stamps it keeps."""

    def __init__(self) -> None:
        self._stamps = Stamps()
        self._look: tuple[float, bool, float] | None = None
        self._last: dict[PartId, _Shown] = {}  # what each part was painted with, in that look

    def paint(self, painter: QPainter, sight: Sight, ids: Sequence[PartId]) -> None:
        """Paint those parts as the plan has them."""
        for _ in self.steps(painter, sight, ids, len(ids)):
            pass

    def steps(self, painter: QPainter, sight: Sight, ids: Sequence[PartId], crowd: int) -> Iterator[None]:
        """Paint those parts in short steps; `crowd` is how many there are in the view."""
        if crowd > CROWD:
            for n in range(0, len(ids), CROWD_STEP):
                paint_crowd(painter, sight, ids[n : n + CROWD_STEP])
                yield
            return
        painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform, False)
        self._take_look(sight)
        parts, draw, scale = sight.plan.parts, painter.drawPixmap, sight.camera.scale
        left, top = sight.camera.left_mm, sight.camera.top_mm
        made = self._stamps.made
        for n, part_id in enumerate(ids):
            part = parts[part_id]
            stamp = self._stamp_of(sight, part)
            if stamp is None:
                self.paint_one(painter, sight, part)
            else:
                x, y = (part.x_mm - left) * scale + stamp.dx, (part.y_mm - top) * scale + stamp.dy
                draw(whole_px(x), whole_px(y), stamp.pixmap)
            if n % STEP == STEP - 1 or stamp is None or self._stamps.made != made:
                yield
                self._take_look(sight)
                made = self._stamps.made

    def _take_look(self, sight: Sight) -> None:
        """Forget what parts were painted with when that was for another look."""
        look = sight.camera.scale, sight.shades.dark, sight.ratio
        if look != self._look:
            self._look = look
            self._last.clear()

    def _stamp_of(self, sight: Sight, part: Part) -> Stamp | None:
        """Return the stamp of a part, the one of last time when nothing it shows is another thing."""
        position = sight.positions.get(part.id, "")
        figure = sight.figures.parts.get(part.id) if sight.figures is not None else None
        light = figure.light if figure is not None else None
        last = self._last.get(part.id)
        if last is not None and last.part is part and last.position == position and last.light == light:
            return last.stamp
        kind = sight.kinds.get(part.kind)
        state = part_state(sight, part, kind)
        stamp = self._stamps.stamp(kind, part, state, sight.camera.scale, sight.shades, sight.ratio)
        self._last[part.id] = _Shown(part, position, light, stamp)
        return stamp

    def paint_one(self, painter: QPainter, sight: Sight, part: Part) -> None:
        """Paint one part where it stands."""
        kind = sight.kinds.get(part.kind)
        state, scale = part_state(sight, part, kind), sight.camera.scale
        x, y = sight.camera.to_px(part.x_mm, part.y_mm)
        stamp = self._stamps.stamp(kind, part, state, scale, sight.shades, sight.ratio)
        if stamp is not None:
            painter.drawPixmap(QPointF(whole_px(x + stamp.dx), whole_px(y + stamp.dy)), stamp.pixmap)
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


def shown_box(sight: Sight, part: Part) -> Box:
    """Return the upright box in pixels that a part's sign fills on the screen, as `shown_boxes` has it."""
    row, camera = sight.geometry.parts.get(part.id).tolist(), sight.camera
    left_mm, top_mm, scale = camera.left_mm, camera.top_mm, camera.scale
    x, y = (row[4] - left_mm) * scale, (row[5] - top_mm) * scale
    growth = max(SMALLEST_PX / max(row[10] - row[8], row[11] - row[9], 0.1) / scale, 1.0)
    return Box(
        x + ((row[0] - left_mm) * scale - x) * growth,
        y + ((row[1] - top_mm) * scale - y) * growth,
        x + ((row[2] - left_mm) * scale - x) * growth,
        y + ((row[3] - top_mm) * scale - y) * growth,
    )


def shown_boxes(sight: Sight, ids: Sequence[PartId]) -> Floats:
    """Return the boxes of many parts: columns left, top, right, bottom in pixels."""
    camera = sight.camera
    rows = sight.geometry.parts.rows(ids)
    origin = np.array([camera.left_mm, camera.top_mm, camera.left_mm, camera.top_mm])
    boxes = (rows[:, :4] - origin) * camera.scale
    centres = (rows[:, [4, 5, 4, 5]] - origin) * camera.scale
    longest = np.maximum(np.maximum(rows[:, 10] - rows[:, 8], rows[:, 11] - rows[:, 9]), 0.1)
    growth = np.maximum(SMALLEST_PX / longest / camera.scale, 1.0)
    return np.asarray(centres + (boxes - centres) * growth[:, None])
