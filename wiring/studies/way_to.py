"""What leads from a supply to one part or wire and back: the wires and joints to look at one by one."""

from collections.abc import Iterable, Mapping
from typing import NamedTuple

from wiring.catalogue.kind import Kind
from wiring.plan.names import PartId, TerminalRef, WireId
from wiring.plan.plan import Plan
from wiring.plan.positions import in_use
from wiring.studies.best_ways import ways_from
from wiring.studies.joints import Link, ends
from wiring.studies.kept_joints import kept_joints
from wiring.studies.roles import LOADS, SOURCE_ENDS
from wiring.studies.ways import Ways

# However the switches stand: a lamp that is dark is traced as one that is lit.
_THROUGH = (
    Link.WIRE | Link.CLOSED | Link.OPEN | Link.MOMENTARY | Link.FUSE | Link.RESISTOR | Link.DIODE | Link.LOAD
)


def way_to(plan: Plan, kinds: Mapping[str, Kind], one: str) -> frozenset[str]:
    """Return the parts and wires of the way to a part or wire from its supply, and of the way back.

    Of a load both are told; of a switch, fuse or wire the one on which no load lies. Nothing when no supply
    reaches it.
    """
    joints = kept_joints(plan, kinds, in_use(plan, kinds))
    costs = dict.fromkeys(plan.wires, 1.0)
    # From the part outwards: it has few terminals with wires, and a large layout many supplies.
    refs = [ref for ref in _terminals(plan, kinds, one) if ref in joints.edges]
    outwards = [(ref, ways_from(joints, ref, _THROUGH, costs)) for ref in refs]
    found: list[tuple[int, int, float, PartId, list[_Leg]]] = []
    for part in plan.parts.values():
        kind = kinds.get(part.kind)
        if kind is not None and kind.behaviour in SOURCE_ENDS and part.id != one:
            both = [_nearest(outwards, end) for end in ends(part.id, SOURCE_ENDS[kind.behaviour])]
            legs = [leg for leg in both if leg is not None]
            loads, cost = sum(leg.loads for leg in legs), sum(leg.cost for leg in legs)
            found.append((-len(legs), loads, cost, part.id, legs))
    *_, source, legs = min(found, key=lambda each: each[:4], default=(0, 0, 0.0, "", []))
    if not legs:
        return frozenset()
    if not _is_load(plan, kinds, one) and any(leg.loads == 0 for leg in legs):
        legs = [leg for leg in legs if leg.loads == 0]
    wires = {wire for leg in legs for wire in leg.ways.wires_to(leg.pole)}
    wires |= {one} & plan.wires.keys()
    return frozenset({source, one, *wires, *_at(plan, wires)})


class _Leg(NamedTuple):
    loads: int  # passed between the part and the pole
    cost: float
    pole: TerminalRef
    ways: Ways


def _nearest(outwards: Iterable[tuple[TerminalRef, Ways]], pole: TerminalRef) -> _Leg | None:
    """Return the best way from any terminal of the part to one pole of a supply."""
    reached = [(there, ref, ways) for ref, ways in outwards if (there := ways.reached(pole)) is not None]
    if not reached:
        return None
    (loads, cost), _, best = min(reached, key=lambda each: each[:2])
    return _Leg(loads, cost, pole, best)


def _terminals(plan: Plan, kinds: Mapping[str, Kind], one: str) -> tuple[TerminalRef, ...]:
    wire = plan.wires.get(one)
    if wire is not None:
        return wire.start, wire.end
    part = plan.parts.get(one)
    kind = kinds.get(part.kind) if part is not None else None
    return tuple(TerminalRef(one, t.name) for t in kind.terminals) if kind is not None else ()


def _is_load(plan: Plan, kinds: Mapping[str, Kind], one: str) -> bool:
    part = plan.parts.get(one)
    return part is not None and part.kind in kinds and kinds[part.kind].behaviour in LOADS


def _at(plan: Plan, wires: Iterable[WireId]) -> set[PartId]:
    return {ref.part for i in wires for ref in (plan.wires[i].start, plan.wires[i].end)}
