"""Paints very many wires as hairlines, for a plan seen from so far that nothing else would show."""

from collections.abc import Sequence
from itertools import chain

import numpy as np
from PySide6.QtGui import QPainter

from app.canvas.raster import Colours, draw_hairs, raster
from app.canvas.sight import Sight
from app.canvas.table import Floats
from app.canvas.wire_pens import hair_rgba
from wiring.plan.names import WireId


class WireCrowd:
    """Keeps the lines of the wires it painted last while the plan is the same."""

    def __init__(self) -> None:
        self._key: tuple[object, ...] = ()
        self._lines: Floats = np.empty((0, 4))
        self._colours: Colours = np.empty(0, np.uint32)

    def lines(self, sight: Sight, ids: Sequence[WireId]) -> tuple[Floats, Colours]:
        """Return the lines of those wires in plan millimetres, and their colours; the later ones go over."""
        key = sight.plan, sight.shades.dark, ids
        if not self._key or key[0] is not self._key[0] or key[1:] != self._key[1:]:
            self._gather(sight, ids)
            self._key = key
        return self._lines, self._colours

    def _gather(self, sight: Sight, ids: Sequence[WireId]) -> None:
        paths, wires, dark = sight.geometry.paths, sight.plan.wires, sight.shades.dark
        runs = [paths[i] for i in ids]
        counts = np.fromiter(map(len, runs), np.intp, len(runs))
        points = np.fromiter(chain.from_iterable(chain.from_iterable(runs)), np.float64).reshape(-1, 2)
        is_last = np.zeros(len(points), np.bool_)
        is_last[np.cumsum(counts) - 1] = True
        starts = np.flatnonzero(~is_last)
        self._lines = np.hstack((points[starts], points[starts + 1]))
        colours = np.fromiter([hair_rgba(wires[i].colour, dark) for i in ids], np.uint32, len(ids))
        self._colours = np.repeat(colours, counts - 1)


def paint_lines(painter: QPainter, sight: Sight, lines_mm: Floats, colours: Colours) -> None:
    """Paint lines one pixel wide; the painter must not have been moved."""
    camera = sight.camera
    lines = (lines_mm - np.array([camera.left_mm, camera.top_mm] * 2)) * camera.scale
    with raster(painter, sight.width_px, sight.height_px) as on:
        draw_hairs(on, lines, colours)
