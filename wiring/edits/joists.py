"""Lay joists under the board, shift and size them, take them away."""

import math
from typing import Any

import msgspec

from wiring.edits.edit import Edit, EditRefused
from wiring.edits.set_plan import set_plan
from wiring.edits.tables import rounded_mm
from wiring.plan.joist import Joist
from wiring.plan.places import Point
from wiring.plan.plan import Plan

LEAST_MM = 10.0  # a shorter one is a slip of the hand
FIELDS = ("start", "end", "width_mm", "depth_mm")


def add_joist(start: Point, end: Point) -> Edit:
    """Lay a joist between two places, in mm; it is as wide and as deep as the one laid last."""

    def apply(plan: Plan) -> Plan:
        if math.dist(start, end) < LEAST_MM:
            raise EditRefused("Drag from one end of the joist to the other; that was too short.")
        like = plan.joists[-1] if plan.joists else Joist(start=(0.0, 0.0), end=(1.0, 0.0))
        joist = msgspec.structs.replace(like, start=_tidy(start), end=_tidy(end))
        return set_plan(joists=(*plan.joists, joist)).apply(plan)

    return Edit("Lay joist", apply)


def change_joist(index: int, **fields: Any) -> Edit:  # noqa: ANN401 - a place or a number
    """Set start, end, width_mm or depth_mm of the joist of that index."""
    unknown = fields.keys() - set(FIELDS)
    if unknown:
        raise TypeError(f"a joist has no field {', '.join(sorted(unknown))} to set")
    given = {k: rounded_mm(float(v)) if k.endswith("_mm") else _tidy(v) for k, v in fields.items()}

    def apply(plan: Plan) -> Plan:
        joist = msgspec.structs.replace(_joist_of(plan, index), **given)
        return set_plan(joists=(*plan.joists[:index], joist, *plan.joists[index + 1 :])).apply(plan)

    return Edit("Change joist", apply)


def size_joists(**sizes: float) -> Edit:
    """Give every joist of the plan that width_mm or depth_mm."""

    def apply(plan: Plan) -> Plan:
        return set_plan(joists=tuple(msgspec.structs.replace(j, **sizes) for j in plan.joists)).apply(plan)

    return Edit("Size joists", apply)


def remove_joist(index: int) -> Edit:
    """Take away the joist of that index."""

    def apply(plan: Plan) -> Plan:
        _joist_of(plan, index)
        return set_plan(joists=(*plan.joists[:index], *plan.joists[index + 1 :])).apply(plan)

    return Edit("Remove joist", apply)


def _joist_of(plan: Plan, index: int) -> Joist:
    if not 0 <= index < len(plan.joists):
        raise EditRefused("The plan has no such joist any more.")
    return plan.joists[index]


def _tidy(point: Point) -> Point:
    return rounded_mm(point[0]), rounded_mm(point[1])
