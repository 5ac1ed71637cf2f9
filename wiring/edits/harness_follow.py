"""Lets the harness of a panel follow when its plug, its parts or all of it are moved."""

import math
from collections.abc import Collection, Iterable, Mapping, Sequence
from types import MappingProxyType

import msgspec

from wiring.catalogue.kind import Kind
from wiring.edits.harness_bundle import Bundle, bundles_of, frame_of_plug, kept_at_its_panel, panels_of
from wiring.edits.harness_outer import (
    LANE_CLEAR_MM,
    LANE_MM,
    aims_round,
    crosses_face,
    outer_bends,
    past_face_bends,
    round_bends,
)
from wiring.edits.harness_way import Course, Frame, gathered
from wiring.edits.laying import body_box
from wiring.edits.tables import known_kinds, rounded_mm, with_records
from wiring.plan.names import PartId, TerminalRef
from wiring.plan.panel_places import of_panel
from wiring.plan.part import Part
from wiring.plan.places import Point, terminal_at
from wiring.plan.plan import Plan
from wiring.plan.wireway import Wireway

SAME_MM = 0.01
Line = tuple[Point, ...]


def with_harness_followed(
    old: Plan, new: Plan, moved: Iterable[PartId], kinds: Mapping[str, Kind] | None = None
) -> Plan:
    """Return the new plan with the wires and wireways of harnesses led anew to where their ends are now.

    `moved` are the parts that stand elsewhere. A bundle that runs as it was brought out is brought out anew;
    one that was bent by hand keeps its bends, but for those at the ends that have moved.
    """
    panels = panels_of(old, moved)
    if not panels:
        return new
    known = known_kinds(kinds)
    for bundle in bundles_of(old, known, panels):
        new = _follow(old, kept_at_its_panel(new, bundle), bundle, known)
    return new


def with_harness_of(plan: Plan, parts: Collection[PartId], kinds: Mapping[str, Kind]) -> frozenset[str]:
    """Return the ids of all that may change with a harness when these parts are moved; none without one."""
    panels = panels_of(plan, parts)
    found: set[str] = set()
    for bundle in bundles_of(plan, kinds, panels) if panels else ():
        found |= {w.id for w in (*bundle.inner, *bundle.outer)}
        found |= {bundle.way, *(p.id for p in of_panel(plan, bundle.panel))}
    return frozenset(found)


def _follow(old: Plan, new: Plan, bundle: Bundle, kinds: Mapping[str, Kind]) -> Plan:
    plug, panel = new.parts.get(bundle.plug.id), new.panels.get(bundle.panel.id)
    ends = {ref.part for wire in bundle.inner for ref in (wire.start, wire.end)}
    there = plug is not None and panel is not None and all(i in new.parts for i in ends)
    if plug is None or panel is None or not there:
        return new
    frame, before = frame_of_plug(panel, plug), frame_of_plug(bundle.panel, bundle.plug)
    course = _course(old, bundle, before, bundle.plug, kinds)
    way = old.wireways[bundle.way]
    as_brought_out = course is not None and _same(course.wireway, way.points)
    as_brought_out = as_brought_out and all(
        _same(made, wire.bends)
        for made, wire in zip(course.bends if course else (), bundle.inner, strict=True)
    )
    now = Bundle(panel, plug, bundle.way, bundle.inner, bundle.outer)
    then = _course(new, now, frame, plug, kinds) if as_brought_out else None
    if then is not None:
        wires = [
            msgspec.structs.replace(new.wires[w.id], bends=_tidy(b))
            for w, b in zip(bundle.inner, then.bends, strict=True)
        ]
        new = _with_way(with_records(new, wires=wires), way, _tidy(then.wireway))
    else:
        new = _pulled_along(old, new, bundle, kinds)
    if (plug.x_mm, plug.y_mm, plug.turn_deg) == (bundle.plug.x_mm, bundle.plug.y_mm, bundle.plug.turn_deg):
        return new
    if frame is not None and plug.turn_deg == frame.turn_deg != bundle.plug.turn_deg:
        return _with_outer_round(old, new, bundle, (before, frame), kinds)
    return _with_outer_led(old, new, bundle, frame, kinds)


def _course(
    plan: Plan, bundle: Bundle, frame: Frame | None, plug: Part, kinds: Mapping[str, Kind]
) -> Course | None:
    """Return the course of a bundle as it is brought out; None where its plug stands beyond no edge."""
    if frame is None:
        return None
    others = [p for p in of_panel(plan, bundle.panel) if p.id != plug.id and p.kind in kinds]
    starts = [_place(plan, kinds, wire.start) for wire in bundle.inner]
    dots = [terminal_at(p, kinds[p.kind], t.name) for p in others for t in kinds[p.kind].terminals]
    bodies = [body_box(p, kinds[p.kind]) for p in others]
    return gathered(frame, starts, (plug.x_mm, plug.y_mm), dots, bodies)


def _pulled_along(old: Plan, new: Plan, bundle: Bundle, kinds: Mapping[str, Kind]) -> Plan:
    """Return the plan with the ends of a bundle bent by hand where its plug and its panel's parts are now."""
    plug = new.parts[bundle.plug.id]
    by = plug.x_mm - bundle.plug.x_mm, plug.y_mm - bundle.plug.y_mm
    wires, shifts = [], []
    for wire in bundle.inner:
        at_start = _shift(old, new, kinds, wire.start)
        shifts.append(at_start)
        bends = _pulled(wire.bends, _place(old, kinds, wire.start), at_start)
        wires.append(msgspec.structs.replace(new.wires[wire.id], bends=_tidy(_end_shifted(bends, by))))
    way = old.wireways[bundle.way]
    if all(_same((by,), (shift,)) for shift in shifts):  # all of it went the same way
        points: Line = tuple((x + by[0], y + by[1]) for x, y in way.points)
        return _with_way(new, way, _tidy(points))
    return _with_way(with_records(new, wires=wires), way, _tidy(_end_shifted(way.points, by)))


def _end_shifted(points: Line, by: Point) -> Line:
    """Return a way whose last point is shifted, the one before it as far as their leg keeps its direction."""
    if not points or by == (0.0, 0.0):
        return points
    return (*_pulled(points[:-1][::-1], points[-1], by)[::-1], (points[-1][0] + by[0], points[-1][1] + by[1]))


def _pulled(bends: Line, end: Point, by: Point) -> Line:
    """Return the bends after an end went elsewhere: the first leg keeps its direction if it was square."""
    if not bends or by == (0.0, 0.0):
        return bends
    (x, y), rest = bends[0], bends[1:]
    level, upright = abs(y - end[1]) < SAME_MM, abs(x - end[0]) < SAME_MM
    step = (by[0] if upright else 0.0, by[1] if level else 0.0)
    return ((x + step[0], y + step[1]), *_pulled(rest, (x, y), step))


def _with_outer_led(
    old: Plan, new: Plan, bundle: Bundle, frame: Frame | None, kinds: Mapping[str, Kind]
) -> Plan:
    """Return the plan with the wires from the plug to the layout beginning where their ways are now."""
    wires, lane = [], 0
    for wire in bundle.outer:
        leads_out = wire.start.part == bundle.plug.id
        near = wire.start if leads_out else wire.end
        far = wire.end if leads_out else wire.start
        if wire.id not in new.wires or _shift(old, new, kinds, far) != (0.0, 0.0):
            continue  # its bends went with both of its ends
        bends = wire.bends if leads_out else wire.bends[::-1]
        at = _place(new, kinds, near)
        led = None
        if frame is not None:
            led = outer_bends(frame, bends, at, frame.out(at) + LANE_CLEAR_MM + LANE_MM * lane)
            lane += led is not None
        if led is None:
            led = _pulled(bends, _place(old, kinds, near), _shift(old, new, kinds, near))
        wires.append(msgspec.structs.replace(wire, bends=_tidy(led if leads_out else led[::-1])))
    return with_records(new, wires=wires)


def _with_outer_round(
    old: Plan, new: Plan, bundle: Bundle, frames: tuple[Frame | None, Frame], kinds: Mapping[str, Kind]
) -> Plan:
    """Return the plan with the wires to the layout led round to an edge that the plug did not face before."""
    before, frame = frames
    led = []
    for wire in bundle.outer:
        leads_out = wire.start.part == bundle.plug.id
        near, far = (wire.start, wire.end) if leads_out else (wire.end, wire.start)
        if wire.id not in new.wires or _shift(old, new, kinds, far) != (0.0, 0.0):
            continue
        bends = wire.bends if leads_out else wire.bends[::-1]
        through = (*bends, _place(new, kinds, far))
        aims = aims_round(before, through, _place(old, kinds, near))
        led.append((wire, leads_out, aims, _place(new, kinds, near)))
    past = [one for one in led if crosses_face(frame, one[2])]
    led = [one for one in led if one not in past]
    # the way nearest to where its wire goes takes the nearest lane, so that none crosses another
    led.sort(key=lambda one: abs(frame.along(one[2][0]) - frame.along(one[3])))
    wires = []
    for lane, (wire, leads_out, aims, at) in enumerate(led):
        made = round_bends(frame, aims, at, frame.out(at) + LANE_CLEAR_MM + LANE_MM * lane)
        wires.append(msgspec.structs.replace(wire, bends=_tidy(made if leads_out else made[::-1])))
    low, high = frame.span
    middles = [(frame.along(aims[0]) + frame.along(at)) / 2 for *_, aims, at in past]
    end = 1.0 if sum(middles) >= len(middles) * (low + high) / 2 else -1.0
    # round the face, the way nearest to the end it goes round takes the nearest lane
    past.sort(key=lambda one: -end * frame.along(one[3]))
    for lane, (wire, leads_out, aims, at) in enumerate(past, start=len(led)):
        made = past_face_bends(frame, aims, at, lane, end)
        wires.append(msgspec.structs.replace(wire, bends=_tidy(made if leads_out else made[::-1])))
    return with_records(new, wires=wires)


def _with_way(plan: Plan, old: Wireway, points: Line) -> Plan:
    way = plan.wireways.get(old.id)
    if way is None or way.points == points:
        return plan
    changed = msgspec.structs.replace(way, points=points)
    return plan.with_changes(wireways=MappingProxyType({**dict(plan.wireways), way.id: changed}))


def _shift(old: Plan, new: Plan, kinds: Mapping[str, Kind], ref: TerminalRef) -> Point:
    if ref.part not in new.parts:
        return 0.0, 0.0
    a, b = _place(old, kinds, ref), _place(new, kinds, ref)
    return rounded_mm(b[0] - a[0]), rounded_mm(b[1] - a[1])


def _place(plan: Plan, kinds: Mapping[str, Kind], ref: TerminalRef) -> Point:
    """Return where a terminal is, of a part whose kind is not known its middle."""
    part = plan.parts[ref.part]
    try:
        return terminal_at(part, kinds[part.kind], ref.terminal)
    except KeyError:
        return part.x_mm, part.y_mm


def _same(one: Sequence[Point], other: Sequence[Point]) -> bool:
    return len(one) == len(other) and all(math.dist(a, b) < SAME_MM for a, b in zip(one, other, strict=True))


def _tidy(points: Iterable[Point]) -> Line:
    return tuple((rounded_mm(x), rounded_mm(y)) for x, y in points)
