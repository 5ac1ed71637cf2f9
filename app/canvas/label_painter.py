"""Writes the designations of parts beside them, where there is room."""

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QPointF
from PySide6.QtGui import QPainter

from app.canvas.geometry import Box
from app.canvas.label_places import label_places
from app.canvas.part_painter import shown_boxes
from app.canvas.plates import Plate
from app.canvas.sight import Sight
from app.canvas.table import Floats
from wiring.plan.names import PartId
from wiring.plan.part import Part

LABELS_FROM = 0.4  # pixels per millimetre from which designations are written
LABELS_MOST = 500
FEW = 60  # parts in sight whose designations are written from any distance
OWN_WORDS_FROM = 1.3  # and from which the builder's own words follow
WIRE_END_PX = 22.0  # of each wire's end that labels leave free
PLATE = Plate(font_px=11, high_px=15.0, rim_px=3.0, ground=0.82)


class LabelPainter:
    """Writes what fits without running over parts, ends of wires or another label."""

    def paint(self, painter: QPainter, sight: Sight, ids: Sequence[PartId], taken: Sequence[Box]) -> None:
        """Write the labels of those parts; `taken` are boxes in pixels that other words and flags fill."""
        if len(ids) > LABELS_MOST or (sight.camera.scale < LABELS_FROM and len(ids) > FEW) or not ids:
            return
        parts = [sight.plan.parts[i] for i in ids]
        boxes = shown_boxes(sight, ids)
        obstacles = np.vstack((boxes, _wire_ends(sight), np.array(taken).reshape(-1, 4)))
        texts = [_words(sight, part) for part in parts]
        left_out = _write(painter, sight, texts, boxes, obstacles)
        if left_out.any() and sight.camera.scale >= OWN_WORDS_FROM:  # at least the designation, then
            short = [f"-{part.designation}" for part, out in zip(parts, left_out, strict=True) if out]
            _write(painter, sight, short, boxes[left_out], obstacles)


def _write(
    painter: QPainter, sight: Sight, texts: Sequence[str], boxes: Floats, obstacles: Floats
) -> NDArray[np.bool_]:
    """Write texts beside boxes; the answer says which of them had no room."""
    sizes = np.array([(PLATE.width(text), PLATE.high_px) for text in texts])
    places = label_places(boxes, sizes, obstacles)
    for text, place in zip(texts, places, strict=True):
        if place is not None:
            painter.drawPixmap(
                QPointF(round(place.left), round(place.top)), PLATE.pixmap(text, sight.shades, sight.ratio)
            )
    return np.array([place is None for place in places])


def _words(sight: Sight, part: Part) -> str:
    own = part.label if sight.camera.scale >= OWN_WORDS_FROM else ""
    return f"-{part.designation}  {own}".rstrip()


def _wire_ends(sight: Sight) -> Floats:
    """Return boxes in pixels round the first stretch of every wire in sight, at both ends."""
    paths = [sight.geometry.paths[w] for w in sight.geometry.wires_in(sight.visible)]
    ends = [(*p[0], *p[1]) for p in paths] + [(*p[-1], *p[-2]) for p in paths]
    if not ends:
        return np.empty((0, 4))
    camera = sight.camera
    pixels = (np.array(ends) - np.array([camera.left_mm, camera.top_mm] * 2)) * camera.scale
    start, way = pixels[:, :2], pixels[:, 2:] - pixels[:, :2]
    length = np.maximum(np.hypot(way[:, 0], way[:, 1]), 1e-6)
    end = start + way * np.minimum(1.0, WIRE_END_PX / length)[:, None]
    return np.hstack((np.minimum(start, end) - 1, np.maximum(start, end) + 1))
