"""Where scenes and panels can be grabbed: by the name above them to move, by edges and corners to resize."""

from collections.abc import Mapping
from typing import NamedTuple

from app.canvas.geometry import Box
from app.theme.words import lined, scaled
from wiring.plan.panel import Panel
from wiring.plan.places import Point
from wiring.plan.plan import Plan
from wiring.plan.scene import Scene

EDGE_PX = 5.0
NAME_HIGH_PX = 20.0
LETTER_PX = 7.0  # about the width of a letter of a name
SHORT_NAME_PX = 48.0  # a name is never wider than its area, or than this where the area is narrower


class AreaHit(NamedTuple):
    """An area and how it is held: "move", or the sides that follow the pointer, as in "left top"."""

    area: str = ""
    grip: str = ""


def area_box(area: Scene | Panel) -> Box:
    """Return the rectangle of a scene or panel."""
    return Box(area.x_mm, area.y_mm, area.x_mm + area.width_mm, area.y_mm + area.height_mm)


def areas_of(plan: Plan) -> Mapping[str, Scene | Panel]:
    """Return scenes and panels by id; the last one lies on top."""
    return {**plan.scenes, **plan.panels}


def area_grip_at(plan: Plan, at: Point, scale: float) -> AreaHit:
    """Return the area that can be grabbed at a place, and by what; empty when there is none."""
    for area_id, area in reversed(tuple(areas_of(plan).items())):
        box = area_box(area)
        room_mm = max(area.width_mm, scaled(SHORT_NAME_PX) / scale)
        name_mm = min((len(area.name) * scaled(LETTER_PX) + 8) / scale, room_mm)
        if 0 <= at[0] - box.left <= name_mm and 0 < box.top - at[1] <= lined(NAME_HIGH_PX) / scale:
            return AreaHit(area_id, "move")
        sides = _sides(box, at, EDGE_PX / scale)
        if sides:
            return AreaHit(area_id, sides)
    return AreaHit()


def _sides(box: Box, at: Point, reach: float) -> str:
    """Return the sides of a box that a place lies on, "" when it lies on none."""
    x, y = at
    if not (box.left - reach <= x <= box.right + reach and box.top - reach <= y <= box.bottom + reach):
        return ""
    near = (
        ("left", abs(x - box.left)),
        ("right", abs(x - box.right)),
        ("top", abs(y - box.top)),
        ("bottom", abs(y - box.bottom)),
    )
    return " ".join(name for name, away in near if away <= reach)
