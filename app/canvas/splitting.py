"""Where wires can be split: at a new terminal strip, or over a strip, plug or block that stands near."""

import math
from collections.abc import Iterator, Mapping, Sequence
from typing import NamedTuple

from app.canvas.gestures.snapping import on_grid
from app.canvas.rerouting import route
from wiring.catalogue.kind import Kind
from wiring.edits.edit import Edit
from wiring.edits.joined import followed
from wiring.edits.lay_anew import lay_anew
from wiring.edits.lead_over import free_joints, lead_over, split_at_new
from wiring.plan.lengths import wire_path
from wiring.plan.names import WireId
from wiring.plan.places import Point
from wiring.plan.plan import Plan

MOST = 6  # standing parts that are offered
GRID_MM = 5.0
ASLANT_MM = 15.0  # a longer stretch at an angle was not drawn by anybody: the strip stands off the wire
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
        ways.append(SplitWay("a new terminal strip here", _tidied(edit, plan, kinds)))
    ends = {ref.part for i in wires for ref in (plan.wires[i].start, plan.wires[i].end)}
    near = sorted(
        (p for p in plan.parts.values() if p.id not in ends),
        key=lambda p: round(math.dist((p.x_mm, p.y_mm), at), 3),
    )
    for part in near:
        free = len(free_joints(plan, kinds, part.id))
        if free >= len(wires) and len(ways) <= MOST:
            words = f"-{part.designation}  {part.label}".rstrip()
            ways.append(SplitWay(words, _tidied(lead_over(wires, part.id, kinds=kinds), plan, kinds)))
    return tuple(ways)


def _tidied(edit: Edit, before: Plan, kinds: Mapping[str, Kind]) -> Edit:
    """Return a split whose pieces run square where they would run at an angle, and along wireways again."""
    in_ways = any(wire.along for wire in before.wires.values())

    def squared(old: Plan, new: Plan) -> Edit | None:
        # The old wire ends at the strip now, and the new one starts there.
        ends = {i: wire_path(new, kinds, new.wires[i])[-2:] for i in _pieces(old, new) if i in old.wires}
        starts = {i: wire_path(new, kinds, new.wires[i])[:2] for i in _pieces(old, new) if i not in ends}
        aslant = [i for i, stretch in (ends | starts).items() if _is_aslant(*stretch)]
        return lay_anew(aslant, kinds=kinds) if aslant else None

    def routed(old: Plan, new: Plan) -> Edit | None:
        pieces = list(_pieces(old, new))
        return route(new, kinds, pieces) if in_ways and pieces else None

    return followed(followed(edit, squared), routed)


def _pieces(old: Plan, new: Plan) -> Iterator[WireId]:
    return (i for i, wire in new.wires.items() if old.wires.get(i) is not wire)


def _is_aslant(a: Point, b: Point) -> bool:
    return min(abs(a[0] - b[0]), abs(a[1] - b[1])) > 1.0 and math.dist(a, b) > ASLANT_MM


def goes_into_wires(kind: Kind) -> bool:
    """Whether a part of that kind, set down on a wire, is meant to interrupt it."""
    return kind.behaviour in INTO and len(kind.terminals) == 2
