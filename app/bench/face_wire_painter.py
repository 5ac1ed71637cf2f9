"""Paints what is done to wires at the back of a panel: those chosen, the one in hand, where it may land."""

from PySide6.QtCore import QPointF, Qt
from PySide6.QtGui import QPainter, QPen, QPolygonF

from app.bench.face_ground import paint_on_face
from app.bench.face_hit import FaceHit, terminal_places
from app.bench.face_pointer import FacePreview
from app.bench.face_sight import FaceSight
from app.bench.face_wires import courses, wire_items
from app.canvas.hits.hit import end_rings
from app.canvas.painting.shades import with_alpha
from wiring.plan.panel_places import to_face
from wiring.plan.places import Point

GLOW_PX, RING_PX, DOT_PX, LANDING_PX = 8.0, 5.0, 4.5, 8.0
Course = tuple[Point, ...]


def paint_chosen_wires(painter: QPainter, sight: FaceSight) -> None:
    """Lay a copper glow round the chosen wires, and show by what one of them is held."""
    found = courses(sight)
    chosen = [i for i in found if i in sight.selected]
    for wire_id in chosen:
        _glow(painter, sight, found[wire_id], 0.55)
    paint_on_face(painter, sight, tuple(wire_items(sight, {i: found[i] for i in chosen})))
    copper, raised = sight.whole.shades.copper, sight.whole.shades.raised
    for wire_id in chosen if len(chosen) == 1 else ():
        painter.setPen(QPen(copper, 1.6))
        painter.setBrush(raised)
        for place in end_rings(found[wire_id], sight.camera.scale).values():
            painter.drawEllipse(QPointF(*sight.camera.to_px(place)), RING_PX, RING_PX)
        for bend in sight.plan.wires[wire_id].bends:
            x, y = sight.camera.to_px(to_face(sight.panel, bend))
            painter.drawRect(int(x) - 3, int(y) - 3, 7, 7)


def paint_hovered_wire(painter: QPainter, sight: FaceSight, hit: FaceHit) -> None:
    """Let the wire or terminal under the pointer stand out a little."""
    if hit.terminal is not None:
        place = terminal_places(sight).get(hit.terminal)
        if place is not None:
            _ring(painter, sight, place)
    elif hit.wire and hit.wire not in sight.selected:
        course = courses(sight).get(hit.wire, ())
        _glow(painter, sight, course, 0.30)


def paint_pulled(painter: QPainter, sight: FaceSight, preview: FacePreview) -> None:
    """Let the terminals stand out, and ring the one where the wire in hand would end."""
    painter.setPen(QPen(sight.whole.shades.raised, 1))
    painter.setBrush(sight.whole.shades.copper)
    places = terminal_places(sight)
    for place in places.values():
        painter.drawEllipse(QPointF(*sight.camera.to_px(place)), DOT_PX, DOT_PX)
    if preview.landing in places and preview.landing is not None:
        _ring(painter, sight, places[preview.landing])


def _ring(painter: QPainter, sight: FaceSight, place: Point) -> None:
    painter.setPen(QPen(sight.whole.shades.copper, 2))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawEllipse(QPointF(*sight.camera.to_px(place)), LANDING_PX, LANDING_PX)


def _glow(painter: QPainter, sight: FaceSight, course: Course, share: float) -> None:
    pen = QPen(with_alpha(sight.whole.shades.copper, share), GLOW_PX)
    pen.setCapStyle(Qt.PenCapStyle.RoundCap)
    pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
    painter.setPen(pen)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawPolyline(QPolygonF([QPointF(*sight.camera.to_px(point)) for point in course]))
