"""Add, shift and take away the corners of a wire."""

import msgspec

from wiring.edits.edit import Edit, EditRefused
from wiring.edits.tables import rounded_mm, wire_of, with_records
from wiring.plan.places import Point
from wiring.plan.plan import Plan
from wiring.plan.wire import Wire

Bends = tuple[Point, ...]


def add_bend(wire_id: str, index: int, x_mm: float, y_mm: float) -> Edit:
    """Put a corner before the one that has that index now; an index past the last puts it at the end."""

    def apply(plan: Plan) -> Plan:
        wire = wire_of(plan, wire_id)
        at = min(max(index, 0), len(wire.bends))
        return _with_bends(plan, wire, (*wire.bends[:at], _tidy(x_mm, y_mm), *wire.bends[at:]))

    return Edit("Add bend", apply)


def move_bend(wire_id: str, index: int, x_mm: float, y_mm: float) -> Edit:
    """Put the corner of that index somewhere else."""

    def apply(plan: Plan) -> Plan:
        wire = _wire_with_bend(plan, wire_id, index)
        return _with_bends(plan, wire, (*wire.bends[:index], _tidy(x_mm, y_mm), *wire.bends[index + 1 :]))

    return Edit("Move bend", apply)


def remove_bend(wire_id: str, index: int) -> Edit:
    """Take the corner of that index away."""

    def apply(plan: Plan) -> Plan:
        wire = _wire_with_bend(plan, wire_id, index)
        return _with_bends(plan, wire, (*wire.bends[:index], *wire.bends[index + 1 :]))

    return Edit("Remove bend", apply)


def lay_bends(wire_id: str, bends: Bends) -> Edit:
    """Give a wire these corners in place of those it has."""

    def apply(plan: Plan) -> Plan:
        return _with_bends(plan, wire_of(plan, wire_id), tuple(_tidy(*bend) for bend in bends))

    return Edit("Move wire", apply)


def straighten(wire_id: str) -> Edit:
    """Take all corners of a wire away."""

    def apply(plan: Plan) -> Plan:
        return _with_bends(plan, wire_of(plan, wire_id), ())

    return Edit("Straighten wire", apply)


def _tidy(x_mm: float, y_mm: float) -> Point:
    return rounded_mm(x_mm), rounded_mm(y_mm)


def _wire_with_bend(plan: Plan, wire_id: str, index: int) -> Wire:
    wire = wire_of(plan, wire_id)
    if not 0 <= index < len(wire.bends):
        raise EditRefused(f"Wire -{wire.label} has no such bend any more.")
    return wire


def _with_bends(plan: Plan, wire: Wire, bends: Bends) -> Plan:
    return with_records(plan, wires=[msgspec.structs.replace(wire, bends=bends)])
