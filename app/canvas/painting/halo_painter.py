"""Paints the light of lamps on the paper round them."""

from collections.abc import Sequence
from functools import lru_cache

from PySide6.QtCore import QPointF, Qt
from PySide6.QtGui import QColor, QPainter, QPixmap, QRadialGradient

from app.canvas.painting.lamp_look import lamp_look
from app.canvas.painting.shades import with_alpha
from app.canvas.sight import Sight
from wiring.catalogue.kind import Kind
from wiring.drawings.signs.halo import halo
from wiring.drawings.signs.strip import strip_span
from wiring.pictures.picture import Disc
from wiring.pictures.theme import resolve
from wiring.plan.names import PartId
from wiring.plan.part import Part
from wiring.plan.places import Point, on_plan

LONGEST_ROW = 60  # lights a strip is painted with at most
FADES_DARK = ((0.0, 1.0), (0.25, 0.72), (0.55, 0.28), (0.8, 0.08), (1.0, 0.0))  # share of the light by reach
FADES_LIGHT = (
    (0.0, 1.0),
    (0.35, 0.86),
    (0.6, 0.5),
    (0.82, 0.16),
    (1.0, 0.0),
)  # wider: paper is bright itself


def paint_halos(painter: QPainter, sight: Sight, ids: Sequence[PartId]) -> None:
    """Paint the light of every lit part among those."""
    if sight.figures is None:
        return
    painter.save()
    if sight.shades.dark:
        painter.setCompositionMode(QPainter.CompositionMode.CompositionMode_Screen)
    figures, scale = sight.figures.parts, sight.camera.scale
    for part_id in ids:
        part = sight.plan.parts[part_id]
        kind, figure = sight.kinds.get(part.kind), figures.get(part_id)
        if kind is None or figure is None or not figure.light:
            continue
        _, radius, strength = lamp_look(kind, figure.light, scale)
        role = _colour(kind) if radius else ""
        if not role:
            continue
        glow = _glow(radius, resolve(role, sight.shades.theme), strength, sight.ratio, sight.shades.dark)
        for place in _sources(part, kind, radius / scale):
            x, y = sight.camera.to_px(*place)
            painter.drawPixmap(QPointF(x - radius, y - radius), glow)
    painter.restore()


_COLOURS: dict[str, str] = {}  # of the light of each kind, as `halo` has it


def _colour(kind: Kind) -> str:
    """Return the colour role of the light of a kind; "" when it gives none."""
    if kind.key not in _COLOURS:
        discs = [item for item in halo(kind, 100.0) if isinstance(item, Disc)]
        _COLOURS[kind.key] = discs[0].fill if discs else ""
    return _COLOURS[kind.key]


def _sources(part: Part, kind: Kind, reach_mm: float) -> list[Point]:
    """Return where the light comes from: the middle of a lamp, points along a strip."""
    if kind.sign != "strip":
        return [(part.x_mm, part.y_mm)]
    left, right = strip_span(kind, part)
    count = max(1, min(LONGEST_ROW, round((right - left) / (1.2 * reach_mm))))
    return [on_plan(part, left + (right - left) * (i + 0.5) / count, 0.0) for i in range(count)]


@lru_cache(maxsize=96)
def _glow(radius: float, colour: str, strength: float, ratio: float, dark: bool) -> QPixmap:
    """Return a soft disc of light; `strength` from 0 to 1 follows the lightness."""
    edge = max(1, round(2 * radius * ratio))
    pixmap = QPixmap(edge, edge)
    pixmap.setDevicePixelRatio(ratio)
    pixmap.fill(Qt.GlobalColor.transparent)
    gradient = QRadialGradient(radius, radius, radius)
    most = (0.62 if dark else 0.92) * (0.35 + 0.65 * strength)
    for at, share in FADES_DARK if dark else FADES_LIGHT:
        gradient.setColorAt(at, with_alpha(QColor(colour), most * share))
    painter = QPainter(pixmap)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(gradient)
    painter.drawEllipse(QPointF(radius, radius), radius, radius)
    painter.end()
    return pixmap
