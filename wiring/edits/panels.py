"""Make, change and take away fascia panels."""

from collections.abc import Iterable, Mapping
from types import MappingProxyType
from typing import Any

import msgspec

from wiring.catalogue.kind import Kind
from wiring.edits.edit import Edit
from wiring.edits.harness_follow import with_harness_followed
from wiring.edits.scenes import with_followers
from wiring.edits.set_value import set_field
from wiring.edits.tables import refuse_if, rounded_mm, still_in, with_records, without
from wiring.plan.panel import Panel
from wiring.plan.plan import Plan
from wiring.plan.soundness import area_faults
from wiring.plan.wire import Wire

FIELDS = ("name", "x_mm", "y_mm", "width_mm", "height_mm", "spacing_mm", "room_mm")


def add_panel(name: str, x_mm: float, y_mm: float, width_mm: float, height_mm: float) -> Edit:
    """Make a panel face; parts that lie on it sit on it from then on."""

    def apply(plan: Plan) -> Plan:
        panel = Panel(
            id=f"n{plan.next_number}",
            name=name.strip(),
            x_mm=rounded_mm(x_mm),
            y_mm=rounded_mm(y_mm),
            width_mm=rounded_mm(width_mm),
            height_mm=rounded_mm(height_mm),
        )
        return with_followers(plan, _with_panel(plan, panel, plan.next_number + 1))

    return Edit("Add panel", apply)


def change_panel(
    panel_id: str,
    *,
    kinds: Mapping[str, Kind] | None = None,
    **fields: Any,  # noqa: ANN401 - each field has its own type
) -> Edit:
    """Set fields of a panel, see FIELDS; its parts and the wires between them move along with it."""
    unknown = fields.keys() - set(FIELDS)
    if unknown:
        raise TypeError(f"a panel has no field {', '.join(sorted(unknown))} to set")
    given = {k: rounded_mm(float(v)) if k.endswith("_mm") else v for k, v in fields.items()}

    def apply(plan: Plan) -> Plan:
        old = panel_of(plan, panel_id)
        new = msgspec.structs.replace(old, **given)
        if new == old:
            return plan
        grown = _with_panel(plan, new, plan.next_number)
        dx_mm, dy_mm = new.x_mm - old.x_mm, new.y_mm - old.y_mm
        shifted = [
            msgspec.structs.replace(p, x_mm=rounded_mm(p.x_mm + dx_mm), y_mm=rounded_mm(p.y_mm + dy_mm))
            for p in plan.parts.values()
            if p.panel == panel_id
        ]
        parts = {p.id for p in shifted}
        grown = _with_ways_along(grown, parts, dx_mm, dy_mm)
        grown = with_records(grown, shifted, _wires_along(plan, parts, dx_mm, dy_mm))
        return with_harness_followed(plan, grown, parts, kinds)

    return Edit("Change panel", apply)


def remove_panel(panel_id: str) -> Edit:
    """Take a panel away; its parts stay where they are."""

    def apply(plan: Plan) -> Plan:
        panel_of(plan, panel_id)
        return with_followers(plan, plan.with_changes(panels=without(plan.panels, [panel_id])))

    return Edit("Remove panel", apply)


def put_on_panel(ids: Iterable[str], panel_id: str) -> Edit:
    """Let parts sit on a panel wherever they are drawn; "" for none."""
    return Edit("Put on panel", set_field(ids, panel=panel_id).apply)


def panel_of(plan: Plan, panel_id: str) -> Panel:
    """Return a panel of the plan; EditRefused when it is gone."""
    return still_in(plan.panels, panel_id, "panel")


def _wires_along(plan: Plan, parts: set[str], dx_mm: float, dy_mm: float) -> list[Wire]:
    """Return the wires between those parts with their bends shifted."""
    return [
        msgspec.structs.replace(
            w, bends=tuple((rounded_mm(x + dx_mm), rounded_mm(y + dy_mm)) for x, y in w.bends)
        )
        for w in plan.wires.values()
        if w.bends and (dx_mm or dy_mm) and w.start.part in parts and w.end.part in parts
    ]


def _with_ways_along(plan: Plan, parts: set[str], dx_mm: float, dy_mm: float) -> Plan:
    """Return the plan with the wireways shifted that hold nothing but wires between those parts."""
    held: dict[str, list[bool]] = {}
    for wire in plan.wires.values() if dx_mm or dy_mm else ():
        for way_id in wire.along:
            held.setdefault(way_id, []).append(wire.start.part in parts and wire.end.part in parts)
    ways = dict(plan.wireways)
    for way_id in (i for i, inside in held.items() if all(inside) and i in ways):
        points = tuple((rounded_mm(x + dx_mm), rounded_mm(y + dy_mm)) for x, y in ways[way_id].points)
        ways[way_id] = msgspec.structs.replace(ways[way_id], points=points)
    return plan if ways == plan.wireways else plan.with_changes(wireways=MappingProxyType(ways))


def _with_panel(plan: Plan, panel: Panel, next_number: int) -> Plan:
    refuse_if(area_faults(panel))
    panels = MappingProxyType({**dict(plan.panels), panel.id: panel})
    return plan.with_changes(panels=panels, next_number=next_number)
