"""Marks the harnesses of panels over their wires: ties round the bundle, and how many wires are in it."""

import math
from collections.abc import Iterator
from itertools import pairwise

from PySide6.QtCore import QLineF, QPointF, Qt
from PySide6.QtGui import QPainter, QPen

from app.canvas.plates import Plate
from app.canvas.sight import Sight
from app.canvas.wireway_lanes import IN_WAY_MM, WIDEST_MM
from wiring.plan.harness import harness_of
from wiring.plan.places import Point

TIE_EVERY_MM, TIE_WIDE_MM = 28.0, 2.2
LEAST_SCALE = 0.7  # pixels per millimetre below which ties would run together
PLATE = Plate(font_px=11, high_px=16.0, rim_px=5.0, ground=0.94)


def paint_harnesses(painter: QPainter, sight: Sight) -> None:
    """Paint ties and counts for every panel whose wires come out as a harness."""
    if not sight.plan.panels:
        return
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    scale = sight.camera.scale
    for panel in sight.plan.panels.values():
        harness = harness_of(sight.plan, sight.kinds, panel)
        if harness is None or (sight.lit is not None and not {w.id for w in harness.inner} & sight.lit):
            continue
        for way_id in harness.wireways:
            count = sum(way_id in w.along for w in sight.plan.wires.values())
            half = (min(IN_WAY_MM * (count - 1), WIDEST_MM) / 2 + 1.6) * scale
            points = sight.plan.wireways[way_id].points
            if scale >= LEAST_SCALE:
                pen = QPen(sight.shades.quiet, max(TIE_WIDE_MM * scale, 1.2))
                pen.setCapStyle(Qt.PenCapStyle.FlatCap)
                painter.setPen(pen)
                for at, across in _ties(points):
                    x, y = sight.camera.to_px(*at)
                    dx, dy = across[0] * half, across[1] * half
                    painter.drawLine(QLineF(x - dx, y - dy, x + dx, y + dy))
            x, y = sight.camera.to_px(*points[-1])
            plate = PLATE.pixmap(f"{count} wires", sight.shades, sight.ratio)
            painter.drawPixmap(QPointF(x + half + 5, y - 8), plate)


def _ties(points: tuple[Point, ...]) -> Iterator[tuple[Point, Point]]:
    """Return the places of the ties and the direction across the bundle; none twice where it doubles."""
    seen: set[tuple[int, int]] = set()
    for a, b in pairwise(points):
        length = math.dist(a, b)
        if length < TIE_EVERY_MM / 2:
            continue
        count = max(round(length / TIE_EVERY_MM), 1)
        ux, uy = (b[0] - a[0]) / length, (b[1] - a[1]) / length
        for i in range(count):
            along = length * (i + 0.5) / count
            at = a[0] + ux * along, a[1] + uy * along
            cell = round(at[0] / TIE_EVERY_MM), round(at[1] / TIE_EVERY_MM)
            if cell not in seen:
                seen.add(cell)
                yield at, (-uy, ux)
