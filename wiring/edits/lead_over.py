"""Split wires at a terminal strip, plug or block: each is led over a joint of its own."""

import math
from collections.abc import Iterable, Mapping

from wiring.catalogue.kind import Kind
from wiring.edits.edit import Edit, EditRefused
from wiring.edits.groups import taken_in
from wiring.edits.place_part import place
from wiring.edits.split_wire import split_wire
from wiring.edits.tables import counted, known_kinds, part_of, wire_of
from wiring.plan.names import PartId, TerminalRef, WireId
from wiring.plan.places import Point, terminal_at
from wiring.plan.plan import Plan

Joint = tuple[str, str]  # terminal for the start's piece, terminal for the end's; the same on a strip
JOINTS = ("separate", "pairs", "bus")


def lead_over(
    wire_ids: Iterable[WireId], part_id: PartId, *, kinds: Mapping[str, Kind] | None = None
) -> Edit:
    """Lead each of those wires over a free joint of a standing part; EditRefused when it has too few."""
    wanted = tuple(dict.fromkeys(wire_ids))

    def apply(plan: Plan) -> Plan:
        known = known_kinds(kinds)
        part = part_of(plan, part_id)
        wires = [wire_of(plan, i) for i in wanted]
        joints = free_joints(plan, known, part_id)
        if len(joints) < len(wires):
            raise EditRefused(
                f"-{part.designation} has {len(joints) or 'no'} free joints left, and "
                f"{counted(len(wires), 'wire')} would go over it; choose another or a larger one."
            )
        for wire, joint in zip(wires, joints, strict=False):
            near, far = _facing(plan, known, part_id, joint, _start(plan, known, wire.start))
            plan = split_wire(wire.id, part_id, near, far, kinds=known).apply(plan)
        return plan

    return Edit(f"Split {counted(len(wanted), 'wire')}", apply)


def split_at_new(
    wire_ids: Iterable[WireId],
    kind: Kind,
    x_mm: float,
    y_mm: float,
    *,
    kinds: Mapping[str, Kind] | None = None,
) -> Edit:
    """Put a new strip or plug down and lead those wires over it, in one step."""
    wanted = tuple(dict.fromkeys(wire_ids))

    def apply(plan: Plan) -> Plan:
        known = {**known_kinds(kinds), kind.key: kind}
        new = f"p{plan.next_number}"
        placed = taken_in(place(kind, x_mm, y_mm).apply(plan), new, wanted)
        return lead_over(wanted, new, kinds=known).apply(placed)

    return Edit(f"Split {counted(len(wanted), 'wire')}", apply)


def free_joints(plan: Plan, kinds: Mapping[str, Kind], part_id: PartId) -> tuple[Joint, ...]:
    """Return the joints of a strip or plug that carry no wire yet; one of a block, where all is one."""
    kind = kinds.get(plan.parts[part_id].kind)
    if kind is None or kind.behaviour not in JOINTS:
        return ()
    taken = {r.terminal for w in plan.wires.values() for r in (w.start, w.end) if r.part == part_id}
    free = [t.name for t in kind.terminals if t.name not in taken]
    if kind.behaviour == "separate":
        return tuple((name, name) for name in free)
    if kind.behaviour == "pairs":
        return tuple((n, f"{n[:-1]}b") for n in free if n.endswith("a") and f"{n[:-1]}b" in free)
    return ((free[0], free[1]),) if len(free) > 1 else ()


def _facing(plan: Plan, kinds: Mapping[str, Kind], part_id: PartId, joint: Joint, start: Point) -> Joint:
    """Return a joint with the side first that lies nearer to where the wire comes from."""
    part = plan.parts[part_id]
    kind = kinds[part.kind]
    near, far = sorted(joint, key=lambda name: round(math.dist(terminal_at(part, kind, name), start), 3))
    return near, far


def _start(plan: Plan, kinds: Mapping[str, Kind], ref: TerminalRef) -> Point:
    part = plan.parts[ref.part]
    kind = kinds.get(part.kind)
    return terminal_at(part, kind, ref.terminal) if kind is not None else (part.x_mm, part.y_mm)
