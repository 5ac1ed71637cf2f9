"""Paints the small flag of a finding at a part or wire: circle note, diamond weak, triangle danger."""

import math
from collections.abc import Iterable
from functools import lru_cache
from typing import NamedTuple

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPainterPath, QPen, QPixmap

from app.canvas.camera import whole_px
from app.canvas.geometry import Box
from app.canvas.painting.part_painter import shown_boxes
from app.canvas.sight import Sight
from app.theme.fonts import fixed_font
from wiring.findings.finding import Finding, Rank
from wiring.plan.places import Point

SIZE_PX = 15.0
FAR, SIZE_FAR_PX = 0.42, 12.0
MOST = 400
RIM_PX = 3.0  # room round a flag for its edge
ROLES = {Rank.NOTE: "note", Rank.WEAK: "weak", Rank.DANGER: "danger"}
MARKS = {Rank.NOTE: "i", Rank.WEAK: "~", Rank.DANGER: "!"}


class FlagAt(NamedTuple):
    """A flag and its left top corner, in pixels."""

    rank: Rank
    left: int
    top: int

    @property
    def box(self) -> Box:
        """Return what it may cover."""
        edge = SIZE_PX + 2 * RIM_PX + 1
        return Box(self.left - 1, self.top - 1, self.left + edge, self.top + edge)


def flag_places(sight: Sight, parts: Iterable[str], wires: Iterable[str]) -> list[tuple[Finding, Point]]:
    """Return the findings to be flagged and the middle of each flag in pixels."""
    flagged = [i for i in parts if i in sight.worst]
    boxes = shown_boxes(sight, flagged).tolist() if flagged else []
    found = [(sight.worst[i], _at_corner(Box(*box))) for i, box in zip(flagged, boxes, strict=True)]
    for wire_id in wires:
        finding = sight.worst.get(wire_id)
        path = sight.geometry.paths.get(wire_id)
        # A finding about parts is flagged there; its wires would only repeat it.
        if finding is not None and path and not finding.parts:
            middle = path[len(path) // 2 - 1], path[len(path) // 2]
            x, y = (middle[0][0] + middle[1][0]) / 2, (middle[0][1] + middle[1][1]) / 2
            found.append((finding, sight.camera.to_px(x, y)))
    return found[:MOST]


def flag_boxes(sight: Sight, parts: Iterable[str]) -> list[Box]:
    """Return the boxes in pixels that the flags of parts take."""
    half = SIZE_PX / 2 + 1
    return [Box(x - half, y - half, x + half, y + half) for _, (x, y) in flag_places(sight, parts, ())]


def flags_at(sight: Sight, parts: Iterable[str], wires: Iterable[str]) -> list[FlagAt]:
    """Return the flag of the gravest finding of each part and wire, the gravest last: it lies on top."""
    if not sight.worst:
        return []
    half = size_px(sight.camera.scale) / 2 + RIM_PX
    places = sorted(flag_places(sight, parts, wires), key=lambda f: f[0].rank)
    return [FlagAt(finding.rank, whole_px(x - half), whole_px(y - half)) for finding, (x, y) in places]


def size_px(scale: float) -> float:
    """Return how large flags are at a scale."""
    return SIZE_PX if scale >= FAR else SIZE_FAR_PX


def paint_flags(painter: QPainter, sight: Sight, flags: Iterable[FlagAt]) -> None:
    """Paint flags where they have been placed."""
    size, paper = size_px(sight.camera.scale), sight.shades.paper.rgba()
    for rank, left, top in flags:
        fill = QColor(sight.shades.theme[ROLES[rank]]).rgba()
        painter.drawPixmap(left, top, _flag(rank, size, fill, paper, sight.ratio))


@lru_cache(maxsize=64)
def _flag(rank: Rank, size: float, fill: int, paper: int, ratio: float) -> QPixmap:
    """Return the flag of a rank, painted once."""
    edge = math.ceil((size + 2 * RIM_PX) * ratio)
    pixmap = QPixmap(edge, edge)
    pixmap.setDevicePixelRatio(ratio)
    pixmap.fill(Qt.GlobalColor.transparent)
    painter = QPainter(pixmap)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    rect = QRectF(RIM_PX, RIM_PX, size, size)
    painter.setPen(QPen(QColor.fromRgba(paper), 1.5))
    painter.setBrush(QColor.fromRgba(fill))
    painter.drawPath(flag_shape(rank, rect))
    painter.setFont(fixed_font(10, "bold"))
    painter.setPen(QColor.fromRgba(paper))
    low = 2.0 if rank is Rank.DANGER else 0.0
    painter.drawText(rect.translated(0, low), Qt.AlignmentFlag.AlignCenter, MARKS[rank])
    painter.end()
    return pixmap


def flag_shape(rank: Rank, rect: QRectF) -> QPainterPath:
    """Return the outline whose shape alone tells the rank."""
    made = QPainterPath()
    x, y, w, h = rect.x(), rect.y(), rect.width(), rect.height()
    if rank is Rank.NOTE:
        made.addEllipse(rect.adjusted(1, 1, -1, -1))
        return made
    corners = (
        [(x + w / 2, y - 1), (x + w + 1, y + h), (x - 1, y + h)]
        if rank is Rank.DANGER
        else [(x + w / 2, y - 1), (x + w + 1, y + h / 2), (x + w / 2, y + h + 1), (x - 1, y + h / 2)]
    )
    made.moveTo(QPointF(*corners[0]))
    for corner in corners[1:]:
        made.lineTo(QPointF(*corner))
    made.closeSubpath()
    return made


def _at_corner(box: Box) -> Point:
    return box.right + 1, box.top - 1
