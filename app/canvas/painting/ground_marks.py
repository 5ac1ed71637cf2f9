"""Paints what of the ground is selected: a wireway with its corners, a joist with its ends, an area."""

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPen, QPolygonF

from app.canvas.geometry import Box
from app.canvas.hits.area_hit import area_box, areas_of
from app.canvas.painting.joist_painter import joist_bar
from app.canvas.painting.shades import with_alpha
from app.canvas.painting.wireway_painter import LEAST_PX
from app.canvas.sight import Sight
from app.ground_keys import BOARD, joist_index, line_points
from wiring.plan.places import Point
from wiring.plan.plan import Line, Plan
from wiring.plan.wireway import Wireway

GRIP_PX = 4.0


def paint_ground_mark(painter: QPainter, sight: Sight, ground: str, *, grips: bool = True) -> None:
    """Paint a copper frame round what of the ground a selection names; `grips` change its shape."""
    plan, index = sight.plan, joist_index(ground)
    line = line_points(plan, ground)
    if line:
        _paint_line(painter, sight, (*line, line[0]) if ground == BOARD else line)
        _paint_grips(painter, sight, line if grips else ())
    elif ground in plan.wireways:
        _paint_way(painter, sight, plan.wireways[ground])
        _paint_grips(painter, sight, plan.wireways[ground].points if grips else ())
    elif 0 <= index < len(plan.joists):
        joist = plan.joists[index]
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(QPen(sight.shades.copper, 1.6))
        painter.setBrush(with_alpha(sight.shades.copper, 0.10))
        painter.drawPolygon(joist_bar(sight, joist))
        _paint_grips(painter, sight, (joist.start, joist.end) if grips else ())
    elif ground in areas_of(plan):
        _paint_area(painter, sight, area_box(areas_of(plan)[ground]))


def ground_middle(plan: Plan, ground: str) -> Point | None:
    """Return a place about the middle of a wireway, joist or line, the corner of an area; None for none."""
    index = joist_index(ground)
    points: Line = line_points(plan, ground)
    if ground in plan.wireways:
        points = plan.wireways[ground].points
    elif 0 <= index < len(plan.joists):
        points = (plan.joists[index].start, plan.joists[index].end)
    if len(points) > 1:
        (ax, ay), (bx, by) = points[(len(points) - 1) // 2], points[(len(points) - 1) // 2 + 1]
        return (ax + bx) / 2, (ay + by) / 2
    area = areas_of(plan).get(ground)
    return (area.x_mm, area.y_mm) if area is not None else None


def ground_box(plan: Plan, ground: str) -> Box | None:
    """Return the box round what of the ground a selection names; None when the plan has no such thing."""
    index = joist_index(ground)
    points: Line = line_points(plan, ground)
    if ground in areas_of(plan):
        return area_box(areas_of(plan)[ground])
    if ground in plan.wireways:
        points = plan.wireways[ground].points
    elif 0 <= index < len(plan.joists):
        points = (plan.joists[index].start, plan.joists[index].end)
    if not points:
        return None
    xs, ys = [x for x, _ in points], [y for _, y in points]
    return Box(min(xs), min(ys), max(xs), max(ys))


def _paint_way(painter: QPainter, sight: Sight, way: Wireway) -> None:
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    band = QPen(with_alpha(sight.shades.copper, 0.35), max(way.hole_mm * sight.camera.scale, LEAST_PX) + 3)
    band.setCapStyle(Qt.PenCapStyle.RoundCap)
    band.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
    painter.setPen(band)
    painter.drawPolyline(QPolygonF([QPointF(*sight.camera.to_px(*p)) for p in way.points]))


def _paint_area(painter: QPainter, sight: Sight, box: Box) -> None:
    a = QPointF(*sight.camera.to_px(box.left, box.top))
    b = QPointF(*sight.camera.to_px(box.right, box.bottom))
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.setPen(QPen(sight.shades.copper, 2))
    painter.drawRoundedRect(QRectF(a, b), 4, 4)


def _paint_line(painter: QPainter, sight: Sight, line: Line) -> None:
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.setPen(QPen(sight.shades.copper, 2))
    painter.drawPolyline(QPolygonF([QPointF(*sight.camera.to_px(*p)) for p in line]))


def _paint_grips(painter: QPainter, sight: Sight, places: tuple[tuple[float, float], ...]) -> None:
    painter.setPen(QPen(sight.shades.paper, 1))
    painter.setBrush(sight.shades.copper)
    for place in places:
        x, y = sight.camera.to_px(*place)
        painter.drawRect(QRectF(x - GRIP_PX, y - GRIP_PX, 2 * GRIP_PX, 2 * GRIP_PX))
