"""Mirror a group of parts: places swap sides, the parts themselves are turned, never turned over."""

import math
from collections.abc import Callable, Iterable, Mapping
from typing import Literal

import msgspec

from wiring.catalogue.kind import Kind
from wiring.edits.areas import areas_after
from wiring.edits.edit import Edit
from wiring.edits.harness_follow import with_harness_followed
from wiring.edits.square_ends import with_square_ends
from wiring.edits.tables import counted, known_kinds, part_of, rounded_mm, with_records
from wiring.plan.part import Part
from wiring.plan.places import Point, terminal_at
from wiring.plan.plan import Plan
from wiring.plan.wire import Wire

LEVEL_MM = 0.01  # a bend this little beside its terminal stands level with it
Over = Callable[[Point], Point]


def mirror(
    ids: Iterable[str],
    way: Literal["across", "down"],
    *,
    about_mm: float | None = None,
    kinds: Mapping[str, Kind] | None = None,
) -> Edit:
    """Swap left and right ("across") or top and bottom ("down") of a group about its middle, or `about_mm`.

    A real part cannot be turned inside out, so each is turned to whichever of the two turns brings its
    terminals nearest to their mirrored places.
    """
    wanted = tuple(dict.fromkeys(ids))

    def apply(plan: Plan) -> Plan:
        known = known_kinds(kinds)
        parts = {i: part_of(plan, i) for i in wanted if i not in plan.wires}
        if not parts:
            return plan
        across = way == "across"
        spots = [p.x_mm if across else p.y_mm for p in parts.values()]
        axis = (min(spots) + max(spots)) / 2 if about_mm is None else about_mm

        def over(point: Point) -> Point:
            x_mm, y_mm = point
            return (2 * axis - x_mm, y_mm) if across else (x_mm, 2 * axis - y_mm)

        mirrored = []
        for part in parts.values():
            turned = _mirrored(part, known.get(part.kind), over, across)
            scene, panel = areas_after(plan, plan, part, turned)
            mirrored.append(msgspec.structs.replace(turned, scene=scene, panel=panel))
        inner = [w for w in plan.wires.values() if w.bends and {w.start.part, w.end.part} <= parts.keys()]
        there = {p.id: p for p in mirrored}
        wires = [msgspec.structs.replace(w, bends=_bends(w, parts, there, known, over)) for w in inner]
        mirrored_plan = with_square_ends(plan, with_records(plan, mirrored, wires), parts, known)
        return with_harness_followed(plan, mirrored_plan, parts, known)

    return Edit(f"Mirror {counted(len(wanted), 'part')}", apply)


def _mirrored(part: Part, kind: Kind | None, over: Over, across: bool) -> Part:
    x_mm, y_mm = over((part.x_mm, part.y_mm))
    made = [
        msgspec.structs.replace(
            part, x_mm=rounded_mm(x_mm), y_mm=rounded_mm(y_mm), turn_deg=rounded_mm(turn % 360.0)
        )
        for turn in (-part.turn_deg, 180.0 - part.turn_deg)
    ]
    if kind is None:
        return made[0 if across else 1]
    return min(made, key=lambda there: round(_off(part, there, kind, over), 3))


def _off(part: Part, there: Part, kind: Kind, over: Over) -> float:
    return sum(
        math.dist(terminal_at(there, kind, t.name), over(terminal_at(part, kind, t.name)))
        for t in kind.terminals
    )


def _bends(
    wire: Wire, old: Mapping[str, Part], new: Mapping[str, Part], known: Mapping[str, Kind], over: Over
) -> tuple[Point, ...]:
    """Return the bends mirrored, the outermost still level with their terminals, which a turn puts aside."""
    bends = [_rounded(over(b)) for b in wire.bends]
    for ref, index in ((wire.start, 0), (wire.end, -1)):
        kind = known.get(old[ref.part].kind)
        if kind is None:
            continue
        was, is_now = (terminal_at(parts[ref.part], kind, ref.terminal) for parts in (old, new))
        if abs(wire.bends[index][1] - was[1]) < LEVEL_MM:
            bends[index] = _rounded((bends[index][0], is_now[1]))
        elif abs(wire.bends[index][0] - was[0]) < LEVEL_MM:
            bends[index] = _rounded((is_now[0], bends[index][1]))
    return tuple(bends)


def _rounded(point: Point) -> Point:
    return rounded_mm(point[0]), rounded_mm(point[1])
