"""Rings the bodies behind a face that cannot be mounted where they are: dashed, hatched, with a diamond."""

from collections.abc import Iterable

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QColor, QPainter, QPen, QPolygonF

from app.canvas.gestures.pointer import Preview
from app.canvas.painting.shades import Shades, with_alpha
from app.canvas.sight import Sight
from wiring.pictures.theme import resolve
from wiring.plan.panel_bodies import APART_MM, Body, bodies_on, body_of, misfits
from wiring.plan.panel_places import panel_under

MOST_TOUCHED = 200  # with more in hand nobody looks at a single body
DIAMOND_PX = 5.5


def paint_misfits(painter: QPainter, sight: Sight, preview: Preview) -> None:
    """Ring what would not fit on its panel if the preview came true."""
    plan, ghost = preview.plan or sight.plan, preview.ghost
    if not plan.panels or not (ghost or 0 < len(preview.touched) <= MOST_TOUCHED):
        return
    ids = preview.touched if preview.plan is not None else frozenset[str]()
    moved = {i: plan.parts[i] for i in sorted(ids) if i in plan.parts}
    held = [*moved.values(), *([ghost] if ghost else [])]
    panels = {p.id: p for part in held if (p := panel_under(plan.panels.values(), (part.x_mm, part.y_mm)))}
    if panels:  # a preview may hold no more than what is touched; what stands still is in the way too
        still = {i: part for i, part in sight.plan.parts.items() if i not in ids}
        plan = plan.with_changes(parts={**still, **moved})
    for panel in panels.values():
        bodies = bodies_on(plan, sight.kinds, panel)
        if ghost is not None and ghost.kind in sight.kinds:
            bodies = (*bodies, body_of(ghost, sight.kinds[ghost.kind]))
        wrong = misfits(bodies, panel)
        paint_rings(painter, sight.shades, (_placed(sight, b) for b in bodies if b.part.id in wrong))


def paint_rings(painter: QPainter, shades: Shades, places: Iterable[tuple[QRectF, bool]]) -> None:
    """Paint a ring round each place in pixels, an ellipse where it says so, and a diamond beside it."""
    colour = QColor(resolve("danger", shades.theme))
    for rect, is_round in places:
        pen = QPen(colour, 1.8)
        pen.setDashPattern([3, 2])
        painter.setPen(pen)
        painter.setBrush(with_alpha(colour, 0.14))
        if is_round:
            painter.drawEllipse(rect)
        else:
            painter.drawRect(rect)
        x, y, reach = rect.right() + 6, rect.top() - 2, DIAMOND_PX
        painter.setPen(QPen(shades.raised, 1))
        painter.setBrush(colour)
        corners = ((x, y - reach), (x + reach, y), (x, y + reach), (x - reach, y))
        painter.drawPolygon(QPolygonF([QPointF(*p) for p in corners]))


def _placed(sight: Sight, body: Body) -> tuple[QRectF, bool]:
    rim = APART_MM / 2
    left, top = sight.camera.to_px(body.box[0] - rim, body.box[1] - rim)
    right, bottom = sight.camera.to_px(body.box[2] + rim, body.box[3] + rim)
    return QRectF(left, top, right - left, bottom - top), bool(body.radius_mm)
