"""Paints what the plan lies on: paper, grid, board, joists, tracks, scenes and panel faces."""

import math

import numpy as np
from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPen, QPolygonF

from app.canvas.camera import NOISE_PX, Camera, round_step
from app.canvas.painting.backdrop_painter import paint_backdrop
from app.canvas.painting.joist_painter import paint_joists
from app.canvas.painting.panel_painter import paint_panel_face
from app.canvas.painting.raster import draw_grid, raster
from app.canvas.painting.shades import SCENE_HUES, with_alpha
from app.canvas.sight import Sight
from wiring.plan.plan import Line

GRID_LEAST_PX = 9.0  # grid lines closer than this would make a grey, not a grid
METRIC_STEPS_MM = (10.0, 50.0, 100.0, 500.0, 1000.0)
US_STEPS_MM = (25.4 / 2, 25.4, 25.4 * 6, 25.4 * 12, 25.4 * 48)
BED_MM, GAUGE_MM, RAIL_MM = 28.0, 16.5, 2.0  # about H0; a track is a landmark here, not a drawing
CORNER_PX = 4.0


def grid_steps_mm(units: str, scale: float) -> tuple[float, float]:
    """Return the distance of grid lines and of the stronger ones among them."""
    steps = US_STEPS_MM if units == "us" else METRIC_STEPS_MM
    fine = round_step(GRID_LEAST_PX / scale, steps)
    return fine, round_step(fine * 1.5, steps)


def paint_surface(painter: QPainter, sight: Sight) -> None:
    """Paint everything beneath wires and parts."""
    shades, plan = sight.shades, sight.plan
    board = _polygon(plan.board, sight.camera)
    has_board = board.size() > 2
    painter.fillRect(
        QRectF(0, 0, sight.width_px, sight.height_px), shades.around if has_board else shades.paper
    )
    if has_board:
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(shades.shadow)
        painter.drawPolygon(board.translated(0, 2))
        painter.setBrush(shades.paper)
        painter.drawPolygon(board)
    paint_backdrop(painter, sight)
    _paint_grid(painter, sight)
    if has_board:
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.setPen(QPen(shades.board_edge, 1.4))
        painter.drawPolygon(board)
    paint_joists(painter, sight)
    _paint_scenes(painter, sight)
    _paint_tracks(painter, sight)
    _paint_panels(painter, sight)


def _polygon(line: Line, camera: Camera) -> QPolygonF:
    return QPolygonF([QPointF(*camera.to_px(*point)) for point in line])


def _paint_grid(painter: QPainter, sight: Sight) -> None:
    camera = sight.camera
    box = sight.visible.grown(1.0 / camera.scale)  # a line half a pixel outside is drawn on the edge
    fine, strong = grid_steps_mm(sight.plan.habits.units, camera.scale)
    with raster(painter, sight.width_px, sight.height_px) as on:
        for step, colour in ((fine, sight.shades.grid), (strong, sight.shades.grid_strong)):
            xs = np.arange(math.ceil(box.left / step), math.floor(box.right / step) + 1) * step
            ys = np.arange(math.ceil(box.top / step), math.floor(box.bottom / step) + 1) * step
            half = 0.5 + NOISE_PX  # as `whole_px` does
            rounded_xs = np.floor((xs - camera.left_mm) * camera.scale + half)
            rounded_ys = np.floor((ys - camera.top_mm) * camera.scale + half)
            draw_grid(on, rounded_xs, rounded_ys, colour.rgba())


def _paint_tracks(painter: QPainter, sight: Sight) -> None:
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    scale, shades = sight.camera.scale, sight.shades
    runs = [_polygon(track, sight.camera) for track in sight.plan.tracks if len(track) > 1]
    strokes = [
        (shades.track_bed, BED_MM),
        (shades.rail, GAUGE_MM + RAIL_MM),
        (shades.track_bed, GAUGE_MM - RAIL_MM),
    ]
    rails_show = scale * RAIL_MM > 0.35
    for colour, width_mm in strokes if rails_show else strokes[:1]:
        pen = QPen(colour, max(width_mm * scale, 1.0))
        pen.setCapStyle(Qt.PenCapStyle.FlatCap)
        pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
        painter.setPen(pen)
        for run in runs:
            painter.drawPolyline(run)


def _paint_scenes(painter: QPainter, sight: Sight) -> None:
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    for index, scene in enumerate(sight.plan.scenes.values()):
        if scene.width_mm <= 0 or scene.height_mm <= 0:
            continue
        hue = scene_hue(index, dark=sight.shades.dark)
        rect = _rect(sight.camera, scene.x_mm, scene.y_mm, scene.width_mm, scene.height_mm)
        painter.setPen(QPen(with_alpha(hue, 0.45), 1))
        painter.setBrush(with_alpha(hue, 0.10 if sight.shades.dark else 0.085))
        painter.drawRoundedRect(rect, CORNER_PX, CORNER_PX)


def _paint_panels(painter: QPainter, sight: Sight) -> None:
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    shades = sight.shades
    for panel in sight.plan.panels.values():
        rect = _rect(sight.camera, panel.x_mm, panel.y_mm, panel.width_mm, panel.height_mm)
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(shades.shadow)
        painter.drawRoundedRect(rect.translated(0, 2.5), CORNER_PX, CORNER_PX)
        painter.setBrush(shades.raised)
        painter.setPen(QPen(shades.board_edge, 1))
        painter.drawRoundedRect(rect, CORNER_PX, CORNER_PX)
        paint_panel_face(painter, sight, panel)


def _rect(camera: Camera, x_mm: float, y_mm: float, width_mm: float, height_mm: float) -> QRectF:
    return QRectF(*camera.to_px(x_mm, y_mm), width_mm * camera.scale, height_mm * camera.scale)


def scene_hue(index: int, *, dark: bool) -> QColor:
    """Return the hue of the scene that stands at an index of the plan."""
    hue = QColor(SCENE_HUES[index % len(SCENE_HUES)])
    return hue.lighter(150) if dark else hue
