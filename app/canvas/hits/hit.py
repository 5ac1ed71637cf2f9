"""What lies under a place of the plan: terminal, bend, part or wire, in that order."""

import itertools
import math
from collections.abc import Mapping
from typing import NamedTuple

import numpy as np

from app.canvas.geometry import Box, Geometry
from app.canvas.hits.area_hit import area_grip_at
from app.canvas.hits.joist_hit import joist_at, joist_end_at
from app.canvas.hits.line_hit import line_at, line_corner_at
from app.canvas.hits.way_hit import corner_at, way_at
from app.canvas.loose_wires import loose_wires
from app.canvas.wire_paths import along
from app.ground_keys import joist_index, joist_key
from wiring.catalogue.kind import Kind
from wiring.plan.names import PartId, TerminalRef, WireId
from wiring.plan.places import Point
from wiring.plan.plan import Plan

REACH_PX = 6.0  # how near to a thing the pointer may be to mean it
LANDING_PX = 14.0  # a wire that is being pulled lands from farther away
SMALLEST_PX = 20.0  # a part is never shown or hit smaller than this
TERMINALS_FROM = 0.9  # pixels per millimetre from which terminals can be grabbed without a tool
END_RING_PX = 17.0  # from a wire's end to its ring, so that the terminal itself stays free for new wires
LEVER_SHARE = 0.62  # of a switch's size: the middle throws it, the rim moves it


class Hit(NamedTuple):
    """What is under the pointer; `at` in plan millimetres, empty strings where there is nothing."""

    at: Point
    part: PartId = ""
    wire: WireId = ""
    terminal: TerminalRef | None = None
    bend: int = -1  # index of the wire's bend
    end: str = ""  # "start" or "end": on the ring that moves this end of a selected wire
    lever: bool = False  # on the part that throws a switch
    handle: bool = False  # on the turning handle of the selection
    area: str = ""  # a scene or panel, held by its name or an edge
    grip: str = ""  # how it is held, see app.canvas.hits.area_hit
    way: str = ""  # a wireway
    corner: int = -1  # index of its corner
    joist: int = -1  # index of a joist
    line: str = ""  # the board's outline or a track, as a selection names it; `corner` is its corner then
    hold: str = ""  # "start", "end" or "whole": how the joist that is selected is held

    @property
    def id(self) -> str:
        """Id of the part or wire, whichever is there."""
        return self.part or self.wire

    @property
    def ground(self) -> str:
        """What of the ground is there: a scene, panel or wireway by its id, anything else by its key."""
        return self.area or self.way or (joist_key(self.joist) if self.joist >= 0 else self.line)


def nearest_terminal(geometry: Geometry, at: Point, reach_mm: float) -> TerminalRef | None:
    """Return the terminal closest to a place, None when none is in reach."""
    rows = geometry.terminals.values
    if not len(rows):
        return None
    square = (rows[:, 0] - at[0]) ** 2 + (rows[:, 1] - at[1]) ** 2
    if np.isnan(square).all():
        return None
    best = int(np.nanargmin(square))
    return geometry.terminals.keys_at([best])[0] if square[best] <= reach_mm**2 else None


def next_terminal(geometry: Geometry, after: TerminalRef | None, step: int) -> Point | None:
    """Return where the terminal after or before one lies, round and round; None when there are none."""
    keys = geometry.terminals.keys()
    if not keys:
        return None
    index = keys.index(after) + step if after in geometry.terminals and after is not None else min(step, 0)
    x, y = geometry.terminals.get(keys[index % len(keys)]).tolist()
    return x, y


def part_at(geometry: Geometry, at: Point, smallest_mm: float) -> PartId:
    """Return the smallest part that covers a place, the newest of equals; "" when there is none."""
    rows = geometry.parts.values
    if not len(rows):
        return ""
    dx, dy = at[0] - rows[:, 4], at[1] - rows[:, 5]
    along, across = dx * rows[:, 6] + dy * rows[:, 7], dy * rows[:, 6] - dx * rows[:, 7]
    width, height = rows[:, 10] - rows[:, 8], rows[:, 11] - rows[:, 9]
    pad_x, pad_y = np.maximum(smallest_mm - width, 0) / 2, np.maximum(smallest_mm - height, 0) / 2
    inside = np.flatnonzero(
        (along >= rows[:, 8] - pad_x)
        & (along <= rows[:, 10] + pad_x)
        & (across >= rows[:, 9] - pad_y)
        & (across <= rows[:, 11] + pad_y)
    ).tolist()
    if not inside:
        return ""
    # As large as it is hit: of neighbours too small to see, the nearest is meant and not the smallest.
    area, away = (width + 2 * pad_x) * (height + 2 * pad_y), np.hypot(dx, dy)
    best = min(inside, key=lambda i: (float(area[i].round(3)), float(away[i].round(6)), -i))
    return geometry.parts.keys_at([best])[0]


def wire_at(geometry: Geometry, at: Point, reach_mm: float) -> WireId:
    """Return the wire nearest to a place within reach; "" when there is none."""
    best, found = reach_mm, ""
    for wire_id in geometry.wires_in(Box(*at, *at).grown(reach_mm)):
        distance = path_distance(geometry.paths[wire_id], at)
        if distance <= best:
            best, found = distance, wire_id
    return found


def path_distance(path: tuple[Point, ...], at: Point) -> float:
    """Return how far a place lies from a polyline, in its unit."""
    return min((segment_distance(a, b, at) for a, b in itertools.pairwise(path)), default=math.inf)


def segment_distance(a: Point, b: Point, at: Point) -> float:
    """Return how far a place lies from the line between two points."""
    dx, dy = b[0] - a[0], b[1] - a[1]
    square = dx * dx + dy * dy
    t = 0.0 if square < 1e-12 else max(0.0, min(1.0, ((at[0] - a[0]) * dx + (at[1] - a[1]) * dy) / square))
    return math.hypot(a[0] + t * dx - at[0], a[1] + t * dy - at[1])


def end_rings(path: tuple[Point, ...], scale: float) -> dict[str, Point]:
    """Return where the rings lie that move the "start" and the "end" of a wire; none on a very short one."""
    rings = {"start": along(path, END_RING_PX / scale), "end": along(path[::-1], END_RING_PX / scale)}
    return {end: place for end, place in rings.items() if place is not None}


def bend_at(bends: tuple[Point, ...], at: Point, reach_mm: float) -> int:
    """Return the index of the bend nearest to a place; -1 when none is in reach."""
    near = [(math.dist(bend, at), i) for i, bend in enumerate(bends)]
    distance, index = min(near, default=(math.inf, -1))
    return index if distance <= reach_mm else -1


def on_lever(geometry: Geometry, part: PartId, kind: Kind | None, at: Point, scale: float) -> bool:
    """Return whether a place lies on what throws a switch."""
    row = geometry.parts.get(part)
    dx, dy = at[0] - row[4], at[1] - row[5]
    along, across = dx * row[6] + dy * row[7], dy * row[6] - dx * row[7]
    return kind is not None and in_lever(kind, along, across, scale)


def in_lever(kind: Kind, along_mm: float, across_mm: float, scale: float) -> bool:
    """Return whether a place, from the part's middle, throws a switch: all of it does where it is small."""
    if not throws_by_hand(kind):
        return False
    half_w, half_h = kind.width_mm / 2, kind.height_mm / 2
    if 2 * min(half_w, half_h) * scale < SMALLEST_PX:
        return True
    return bool(abs(along_mm) <= half_w * LEVER_SHARE and abs(across_mm) <= half_h * LEVER_SHARE)


def throws_by_hand(kind: Kind) -> bool:
    """Return whether a click throws a part of this kind."""
    return kind.behaviour == "switch" and len(kind.positions) > 1


def hit_at(
    geometry: Geometry,
    plan: Plan,
    kinds: Mapping[str, Kind],
    at: Point,
    scale: float,
    selected: frozenset[str] = frozenset(),
    ground: str = "",
    *,
    grounds: frozenset[str] = frozenset(),
    landing: bool = False,
) -> Hit:
    """Return what a click at a place means; `scale` in pixels per millimetre.

    With `landing` a wire is being pulled, and only terminals count, from farther away.
    """
    if landing:
        terminal = nearest_terminal(geometry, at, LANDING_PX / scale)
        return Hit(at, terminal=terminal, part=terminal.part if terminal else "")
    reach_mm = REACH_PX / scale
    part = part_at(geometry, at, SMALLEST_PX / scale)
    if scale >= TERMINALS_FROM:
        terminal = nearest_terminal(geometry, at, reach_mm)
        if terminal is not None and _grabs(geometry, terminal, scale):
            return Hit(at, terminal=terminal, part=terminal.part)
    lever = bool(part) and on_lever(geometry, part, kinds.get(plan.parts[part].kind), at, scale)
    if lever and len(selected) > 1:  # rings and bends of many wires, as after a feed, do not take its place
        return Hit(at, part=part, lever=True)
    for wire_id in loose_wires(plan, selected):
        for end, place in end_rings(geometry.paths.get(wire_id, ()), scale).items():
            if math.dist(place, at) <= reach_mm:
                return Hit(at, wire=wire_id, end=end)
        if (bend := bend_at(plan.wires[wire_id].bends, at, reach_mm)) >= 0:
            return Hit(at, wire=wire_id, bend=bend)
    if part:
        return Hit(at, part=part, lever=lever)
    return _under_parts(geometry, plan, at, scale, ground, grounds or frozenset((ground,)))


def _under_parts(
    geometry: Geometry, plan: Plan, at: Point, scale: float, ground: str, grounds: frozenset[str]
) -> Hit:
    """Return the wireway corner, end of the selected joist, wire, area, wireway or joist at a place."""
    corner = corner_at(plan, at, scale)
    if corner.way:
        return Hit(at, way=corner.way, corner=corner.corner)
    line_corner = line_corner_at(plan, ground, at, scale)
    if line_corner >= 0:
        return Hit(at, line=ground, corner=line_corner)
    index = joist_index(ground)
    if 0 <= index < len(plan.joists) and (end := joist_end_at(plan.joists[index], at, scale)):
        return Hit(at, joist=index, hold=end)
    wire = wire_at(geometry, at, REACH_PX / scale)
    if wire:
        return Hit(at, wire=wire)
    area = area_grip_at(plan, at, scale)
    if area.area:
        return Hit(at, **area._asdict())
    way = way_at(plan, at, scale).way
    line = "" if way else line_at(plan, at, scale)
    joist = -1 if way or line else joist_at(plan, at, scale)
    if line:
        return Hit(at, line=line)
    return Hit(at, way=way, joist=joist, hold="whole" if joist >= 0 and joist_key(joist) in grounds else "")


def _grabs(geometry: Geometry, terminal: TerminalRef, scale: float) -> bool:
    """Return whether a terminal is far enough from its part's middle to leave the part something to hold."""
    row = geometry.parts.get(terminal.part)
    x, y = geometry.terminals.get(terminal)
    return math.hypot(x - row[4], y - row[5]) * scale > REACH_PX * 1.5
