"""Turn parts, one about its centre, several about the middle of them all."""

import math
from collections.abc import Iterable, Mapping

import msgspec

from wiring.catalogue.kind import Kind
from wiring.edits.areas import areas_after
from wiring.edits.edit import Edit
from wiring.edits.harness_follow import with_harness_followed
from wiring.edits.square_ends import with_square_ends
from wiring.edits.tables import counted, known_kinds, part_of, rounded_mm, with_records
from wiring.plan.part import Part
from wiring.plan.places import Point
from wiring.plan.plan import Plan


def turn(
    ids: Iterable[str], degrees: float, about: Point | None = None, *, kinds: Mapping[str, Kind] | None = None
) -> Edit:
    """Turn those parts clockwise as seen from above, with the bends of the wires between them.

    `about` is the point that stays, in mm; without it, the middle between the outermost centres.
    """
    wanted = tuple(dict.fromkeys(ids))

    def apply(plan: Plan) -> Plan:
        parts = {i: part_of(plan, i) for i in wanted if i not in plan.wires}
        if not parts or not math.isfinite(degrees) or degrees % 360 == 0:
            return plan
        centre = about or _middle(parts.values())
        inner = [w for w in plan.wires.values() if w.bends and w.start.part in parts and w.end.part in parts]
        turned = [_turned(plan, p, degrees, centre) for p in parts.values()]
        wires = [
            msgspec.structs.replace(w, bends=tuple(_around(centre, b, degrees) for b in w.bends))
            for w in inner
        ]
        known = known_kinds(kinds)
        there = with_square_ends(plan, with_records(plan, turned, wires), parts, known)
        return with_harness_followed(plan, there, parts, known)

    return Edit(f"Turn {counted(len(wanted), 'item')}" if len(wanted) != 1 else "Turn", apply)


def _turned(plan: Plan, part: Part, degrees: float, centre: Point) -> Part:
    x_mm, y_mm = _around(centre, (part.x_mm, part.y_mm), degrees)
    angle = rounded_mm((part.turn_deg + degrees) % 360.0)
    there = msgspec.structs.replace(part, x_mm=x_mm, y_mm=y_mm, turn_deg=angle)
    scene, panel = areas_after(plan, plan, part, there)
    return msgspec.structs.replace(there, scene=scene, panel=panel)


def _middle(parts: Iterable[Part]) -> Point:
    xs, ys = zip(*((p.x_mm, p.y_mm) for p in parts), strict=True)
    return (min(xs) + max(xs)) / 2, (min(ys) + max(ys)) / 2


def _around(centre: Point, point: Point, degrees: float) -> Point:
    angle = math.radians(degrees)
    x_mm, y_mm = point[0] - centre[0], point[1] - centre[1]
    return (
        rounded_mm(centre[0] + x_mm * math.cos(angle) - y_mm * math.sin(angle)),
        rounded_mm(centre[1] + x_mm * math.sin(angle) + y_mm * math.cos(angle)),
    )
