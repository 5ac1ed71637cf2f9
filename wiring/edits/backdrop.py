"""Lay a picture under the plan, bring it to scale, take it away."""

import math
from typing import Any

import msgspec

from wiring.edits.edit import Edit, EditRefused
from wiring.edits.tables import refuse_if, rounded_mm
from wiring.plan.backdrop import Backdrop
from wiring.plan.ground_faults import backdrop_faults
from wiring.plan.places import Point
from wiring.plan.plan import Plan


def lay_backdrop(backdrop: Backdrop) -> Edit:
    """Lay a picture under the plan instead of the one that lies there."""

    def apply(plan: Plan) -> Plan:
        return _with(plan, backdrop)

    return Edit("Lay picture under plan", apply)


def remove_backdrop() -> Edit:
    """Take the picture under the plan away."""

    def apply(plan: Plan) -> Plan:
        return plan if plan.backdrop is None else plan.with_changes(backdrop=None)

    return Edit("Take picture away", apply)


def calibrate(a: Point, b: Point, length_mm: float) -> Edit:
    """Scale the picture so that two points on it, given where they lie on the plan, are that far apart.

    The first point stays where it is.
    """

    def apply(plan: Plan) -> Plan:
        old = _backdrop_of(plan)
        shown_mm = math.dist(a, b)
        if shown_mm <= 0 or not (math.isfinite(length_mm) and length_mm > 0):
            raise EditRefused(
                "The picture needs two points apart from each other, and a length above nothing."
            )
        growth = length_mm / shown_mm
        return _with(
            plan,
            msgspec.structs.replace(
                old,
                x_mm=rounded_mm(a[0] + (old.x_mm - a[0]) * growth),
                y_mm=rounded_mm(a[1] + (old.y_mm - a[1]) * growth),
                mm_per_px=old.mm_per_px * growth,
            ),
        )

    return Edit("Scale picture", apply)


def set_backdrop(**fields: Any) -> Edit:  # noqa: ANN401 - each field has its own type
    """Set fields of the picture under the plan: x_mm, y_mm, turn_deg, strength."""

    def apply(plan: Plan) -> Plan:
        return _with(plan, msgspec.structs.replace(_backdrop_of(plan), **fields))

    return Edit("Change picture", apply)


def shift_backdrop(dx_mm: float, dy_mm: float) -> Edit:
    """Move the picture; its scale and what is drawn over it stay."""

    def apply(plan: Plan) -> Plan:
        old = _backdrop_of(plan)
        x_mm, y_mm = rounded_mm(old.x_mm + dx_mm), rounded_mm(old.y_mm + dy_mm)
        return _with(plan, msgspec.structs.replace(old, x_mm=x_mm, y_mm=y_mm))

    return Edit("Move picture", apply)


def turn_backdrop(turn_deg: float) -> Edit:
    """Turn the picture to that angle, clockwise; its middle stays where it is."""

    def apply(plan: Plan) -> Plan:
        old = _backdrop_of(plan)
        if not math.isfinite(turn_deg):
            raise EditRefused("The turn of the picture must be a number of degrees.")
        new = msgspec.structs.replace(old, turn_deg=rounded_mm((turn_deg + 180.0) % 360.0 - 180.0))
        (ax, ay), (bx, by) = _middle(old), _middle(new)
        return _with(
            plan,
            msgspec.structs.replace(
                new, x_mm=rounded_mm(old.x_mm + ax - bx), y_mm=rounded_mm(old.y_mm + ay - by)
            ),
        )

    return Edit("Turn picture", apply)


def _middle(backdrop: Backdrop) -> Point:
    """Return where the middle of a picture lies on the plan."""
    angle = math.radians(backdrop.turn_deg)
    x = backdrop.width_px * backdrop.mm_per_px / 2
    y = backdrop.height_px * backdrop.mm_per_px / 2
    return (
        backdrop.x_mm + x * math.cos(angle) - y * math.sin(angle),
        backdrop.y_mm + x * math.sin(angle) + y * math.cos(angle),
    )


def _backdrop_of(plan: Plan) -> Backdrop:
    if plan.backdrop is None:
        raise EditRefused("There is no picture under the plan; choose one first.")
    return plan.backdrop


def _with(plan: Plan, backdrop: Backdrop) -> Plan:
    if backdrop == plan.backdrop:
        return plan
    refuse_if(backdrop_faults(backdrop))
    return plan.with_changes(backdrop=backdrop)
