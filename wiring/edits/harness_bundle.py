"""The bundle of wires that leaves a panel through a plug, and how the plug stands to the panel."""

from collections import Counter
from collections.abc import Iterable, Mapping
from typing import NamedTuple

import msgspec

from wiring.catalogue.kind import Kind
from wiring.edits.harness_way import FAN_MM, TURNS, Frame, Side
from wiring.edits.tables import with_records
from wiring.plan.names import PanelId, PartId, WirewayId
from wiring.plan.panel import Panel
from wiring.plan.panel_places import of_panel, plugs_of
from wiring.plan.part import Part
from wiring.plan.plan import Plan
from wiring.plan.wire import Wire


class Bundle(NamedTuple):
    """The wires that run from a panel's parts to one plug in one wireway, and what else is on the plug."""

    panel: Panel
    plug: Part
    way: WirewayId
    inner: tuple[Wire, ...]
    outer: tuple[Wire, ...]


def panels_of(plan: Plan, parts: Iterable[PartId]) -> tuple[PanelId, ...]:
    """Return the panels that any of these parts sits on."""
    if not plan.panels:
        return ()
    panels = (plan.parts[i].panel for i in parts if i in plan.parts)
    return tuple(dict.fromkeys(i for i in panels if i in plan.panels))


def bundles_of(plan: Plan, kinds: Mapping[str, Kind], panels: Iterable[PanelId]) -> list[Bundle]:
    """Return the bundles of those panels that have a wireway to themselves."""
    found = []
    for panel in (plan.panels[i] for i in panels):
        plugs = {p.id: p for p in plugs_of(plan, kinds, panel.id)}
        inside = {p.id for p in of_panel(plan, panel)} - plugs.keys()
        inner: dict[tuple[PartId, WirewayId], list[Wire]] = {}
        outer: dict[PartId, list[Wire]] = {}
        led: Counter[WirewayId] = Counter()
        for wire in plan.wires.values() if plugs else ():
            a, b = wire.start.part, wire.end.part
            led.update(wire.along)
            if b in plugs and a in inside and len(wire.along) == 1:
                inner.setdefault((b, wire.along[0]), []).append(wire)
            elif (a in plugs) != (b in plugs) and not {a, b} & inside:
                outer.setdefault(a if a in plugs else b, []).append(wire)
        for (plug, way), wires in inner.items():
            if led[way] == len(wires) and way in plan.wireways:  # and no other wire runs there
                found.append(Bundle(panel, plugs[plug], way, tuple(wires), tuple(outer.get(plug, ()))))
    return found


def frame_of_plug(panel: Panel, plug: Part) -> Frame | None:
    """Return the panel as seen from the edge its plug stands beyond, the one it is turned to if it can be."""
    at = plug.x_mm, plug.y_mm
    sides: list[Side] = [s for s in TURNS if Frame(panel, s).out(at) > FAN_MM]
    sides.sort(key=lambda s: (TURNS[s] != plug.turn_deg, -Frame(panel, s).out(at)))
    return Frame(panel, sides[0]) if sides else None


def kept_at_its_panel(new: Plan, bundle: Bundle) -> Plan:
    """Return the plan with a plug that wires of its panel end on belonging to it wherever it was put.

    Put beyond another edge it is turned to face the panel, unless it was turned by hand before.
    """
    plug, panel = new.parts.get(bundle.plug.id), new.panels.get(bundle.panel.id)
    if plug is None or panel is None:
        return new
    there = msgspec.structs.replace(plug, panel=panel.id, turn_deg=_facing(bundle, panel, plug))
    return with_records(new, [there]) if there != plug else new


def _facing(bundle: Bundle, panel: Panel, plug: Part) -> float:
    old = bundle.plug
    before, now = frame_of_plug(bundle.panel, old), frame_of_plug(panel, plug)
    faced = before is None or before.turn_deg == old.turn_deg
    as_it_was = plug.turn_deg == old.turn_deg and (plug.x_mm, plug.y_mm) != (old.x_mm, old.y_mm)
    return now.turn_deg if now is not None and faced and as_it_was else plug.turn_deg
