"""Paints very many wires as hairlines, for a plan seen from so far that nothing else would show."""

from collections.abc import Sequence
from itertools import chain

import numpy as np
from PySide6.QtGui import QPainter

from app.canvas.painting.raster import Colours, draw_hairs, raster
from app.canvas.painting.wire_pens import hair_rgba
from app.canvas.sight import Sight
from app.canvas.table import Floats
from wiring.plan.names import WireId
from wiring.plan.plan import Plan

MOST_KEPT = 24
Lines = tuple[Floats, Colours]  # in plan millimetres, and the colour of each


class WireCrowd:
    """Keeps the lines of the wires it was asked for last while the plan is the same."""

    def __init__(self) -> None:
        self._kept: dict[WireId, tuple[Plan, bool, Sequence[WireId], Lines]] = {}  # by the first of them

    def lines(self, sight: Sight, ids: Sequence[WireId]) -> Lines:
        """Return the lines of those wires; the later ones go over the others."""
        if not ids:
            return np.empty((0, 4)), np.empty(0, np.uint32)
        known = self._kept.get(ids[0])
        if known is not None and known[0] is sight.plan and known[1:3] == (sight.shades.dark, ids):
            return known[3]
        if len(self._kept) >= MOST_KEPT:
            self._kept.clear()
        lines = _gathered(sight, ids)
        self._kept[ids[0]] = sight.plan, sight.shades.dark, ids, lines
        return lines


def _gathered(sight: Sight, ids: Sequence[WireId]) -> Lines:
    paths, wires, dark = sight.geometry.paths, sight.plan.wires, sight.shades.dark
    runs = [paths[i] for i in ids]
    counts = np.fromiter(map(len, runs), np.intp, len(runs))
    points = np.fromiter(chain.from_iterable(chain.from_iterable(runs)), np.float64).reshape(-1, 2)
    is_last = np.zeros(len(points), np.bool_)
    is_last[np.cumsum(counts) - 1] = True
    starts = np.flatnonzero(~is_last)
    colours = np.fromiter([hair_rgba(wires[i].colour, dark) for i in ids], np.uint32, len(ids))
    return np.hstack((points[starts], points[starts + 1])), np.repeat(colours, counts - 1)


def paint_lines(painter: QPainter, sight: Sight, lines: Lines) -> None:
    """Paint lines one pixel wide; the painter must not have been moved."""
    camera = sight.camera
    lines_mm, colours = lines
    lines_px = (lines_mm - np.array([camera.left_mm, camera.top_mm] * 2)) * camera.scale
    with raster(painter, sight.width_px, sight.height_px) as on:
        draw_hairs(on, lines_px, colours)
