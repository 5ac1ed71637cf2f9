"""Writes the names of scenes and panels above their edges, over the wires."""

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
from app.theme.words import factor, lined, scaled

HIGH_PX = 17.0
GAP_PX = 3.0
SHORTENED_PX = 64.0  # with less room than this, the beginning of a name says nothing
AIR_PX = 8.0  # beside the name, both sides together
FONT = (12, "semibold")


class AreaName(NamedTuple):
    """A name and where it stands, in pixels."""

    name: str
    box: Box
    ink: QColor


def area_names(sight: Sight) -> list[AreaName]:
    """Return the names, shortened where their area is narrower, of areas not too small for one."""
    dark = sight.shades.dark
    found = []
    for index, scene in enumerate(sight.plan.scenes.values()):
        hue = scene_hue(index, dark=dark)
        ink = hue.lighter(125) if dark else hue.darker(140)
        found.append(_placed(sight, scene.name, scene.x_mm, scene.y_mm, scene.width_mm, ink))
    for panel in sight.plan.panels.values():
        found.append(_placed(sight, panel.name, panel.x_mm, panel.y_mm, panel.width_mm, sight.shades.quiet))
    return [name for name in found if name is not None]


def paint_area_names(painter: QPainter, sight: Sight, names: Iterable[AreaName]) -> None:
    """Write the names on a ground that lets no line run through them."""
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setFont(screen_font(*FONT))
    for name in names:
        rect = QRectF(name.box.left, name.box.top, name.box.right - name.box.left, lined(HIGH_PX))
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(sight.shades.label_ground)
        painter.drawRoundedRect(rect, 3, 3)
        painter.setPen(name.ink)
        painter.drawText(rect, Qt.AlignmentFlag.AlignCenter, name.name)


def _placed(
    sight: Sight, name: str, x_mm: float, y_mm: float, room_mm: float, ink: QColor
) -> AreaName | None:
    room_px = max(room_mm * sight.camera.scale, scaled(SHORT_NAME_PX))
    width = _wide_px(name, factor())
    if not name or (width > room_px and room_px < scaled(SHORTENED_PX)):
        return None
    x, y = sight.camera.to_px(x_mm, y_mm)
    if width > room_px:
        name, width = _shortened(name, room_px - AIR_PX), room_px
    return AreaName(name, Box(x, y - lined(HIGH_PX) - GAP_PX, x + width, y - GAP_PX), ink)


@lru_cache(maxsize=512)
def _wide_px(name: str, _words: float) -> float:
    return QFontMetricsF(screen_font(*FONT)).horizontalAdvance(name) + AIR_PX


def _shortened(name: str, room_px: float) -> str:
    return QFontMetricsF(screen_font(*FONT)).elidedText(name, Qt.TextElideMode.ElideRight, room_px)
