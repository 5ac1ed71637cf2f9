"""Paints very many parts as plain rectangles, for a plan seen from so far that nothing else would show."""

from collections.abc import Sequence

import numpy as np
from PySide6.QtGui import QPainter

from app.canvas.painting.raster import draw_boxes, raster
from app.canvas.sight import Sight
from wiring.plan.names import PartId


def paint_crowd(painter: QPainter, sight: Sight, ids: Sequence[PartId]) -> None:
    """Paint the rectangles of those parts, all at once."""
    camera = sight.camera
    origin = np.array([camera.left_mm, camera.top_mm] * 2)
    boxes = (sight.geometry.parts.rows(ids)[:, :4] - origin) * camera.scale
    with raster(painter, sight.width_px, sight.height_px) as on:
        draw_boxes(on, boxes, sight.shades.ink.rgba(), sight.shades.raised.rgba())
