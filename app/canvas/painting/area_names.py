"""Writes the names of scenes and panels above their edges, and those of wireways, over the wires."""

from collections.abc import Iterable
from functools import lru_cache
from typing import NamedTuple

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QPainter

from app.canvas.geometry import Box
from app.canvas.hits.area_hit import SHORT_NAME_PX
from app.canvas.painting.surface_painter import scene_hue
from app.canvas.sight import Sight
from app.theme.fonts import screen_font
from app.theme.surfaces import surfaces
from app.theme.words import factor, lined, scaled

HIGH_PX = 17.0
GAP_PX = 3.0
SHORTENED_PX = 64.0  # with less room than this, the beginning of a name says nothing
AIR_PX = 8.0  # beside the name, both sides together
FONT = (12, "semibold")
WAY_FONT, WAY_HIGH_PX = (11, "regular"), 15.0  # of wireways


class AreaName(NamedTuple):
    """A name and where it stands, in pixels."""

    name: str
    box: Box
    ink: QColor
    font: tuple[int, str] = FONT
    angle_deg: float = 0.0  # of the words; the box is the upright one about them


def area_names(sight: Sight) -> list[AreaName]:
    """Return the names, shortened where their area is narrower, of areas not too small for one."""
    dark = sight.shades.dark
    quiet, found = QColor(surfaces(sight.shades.theme).quiet), []
    for index, scene in enumerate(sight.plan.scenes.values()):
        hue = scene_hue(index, dark=dark)
        ink = hue.lighter(125) if dark else hue.darker(140)
        found.append(_placed(sight, scene.name, scene.x_mm, scene.y_mm, scene.width_mm, ink))
    for panel in sight.plan.panels.values():
        found.append(_placed(sight, panel.name, panel.x_mm, panel.y_mm, panel.width_mm, quiet))
    return [name for name in found if name is not None]


def paint_area_names(painter: QPainter, sight: Sight, names: Iterable[AreaName]) -> None:
    """Write the names on a ground that lets no line run through them."""
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    for name in names:
        left, top, right, bottom = name.box
        painter.setFont(screen_font(*name.font))
        painter.save()
        if name.angle_deg:
            painter.translate((left + right) / 2, (top + bottom) / 2)
            painter.rotate(name.angle_deg)
            wide, high = width_px(name.name, name.font), lined(WAY_HIGH_PX)
            rect = QRectF(-wide / 2, -high / 2, wide, high)
        else:
            rect = QRectF(left, top, right - left, bottom - top)
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(sight.shades.label_ground)
        painter.drawRoundedRect(rect, 3, 3)
        painter.setPen(name.ink)
        painter.drawText(rect, Qt.AlignmentFlag.AlignCenter, name.name)
        painter.restore()


def _placed(
    sight: Sight, name: str, x_mm: float, y_mm: float, room_mm: float, ink: QColor
) -> AreaName | None:
    room_px = max(room_mm * sight.camera.scale, scaled(SHORT_NAME_PX))
    width = width_px(name)
    if not name or (width > room_px and room_px < scaled(SHORTENED_PX)):
        return None
    x, y = sight.camera.to_px(x_mm, y_mm)
    if width > room_px:
        name, width = _shortened(name, room_px - AIR_PX), room_px
    return AreaName(name, Box(x, y - lined(HIGH_PX) - GAP_PX, x + width, y - GAP_PX), ink)


def width_px(name: str, font: tuple[int, str] = FONT) -> float:
    """Return how wide a name is on its ground, with the air beside it."""
    return _advance(name, font, factor()) + AIR_PX


@lru_cache(maxsize=512)
def _advance(name: str, font: tuple[int, str], _words: float) -> float:
    return QFontMetricsF(screen_font(*font)).horizontalAdvance(name)


def _shortened(name: str, room_px: float) -> str:
    return QFontMetricsF(screen_font(*FONT)).elidedText(name, Qt.TextElideMode.ElideRight, room_px)
