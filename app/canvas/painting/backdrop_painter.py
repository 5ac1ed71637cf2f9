"""Paints the picture under the plan, dimmed, so that it can be drawn over."""

from PySide6.QtCore import QRectF
from PySide6.QtGui import QPainter, QPixmap

from app.canvas.sight import Sight

IN_THE_DARK = 0.75  # a picture is mostly white paper, and glares on slate


def paint_backdrop(painter: QPainter, sight: Sight) -> None:
    """Paint the picture where the plan says, from the level nearest above the size it has on the screen."""
    backdrop = sight.plan.backdrop
    if backdrop is None or not sight.picture:
        return
    width_px = backdrop.width_px * backdrop.mm_per_px * sight.camera.scale
    height_px = backdrop.height_px * backdrop.mm_per_px * sight.camera.scale
    level = _level(sight.picture, width_px * sight.ratio)
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
    painter.setOpacity(backdrop.strength * (IN_THE_DARK if sight.shades.dark else 1.0))
    painter.translate(*sight.camera.to_px(backdrop.x_mm, backdrop.y_mm))
    painter.rotate(backdrop.turn_deg)
    painter.drawPixmap(QRectF(0, 0, width_px, height_px), level, QRectF(level.rect()))
    painter.restore()


def _level(levels: tuple[QPixmap, ...], wanted_px: float) -> QPixmap:
    fitting = [level for level in levels if level.width() >= wanted_px]
    return fitting[-1] if fitting else levels[0]
