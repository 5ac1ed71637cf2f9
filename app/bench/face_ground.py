"""Paints items in millimetres of the face where the camera shows them, mirrored from behind."""

from PySide6.QtGui import QPainter

from app.bench.face_sight import FaceSight
from app.theme.paint_picture import paint_items
from wiring.pictures.picture import Item
from wiring.pictures.transform import mirrored


def paint_on_face(painter: QPainter, sight: FaceSight, items: tuple[Item, ...]) -> None:
    """Paint items that are given as seen from the front."""
    camera = sight.camera
    painter.save()
    painter.translate(camera.left_px, camera.top_px)
    painter.scale(camera.scale, camera.scale)
    shown = mirrored(items, camera.width_mm / 2) if camera.behind else items
    paint_items(painter, shown, sight.whole.shades.theme)
    painter.restore()
