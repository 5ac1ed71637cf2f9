"""Lay wires along ways that were found for them."""

from collections.abc import Mapping, Sequence

import msgspec

from wiring.edits.edit import Edit
from wiring.edits.tables import counted, rounded_mm, wire_of, with_records
from wiring.plan.names import WireId, WirewayId
from wiring.plan.places import Point
from wiring.plan.plan import Plan


def lay_along(ways: Mapping[WireId, tuple[Sequence[Point], Sequence[WirewayId]]]) -> Edit:
    """Give each wire those bends and those wireways; lengths the user has measured stay as they are."""

    def apply(plan: Plan) -> Plan:
        wires = [
            msgspec.structs.replace(
                wire_of(plan, wire_id),
                bends=tuple((rounded_mm(x), rounded_mm(y)) for x, y in bends),
                along=tuple(along),
            )
            for wire_id, (bends, along) in ways.items()
        ]
        return with_records(plan, wires=wires)

    return Edit(f"Route {counted(len(ways), 'wire')}", apply)
