"""Where wires can be split: at a new terminal strip, or over a strip, plug or block that stands near."""

import math
from collections.abc import Iterator, Mapping, Sequence
from typing import NamedTuple

from app.canvas.gestures.snapping import on_grid
from app.canvas.rerouting import route
from wiring.catalogue.kind import Kind
from wiring.edits.bends import lay_bends
from wiring.edits.edit import Edit
from wiring.edits.joined import followed, in_turn
from wiring.edits.lay_anew import lay_anew
from wiring.edits.lead_over import free_joints, lead_over, split_at_new
from wiring.plan.lengths import wire_path
from wiring.plan.names import WireId
from wiring.plan.places import Point
from wiring.plan.plan import Plan
from wiring.plan.square_corner import square_corner

MOST = 6  # standing parts that are offered
GRID_MM = 5.0
ASLANT_MM = 15.0  # a longer stretch at an angle was not drawn by anybody: the strip stands off the wire
BESIDE_MM = 30.0  # a strip set down on a wire has its terminals no farther beside it
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
    """Return a split whose pieces run square where they would run at an angle, and along wireways again.

    Beside the wire its corner goes along, so that the way that was drawn stays; farther off it is laid anew.
    """
    in_ways = any(wire.along for wire in before.wires.values())

    def squared(old: Plan, new: Plan) -> Edit | None:
        # The old wire ends at the strip now, and the new one starts there.
        ends = {i: wire_path(new, kinds, new.wires[i])[-2:] for i in _pieces(old, new) if i in old.wires}
        starts = {i: wire_path(new, kinds, new.wires[i])[:2] for i in _pieces(old, new) if i not in ends}
        aslant = [i for i, stretch in (ends | starts).items() if _is_aslant(*stretch)]
        return lay_anew(aslant, kinds=kinds) if aslant else None

    def led_along(old: Plan, new: Plan) -> Edit | None:
        drawn = {i: _with_end_square(new, kinds, i, at_end=i in old.wires) for i in _pieces(old, new)}
        steps = [lay_bends(i, bends) for i, bends in drawn.items() if bends != new.wires[i].bends]
        return in_turn(edit.label, steps) if steps else None

    def routed(old: Plan, new: Plan) -> Edit | None:
        pieces = list(_pieces(old, new))
        return route(new, kinds, pieces) if in_ways and pieces else None

    return followed(followed(followed(edit, led_along), squared), routed)


def _pieces(old: Plan, new: Plan) -> Iterator[WireId]:
    return (i for i, wire in new.wires.items() if old.wires.get(i) is not wire)


def _with_end_square(
    plan: Plan, kinds: Mapping[str, Kind], wire_id: WireId, *, at_end: bool
) -> tuple[Point, ...]:
    """Return a piece's bends with the one next to the strip shifted level with its terminal, if little."""
    bends = plan.wires[wire_id].bends
    path = wire_path(plan, kinds, plan.wires[wire_id])
    now, corner, *rest = path[::-1] if at_end else path
    off_x, off_y = abs(now[0] - corner[0]), abs(now[1] - corner[1])
    if not rest or min(off_x, off_y) > BESIDE_MM:
        return bends
    was = (corner[0], now[1]) if off_x < off_y else (now[0], corner[1])
    goal = square_corner(was, now, corner, rest[0])
    return (*bends[:-1], goal) if at_end else (goal, *bends[1:])


def _is_aslant(a: Point, b: Point) -> bool:
    return min(abs(a[0] - b[0]), abs(a[1] - b[1])) > 1.0 and math.dist(a, b) > ASLANT_MM


def goes_into_wires(kind: Kind) -> bool:
    """Whether a part of that kind, set down on a wire, is meant to interrupt it."""
    return kind.behaviour in INTO and len(kind.terminals) == 2
