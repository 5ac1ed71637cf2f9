"""Batteries of the plan that work as one: side by side on the same two nets, or one behind the other."""

from collections.abc import Mapping

from wiring.catalogue.kind import Kind
from wiring.plan.names import PartId, TerminalRef
from wiring.plan.plan import Plan
from wiring.plan.positions import Positions
from wiring.studies.battery_part import BatteryPart, battery_part
from wiring.studies.joints import STIFF, Joints, joints_of

PLUS, MINUS = "+", "-"


def with_partners(
    plan: Plan, kinds: Mapping[str, Kind], positions: Positions, battery: BatteryPart
) -> BatteryPart:
    """Return a battery with those it works together with, through wires, closed contacts and fuses.

    Batteries in line count only where nothing else is taken off between them.
    """
    others = [
        p.id
        for p in plan.parts.values()
        if p.id != battery.id and p.kind in kinds and kinds[p.kind].behaviour == "battery"
    ]
    if not others:
        return battery
    joints = joints_of(plan, kinds, positions)
    beside = _beside(joints, battery.id, others)
    if beside:
        return battery._replace(others=_known(plan, kinds, beside), side_by_side=True)
    return battery._replace(others=_known(plan, kinds, _in_line(joints, battery.id, others)))


def _known(plan: Plan, kinds: Mapping[str, Kind], ids: list[PartId]) -> tuple[BatteryPart, ...]:
    found = (battery_part(plan, kinds, part_id) for part_id in ids)
    return tuple(part for part in found if part is not None)


def _beside(joints: Joints, battery: PartId, others: list[PartId]) -> list[PartId]:
    plus = joints.reach([TerminalRef(battery, PLUS)], STIFF).terminals
    minus = joints.reach([TerminalRef(battery, MINUS)], STIFF).terminals
    return [o for o in others if TerminalRef(o, PLUS) in plus and TerminalRef(o, MINUS) in minus]


def _in_line(joints: Joints, battery: PartId, others: list[PartId]) -> list[PartId]:
    found: list[PartId] = []
    for near, far in ((PLUS, MINUS), (MINUS, PLUS)):
        last: PartId | None = battery
        while last is not None:
            net = joints.reach([TerminalRef(last, near)], STIFF).terminals
            next_ones = [o for o in others if o not in found and TerminalRef(o, far) in net]
            last = next_ones[0] if len(next_ones) == 1 and not _tapped(joints, net) else None
            if last is not None:
                found.append(last)
    return found


def _tapped(joints: Joints, net: frozenset[TerminalRef]) -> bool:
    """Whether a load or a contact that can close hangs on a net."""
    return any(not link & STIFF for ref in net for _, link, _ in joints.edges.get(ref, ()))
