"""Bring the wires of a panel out as one harness: gathered behind its face, through a plug, to the layout."""

from collections.abc import Mapping, Sequence
from itertools import count
from typing import NamedTuple

import msgspec

from wiring.catalogue.kind import Kind
from wiring.edits.copies import FreeNames
from wiring.edits.edit import Edit, EditRefused
from wiring.edits.harness_outer import LANE_CLEAR_MM, LANE_MM, outer_bends
from wiring.edits.harness_way import Frame, frame_of, gathered, spot_for
from wiring.edits.laying import Laying, body_box
from wiring.edits.panels import panel_of
from wiring.edits.tables import known_kinds, rounded_mm, with_records
from wiring.edits.wireways import add_wireway
from wiring.plan.harness import harness_of, leaving, way_numbers
from wiring.plan.names import TerminalRef
from wiring.plan.panel import Panel
from wiring.plan.panel_places import of_panel
from wiring.plan.part import Part
from wiring.plan.places import Point, terminal_at
from wiring.plan.plan import Plan
from wiring.plan.wire import Wire
from wiring.standards.conductors import insulated_diameter_mm

FILL_OF_MANY = 0.40  # share of a sleeve that wires may fill, as of a hole they are pulled through
LEAST_SLEEVE_MM, SLEEVE_STEP_MM = 10.0, 2.0


class Slot(NamedTuple):
    """A free way of a plug."""

    plug: Part
    number: str


def bring_out(panel_id: str, *, kinds: Mapping[str, Kind] | None = None) -> Edit:
    """Lead every wire that leaves a panel through a plug: free ways first, then plugs of enough ways.

    Colours and sizes stay. The piece to the layout keeps its label; the piece from the panel gets a new one
    and runs in a wireway of its own, which makes the harness one bundle.
    """

    def apply(plan: Plan) -> Plan:
        known = known_kinds(kinds)
        panel = panel_of(plan, panel_id)
        wires = leaving(plan, known, panel)
        if not wires:
            raise EditRefused(
                f"No wire leads from the panel {panel.name} straight to the layout; wire its parts first."
            )
        inside = frozenset(p.id for p in of_panel(plan, panel))
        laying = Laying(plan, known, inside)
        frame = frame_of(plan, panel, wires, inside, known)
        wires = tuple(sorted(wires, key=lambda w: frame.along(laying.at(_near(w, inside)))))
        slots = _free(plan, known, panel)
        lacking = len(wires) - len(slots)
        if lacking > 0:
            slots += _new_plugs(laying, panel, frame, wires, inside, lacking)
        grown = with_records(plan, laying.parts, kinds=known, next_number=_after(plan, laying.parts))
        for group in _by_plug(list(zip(wires, slots, strict=False))):
            grown = _lead_through(grown, panel, frame, group, inside, known)
        return grown

    return Edit("Bring out as a harness", apply)


def _near(wire: Wire, inside: frozenset[str]) -> TerminalRef:
    return wire.start if wire.start.part in inside else wire.end


def _free(plan: Plan, kinds: Mapping[str, Kind], panel: Panel) -> list[Slot]:
    harness = harness_of(plan, kinds, panel)
    if harness is None:
        return []
    return [Slot(w.plug, w.number) for w in harness.ways if w.inner is None and w.outer is None]


def _new_plugs(
    laying: Laying,
    panel: Panel,
    frame: Frame,
    wires: Sequence[Wire],
    inside: frozenset[str],
    lacking: int,
) -> list[Slot]:
    """Set down the smallest plug of enough ways, or as many of the largest as it takes."""
    plugs = sorted(
        (k for k in laying.kinds.values() if k.behaviour == "pairs" and way_numbers(k)),
        key=lambda k: (len(way_numbers(k)), k.key),
    )
    if not plugs:
        raise EditRefused("The catalogue has no plug to bring the wires out with.")
    like = laying.plan.parts[_near(wires[0], inside).part]
    like = msgspec.structs.replace(like, panel=panel.id, scene="")
    spots = [frame.along(laying.at(_near(w, inside))) for w in wires]
    slots: list[Slot] = []
    while lacking > 0:
        kind = next((k for k in plugs if len(way_numbers(k)) >= lacking), plugs[-1])
        at = spot_for(laying, frame, kind, spots)
        plug = laying.part(kind, at, frame.turn_deg, like, {})
        named = msgspec.structs.replace(plug, label=f"{panel.name} plug")
        laying.parts[-1] = named
        slots += [Slot(named, number) for number in way_numbers(kind)]
        lacking -= len(way_numbers(kind))
    return slots


def _after(plan: Plan, parts: Sequence[Part]) -> int:
    return plan.next_number + len(parts)


def _by_plug(pairs: list[tuple[Wire, Slot]]) -> list[list[tuple[Wire, Slot]]]:
    groups: dict[str, list[tuple[Wire, Slot]]] = {}
    for wire, slot in pairs:
        groups.setdefault(slot.plug.id, []).append((wire, slot))
    return list(groups.values())


def _lead_through(
    plan: Plan,
    panel: Panel,
    frame: Frame,
    group: list[tuple[Wire, Slot]],
    inside: frozenset[str],
    kinds: Mapping[str, Kind],
) -> Plan:
    """Cut the wires of one plug in two: panel to way a, way b to the layout."""
    plug = group[0][1].plug
    kind = kinds[plug.kind]
    panel_parts = [p for p in of_panel(plan, panel) if p.id != plug.id and p.kind in kinds]
    ends = [_near(wire, inside) for wire, _ in group]
    starts = [terminal_at(plan.parts[r.part], kinds[plan.parts[r.part].kind], r.terminal) for r in ends]
    others = [terminal_at(p, kinds[p.kind], t.name) for p in panel_parts for t in kinds[p.kind].terminals]
    bodies = [body_box(p, kinds[p.kind]) for p in panel_parts]
    course = gathered(frame, starts, (plug.x_mm, plug.y_mm), others, bodies)
    plan = add_wireway(
        course.wireway, _name(plan, panel), hole_mm=_sleeve_mm([w for w, _ in group]), drop_mm=0.0
    ).apply(plan)
    way_id = tuple(plan.wireways)[-1]
    number, labels = count(plan.next_number), FreeNames(w.label for w in plan.wires.values())
    made: list[Wire] = []
    laying = Laying(plan, kinds, [plug.id])
    lanes = count()
    for (wire, slot), end, bends in zip(group, ends, course.bends, strict=True):
        outside = TerminalRef(plug.id, f"{slot.number}b")
        at = terminal_at(plug, kind, outside.terminal)
        lane_mm = frame.out(at) + LANE_CLEAR_MM + LANE_MM * next(lanes)
        outer = outer_bends(frame, wire.bends if wire.start == end else wire.bends[::-1], at, lane_mm)
        if outer is None:
            outer = laying.way(at, laying.at(wire.end if wire.start == end else wire.start))
        made += [
            Wire(
                id=f"w{next(number)}",
                label=labels.take("W"),
                start=end,
                end=TerminalRef(plug.id, f"{slot.number}a"),
                size=wire.size,
                colour=wire.colour,
                solid=wire.solid,
                bends=_tidy(bends),
                along=(way_id,),
            ),
            _outer(wire, end, outside, outer),
        ]
    return with_records(plan, wires=made, kinds=kinds, next_number=next(number))


def _outer(wire: Wire, end: TerminalRef, to: TerminalRef, bends: Sequence[Point]) -> Wire:
    """Return a wire with its end on the panel laid on the plug instead; what was measured is void."""
    leads_out = wire.start == end
    return msgspec.structs.replace(
        wire,
        start=to if leads_out else wire.start,
        end=wire.end if leads_out else to,
        bends=_tidy(bends if leads_out else bends[::-1]),
        length_m=None,
        built=False,
    )


def _sleeve_mm(wires: Sequence[Wire]) -> float:
    """Return the inner width of a sleeve that leaves the wires room, in whole steps."""
    squares = sum(insulated_diameter_mm(w.size, solid=w.solid) ** 2 for w in wires) / FILL_OF_MANY
    steps = -(-(squares**0.5) // SLEEVE_STEP_MM)
    return float(max(steps * SLEEVE_STEP_MM, LEAST_SLEEVE_MM))


def _name(plan: Plan, panel: Panel) -> str:
    taken = {way.name for way in plan.wireways.values()}
    first = f"{panel.name} harness"[:100]
    return next(n for n in (first, *(f"{first} {i}" for i in range(2, 1000))) if n not in taken)


def _tidy(bends: Sequence[Point]) -> tuple[Point, ...]:
    return tuple((rounded_mm(x), rounded_mm(y)) for x, y in bends)
