"""What of a selected thing the keyboard can take hold of: bends, corners and ends, and how they are moved."""

from collections.abc import Mapping

from app.canvas.gestures.area import LEAST_MM
from app.canvas.hands.ground_edits import line_changed
from app.canvas.hits.area_hit import areas_of
from app.canvas.rerouting import with_wireway_followed
from app.ground_keys import joist_index, line_points
from wiring.catalogue.kind import Kind
from wiring.edits.bends import move_bend
from wiring.edits.edit import Edit
from wiring.edits.joists import change_joist
from wiring.edits.panels import change_panel
from wiring.edits.scenes import change_scene
from wiring.edits.wireways import move_corner
from wiring.plan.places import Point
from wiring.plan.plan import Line, Plan


def grips(plan: Plan, one: str) -> Line:
    """Return where a thing can be taken hold of, in order; none for a part."""
    if one in plan.wires:
        return plan.wires[one].bends
    if one in plan.wireways:
        return plan.wireways[one].points
    area = areas_of(plan).get(one)
    if area is not None:
        right, bottom = area.x_mm + area.width_mm, area.y_mm + area.height_mm
        return (area.x_mm, area.y_mm), (right, area.y_mm), (right, bottom), (area.x_mm, bottom)
    index = joist_index(one)
    if 0 <= index < len(plan.joists):
        return plan.joists[index].start, plan.joists[index].end
    return line_points(plan, one)


def grip_moved(plan: Plan, one: str, index: int, by: Point, kinds: Mapping[str, Kind]) -> Edit | None:
    """Return the edit that shifts one grip of a thing; None when it has no such grip."""
    places = grips(plan, one)
    if not 0 <= index < len(places):
        return None
    at = places[index][0] + by[0], places[index][1] + by[1]
    if one in plan.wires:
        return move_bend(one, index, *at)
    if one in plan.wireways:
        return with_wireway_followed(move_corner(one, index, *at), kinds, one)
    if one in areas_of(plan):
        return _corner_moved(plan, one, index, by)
    joist = joist_index(one)
    if joist >= 0:
        return change_joist(joist, **{("start", "end")[index]: at})
    return line_changed(one, (*places[:index], at, *places[index + 1 :]))


def _corner_moved(plan: Plan, one: str, index: int, by: Point) -> Edit:
    area = areas_of(plan)[one]
    dx, dy = by
    at_left, at_top = index in (0, 3), index in (0, 1)
    wide = max(area.width_mm + (-dx if at_left else dx), LEAST_MM)
    high = max(area.height_mm + (-dy if at_top else dy), LEAST_MM)
    change = change_scene if one in plan.scenes else change_panel
    return change(
        one,
        x_mm=area.x_mm + area.width_mm - wide if at_left else area.x_mm,
        y_mm=area.y_mm + area.height_mm - high if at_top else area.y_mm,
        width_mm=wide,
        height_mm=high,
    )
