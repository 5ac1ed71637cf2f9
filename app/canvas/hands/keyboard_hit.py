"""What a right click on the middle of what is selected would hit, for the keyboard."""

import itertools
import math

from app.canvas.hits.area_hit import areas_of
from app.canvas.hits.hit import Hit
from app.canvas.painting.ground_marks import ground_middle
from app.canvas.sight import Sight
from app.ground_keys import joist_index, line_points
from app.selection import Selection
from wiring.plan.places import Point
from wiring.plan.plan import Plan


def chosen_hit(sight: Sight, selection: Selection, held: Point | None) -> Hit | None:
    """Return the hit, on the corner that is held if one is; None when nothing is selected."""
    plan, ids = sight.plan, selection.ids
    part = next((i for i in plan.parts if i in ids), "")
    if part:
        row = sight.geometry.parts.get(part)
        return Hit((float(row[4]), float(row[5])), part=part)
    wire = next((i for i in plan.wires if i in ids), "")
    if wire:
        bends = plan.wires[wire].bends
        at = held or middle_of(sight.geometry.paths.get(wire, ()))
        return Hit(at, wire=wire, bend=bends.index(held) if held in bends else -1)
    ground = next(iter(sorted(selection.grounds)), "")
    place = held or ground_middle(plan, ground)
    return None if place is None else _ground_hit(plan, ground, place, held)


def middle_of(path: tuple[Point, ...]) -> Point:
    """Return the place half way along a path; the origin for an empty one."""
    left = sum(math.dist(a, b) for a, b in itertools.pairwise(path)) / 2
    for a, b in itertools.pairwise(path):
        leg = math.dist(a, b)
        if left <= leg and leg > 0:
            return a[0] + (b[0] - a[0]) * left / leg, a[1] + (b[1] - a[1]) * left / leg
        left -= leg
    return path[0] if path else (0.0, 0.0)


def _ground_hit(plan: Plan, ground: str, at: Point, held: Point | None) -> Hit:
    if ground in areas_of(plan):
        return Hit(at, area=ground, grip="move")
    if ground in plan.wireways:
        points = plan.wireways[ground].points
        return Hit(at, way=ground, corner=points.index(held) if held in points else -1)
    if joist_index(ground) >= 0:
        return Hit(at, joist=joist_index(ground), hold="whole")
    line = line_points(plan, ground)
    return Hit(at, line=ground, corner=line.index(held) if held in line else -1)
