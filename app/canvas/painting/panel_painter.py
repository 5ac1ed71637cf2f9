"""Paints what is painted on the faces of the panels: track diagrams and legends."""

from PySide6.QtGui import QPainter

from app.canvas.sight import Sight
from app.theme.paint_picture import paint_items
from wiring.drawings.panel_face import decoration
from wiring.pictures.picture import Item, Words
from wiring.plan.panel import Panel

LEAST_EM_PX = 5.0  # smaller letters would be dirt


def paint_panel_face(painter: QPainter, sight: Sight, panel: Panel) -> None:
    """Paint the lines and legends of one panel over its plate."""
    if not (panel.lines or panel.texts):
        return
    box, camera = sight.visible, sight.camera
    right, bottom = panel.x_mm + panel.width_mm, panel.y_mm + panel.height_mm
    if panel.x_mm > box.right or panel.y_mm > box.bottom or right < box.left or bottom < box.top:
        return
    painter.save()
    painter.translate(*camera.to_px(panel.x_mm, panel.y_mm))
    painter.scale(camera.scale, camera.scale)
    paint_items(painter, (i for i in decoration(panel) if _shows(i, camera.scale)), sight.shades.theme)
    painter.restore()


def _shows(item: Item, scale: float) -> bool:
    return not isinstance(item, Words) or item.size_mm * scale >= LEAST_EM_PX
