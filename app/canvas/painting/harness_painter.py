"""Marks the harnesses of panels over their wires: ties round the bundle, and how many wires are in it."""

import math
from collections.abc import Iterable, Iterator, Sequence
from itertools import pairwise
from typing import NamedTuple

from PySide6.QtCore import QLineF, QPointF, Qt
from PySide6.QtGui import QPainter, QPen

from app.canvas.geometry import Box
from app.canvas.painting.label_room import LabelRoom
from app.canvas.painting.part_painter import shown_boxes
from app.canvas.painting.plates import Plate
from app.canvas.sight import Sight
from app.canvas.wireway_lanes import IN_WAY_MM, WIDEST_MM
from wiring.plan.harness import harness_of
from wiring.plan.names import PartId
from wiring.plan.places import Point

TIE_EVERY_MM, TIE_WIDE_MM = 28.0, 2.2
LEAST_SCALE = 0.7  # pixels per millimetre below which ties would run together
COUNTS_FROM = 0.35  # and from which on the wires of a bundle are counted
PLATE = Plate(font_px=11, usual_px=16.0, rim_px=5.0, ground=0.94)


class Bundle(NamedTuple):
    """The wires of a harness that lie in one wireway: its line, how many, half their width."""

    points: tuple[Point, ...]
    wires: int
    half_px: float  # on the screen


class Count(NamedTuple):
    """How many wires are in a bundle, in words, and where that stands, in pixels."""

    words: str
    box: Box


def paint_harnesses(painter: QPainter, sight: Sight) -> None:
    """Paint the ties of every panel whose wires come out as a harness."""
    scale = sight.camera.scale
    if scale < LEAST_SCALE:
        return
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    pen = QPen(sight.shades.quiet, max(TIE_WIDE_MM * scale, 1.2))
    pen.setCapStyle(Qt.PenCapStyle.FlatCap)
    painter.setPen(pen)
    for bundle in _bundles(sight):
        for at, across in _ties(bundle.points):
            x, y = sight.camera.to_px(*at)
            dx, dy = across[0] * bundle.half_px, across[1] * bundle.half_px
            painter.drawLine(QLineF(x - dx, y - dy, x + dx, y + dy))


def harness_counts(sight: Sight, parts: Sequence[PartId], taken: Iterable[Box]) -> list[Count]:
    """Return the counts that have room beside the end of their bundle, or else a corner of it.

    They keep off those parts, the faces of panels and what is `taken` by other words, in pixels.
    """
    if sight.camera.scale < COUNTS_FROM:
        return []
    bundles = list(_bundles(sight))
    if not bundles:
        return []
    room = LabelRoom()
    for box in (*taken, *_faces(sight)):
        room.take(box)
    if parts:
        for row in shown_boxes(sight, parts).tolist():
            room.take(Box(*row))
    found = []
    for bundle in bundles:
        words = f"{bundle.wires} wires" if bundle.wires != 1 else "1 wire"
        reach = bundle.half_px + 3
        for x, y in (sight.camera.to_px(*point) for point in reversed(bundle.points)):
            about = Box(x - reach, y - reach, x + reach, y + reach)
            place = room.find(about, PLATE.width(words), PLATE.high_px)
            if place is not None:
                found.append(Count(words, place))
                break
    return found


def paint_counts(painter: QPainter, sight: Sight, counts: Iterable[Count]) -> None:
    """Write how many wires are in each bundle."""
    for words, box in counts:
        at = QPointF(round(box.left), round(box.top))
        painter.drawPixmap(at, PLATE.pixmap(words, sight.shades, sight.ratio))


def _bundles(sight: Sight) -> Iterator[Bundle]:
    for panel in sight.plan.panels.values():
        harness = harness_of(sight.plan, sight.kinds, panel)
        if harness is None or (sight.lit is not None and not {w.id for w in harness.inner} & sight.lit):
            continue
        for way_id in (i for i in harness.wireways if i in sight.plan.wireways):
            count = sum(way_id in w.along for w in sight.plan.wires.values())
            half_mm = min(IN_WAY_MM * (count - 1), WIDEST_MM) / 2 + 1.6
            yield Bundle(sight.plan.wireways[way_id].points, count, half_mm * sight.camera.scale)


def _faces(sight: Sight) -> Iterator[Box]:
    for panel in sight.plan.panels.values():
        left, top = sight.camera.to_px(panel.x_mm, panel.y_mm)
        right, bottom = sight.camera.to_px(panel.x_mm + panel.width_mm, panel.y_mm + panel.height_mm)
        if right > 0 and bottom > 0 and left < sight.width_px and top < sight.height_px:
            yield Box(left, top, right, bottom)


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
