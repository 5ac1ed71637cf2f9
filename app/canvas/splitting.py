"""Where wires can be split: at a new terminal strip, or over a strip, plug or block that stands near."""

import math
from collections.abc import Mapping, Sequence
from typing import NamedTuple

from app.canvas.gestures.snapping import on_grid
from wiring.catalogue.kind import Kind
from wiring.edits.edit import Edit
from wiring.edits.lead_over import free_joints, lead_over, split_at_new
from wiring.plan.names import WireId
from wiring.plan.places import Point
from wiring.plan.plan import Plan

MOST = 6  # standing parts that are offered
GRID_MM = 5.0
INTO = ("fuse", "resettable_fuse", "resistor", "switch")  # what is put into a wire when set down on it


class SplitWay(NamedTuple):
    """One way to split the wires."""

    words: str
    edit: Edit


def split_ways(
    plan: Plan, kinds: Mapping[str, Kind], wires: Sequence[WireId], at: Point
) -> tuple[SplitWay, ...]:
    """Return the ways, the new strip first, then what stands nearest."""
    ways = []
    strips = [k for k in kinds.values() if k.behaviour == "separate" and len(k.terminals) >= len(wires)]
    if strips:
        kind = min(strips, key=lambda k: len(k.terminals))
        edit = split_at_new(wires, kind, *on_grid(at, GRID_MM), kinds=kinds)
        ways.append(SplitWay("a new terminal strip here", edit))
    ends = {ref.part for i in wires for ref in (plan.wires[i].start, plan.wires[i].end)}
    near = sorted(
        (p for p in plan.parts.values() if p.id not in ends),
        key=lambda p: round(math.dist((p.x_mm, p.y_mm), at), 3),
    )
    for part in near:
        free = len(free_joints(plan, kinds, part.id))
        if free >= len(wires) and len(ways) <= MOST:
            words = f"-{part.designation}  {part.label}".rstrip()
            ways.append(SplitWay(words, lead_over(wires, part.id, kinds=kinds)))
    return tuple(ways)


def goes_into_wires(kind: Kind) -> bool:
    """Whether a part of that kind, set down on a wire, is meant to interrupt it."""
    return kind.behaviour in INTO and len(kind.terminals) == 2
