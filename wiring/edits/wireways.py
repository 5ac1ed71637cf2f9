"""Draw wireways, bend them, set what they are like, take them away."""

import math
from collections.abc import Iterable
from itertools import pairwise
from typing import Any

import msgspec

from wiring.edits.edit import Edit, EditRefused
from wiring.edits.tables import frozen, refuse_if, rounded_mm, still_in, without
from wiring.plan.designations import next_numbered
from wiring.plan.ground_faults import wireway_faults
from wiring.plan.places import Point
from wiring.plan.plan import Plan
from wiring.plan.wireway import Wireway

FIELDS = {"name": "name", "hole_mm": "hole", "drop_mm": "drop", "fascia_drop_mm": "drop at panels"}


def add_wireway(points: Iterable[Point], name: str = "", **fields: float) -> Edit:
    """Draw a wireway along those corners, in mm; without a name it gets the next number."""
    corners = tuple(_tidy(p) for p in points)

    def apply(plan: Plan) -> Plan:
        way = Wireway(
            id=f"y{plan.next_number}", name=name.strip() or _next_name(plan), points=corners, **fields
        )
        return _with(plan, way).with_changes(next_number=plan.next_number + 1)

    return Edit("Draw wireway", apply)


def move_corner(wireway_id: str, index: int, x_mm: float, y_mm: float) -> Edit:
    """Put the corner of that index somewhere else."""

    def apply(plan: Plan) -> Plan:
        way = wireway_of(plan, wireway_id)
        if not 0 <= index < len(way.points):
            raise EditRefused(f"The wireway {way.name} has no such corner any more.")
        points = (*way.points[:index], _tidy((x_mm, y_mm)), *way.points[index + 1 :])
        return _with(plan, msgspec.structs.replace(way, points=points))

    return Edit("Move wireway corner", apply)


def add_corner(wireway_id: str, x_mm: float, y_mm: float) -> Edit:
    """Put a corner into the stretch that passes a place closest; the course stays as it is there."""

    def apply(plan: Plan) -> Plan:
        way = wireway_of(plan, wireway_id)
        stretches = [_onto(a, b, (x_mm, y_mm)) for a, b in pairwise(way.points)]
        at = min(range(len(stretches)), key=lambda i: round(math.dist(stretches[i], (x_mm, y_mm)), 6))
        corner = _tidy(stretches[at])
        points = (*way.points[: at + 1], corner, *way.points[at + 1 :])
        return _with(plan, msgspec.structs.replace(way, points=points))

    return Edit("Add wireway corner", apply)


def remove_corner(wireway_id: str, index: int) -> Edit:
    """Take the corner of that index away; the last two stay."""

    def apply(plan: Plan) -> Plan:
        way = wireway_of(plan, wireway_id)
        if not 0 <= index < len(way.points):
            raise EditRefused(f"The wireway {way.name} has no such corner any more.")
        points = (*way.points[:index], *way.points[index + 1 :])
        return _with(plan, msgspec.structs.replace(way, points=points))

    return Edit("Remove wireway corner", apply)


def shift_wireway(wireway_id: str, dx_mm: float, dy_mm: float) -> Edit:
    """Shift all corners of a wireway."""

    def apply(plan: Plan) -> Plan:
        way = wireway_of(plan, wireway_id)
        points = tuple(_tidy((x + dx_mm, y + dy_mm)) for x, y in way.points)
        return _with(plan, msgspec.structs.replace(way, points=points))

    return Edit("Move wireway", apply)


def set_wireway(wireway_id: str, **fields: Any) -> Edit:  # noqa: ANN401 - a name or a number
    """Set name, hole_mm, drop_mm or fascia_drop_mm (None: as drop_mm) of a wireway."""
    unknown = fields.keys() - FIELDS.keys()
    if unknown:
        raise TypeError(f"a wireway has no field {', '.join(sorted(unknown))} to set")

    def apply(plan: Plan) -> Plan:
        return _with(plan, msgspec.structs.replace(wireway_of(plan, wireway_id), **fields))

    return Edit(f"Set wireway {' and '.join(FIELDS[name] for name in FIELDS if name in fields)}", apply)


def remove_wireway(wireway_id: str) -> Edit:
    """Take a wireway away; wires along it stay where they lie but lose its drops."""

    def apply(plan: Plan) -> Plan:
        wireway_of(plan, wireway_id)
        wires = {
            i: msgspec.structs.replace(w, along=tuple(y for y in w.along if y != wireway_id))
            if wireway_id in w.along
            else w
            for i, w in plan.wires.items()
        }
        freed = any(wires[i] is not w for i, w in plan.wires.items())
        return plan.with_changes(
            wireways=without(plan.wireways, [wireway_id]), wires=frozen(wires) if freed else plan.wires
        )

    return Edit("Remove wireway", apply)


def wireway_of(plan: Plan, wireway_id: str) -> Wireway:
    """Return a wireway of the plan; EditRefused when it is gone."""
    return still_in(plan.wireways, wireway_id, "wireway")


def _with(plan: Plan, way: Wireway) -> Plan:
    if plan.wireways.get(way.id) == way:
        return plan
    refuse_if(wireway_faults(way))
    return plan.with_changes(wireways=frozen({**plan.wireways, way.id: way}))


def _next_name(plan: Plan) -> str:
    return next_numbered("Wireway ", {way.name for way in plan.wireways.values()})


def _onto(a: Point, b: Point, at: Point) -> Point:
    """Return the point of a stretch that lies nearest to a place."""
    dx, dy = b[0] - a[0], b[1] - a[1]
    square = dx * dx + dy * dy
    share = 0.0 if square < 1e-12 else ((at[0] - a[0]) * dx + (at[1] - a[1]) * dy) / square
    share = min(max(share, 0.0), 1.0)
    return a[0] + share * dx, a[1] + share * dy


def _tidy(point: Point) -> Point:
    return rounded_mm(point[0]), rounded_mm(point[1])
