"""Bring parts into line: by an edge of their bodies, or by their middles."""

from collections.abc import Iterable, Mapping
from typing import Literal

from wiring.catalogue.kind import Kind
from wiring.edits.edit import Edit, EditRefused
from wiring.edits.laying import body_box
from wiring.edits.shift_each import with_shifts
from wiring.edits.tables import counted, known_kinds, part_of
from wiring.plan.groups import bodies
from wiring.plan.part import Part
from wiring.plan.plan import Plan

Line = Literal["left", "right", "top", "bottom", "column", "row"]


def align(ids: Iterable[str], line: Line, *, kinds: Mapping[str, Kind] | None = None) -> Edit:
    """Line parts up: their left, right, top or bottom edges, their middles in a "column" or in a "row".

    Edges go to the outermost one, middles to the middle between the outermost centres. What is one thing is
    lined up as a whole, unless nothing else is.
    """
    wanted = tuple(dict.fromkeys(ids))

    def apply(plan: Plan) -> Plan:
        known = known_kinds(kinds)
        parts = [part_of(plan, i) for i in wanted if i not in plan.wires]
        things = bodies(plan, [p.id for p in parts])
        if len(things) < 2:
            raise EditRefused("Select at least two parts to line them up.")
        upright = line in ("left", "right", "column")
        own = {p.id: _spot(p, known.get(p.kind), line) for p in parts}
        spots = [_goal([own[i] for i in thing], line) for thing in things]
        to = _goal(spots, line)
        shifts = {
            i: (to - spot, 0.0) if upright else (0.0, to - spot)
            for thing, spot in zip(things, spots, strict=True)
            for i in thing
        }
        return with_shifts(plan, shifts, known)

    return Edit(f"Line up {counted(len(wanted), 'part')}", apply)


def _spot(part: Part, kind: Kind | None, line: Line) -> float:
    if line in ("column", "row") or kind is None:
        return part.x_mm if line in ("left", "right", "column") else part.y_mm
    left, top, right, bottom = body_box(part, kind)
    return {"left": left, "right": right, "top": top, "bottom": bottom}[line]


def _goal(spots: list[float], line: Line) -> float:
    if line in ("left", "top"):
        return min(spots)
    if line in ("right", "bottom"):
        return max(spots)
    return (min(spots) + max(spots)) / 2
