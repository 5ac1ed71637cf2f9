"""What lies under a place of the face, and behind it where the back is up."""

import math
from collections.abc import Iterable
from typing import NamedTuple

from app.bench.bench import FaceItem
from app.bench.face_sight import FaceSight
from app.bench.face_wires import courses
from app.canvas.hits.hit import LANDING_PX, bend_at, end_rings, in_lever, path_distance
from wiring.drawings.panel_face import legend
from wiring.pictures.metrics import words_corners
from wiring.plan.names import TerminalRef
from wiring.plan.panel import FaceText
from wiring.plan.panel_places import from_face, to_face
from wiring.plan.part import Part
from wiring.plan.places import Point, terminal_at

REACH_PX = 6.0
WIRE_PX = 4.0  # a wire is thin and lies on bodies: it counts before them, from nearer
SMALLEST_PX = 16.0  # a part is never hit smaller than this


class FaceHit(NamedTuple):
    """What is under the pointer; `at` in mm of the face."""

    at: Point
    part: str = ""
    item: FaceItem | None = None
    corner: int = -1  # of a chosen track line
    terminal: TerminalRef | None = None
    wire: str = ""
    bend: int = -1  # index of the wire's bend
    end: str = ""  # "start" or "end": on the ring that moves this end of the chosen wire
    lever: bool = False  # on the knob of a switch or button seen from the front, which a click throws

    @property
    def is_nothing(self) -> bool:
        """Whether the bare face, or what is beside it, is there."""
        return not (self.part or self.item or self.wire or self.terminal)


def hit_on_face(sight: FaceSight, at: Point, *, landing: bool = False) -> FaceHit:
    """Return what a click at a place means; with `landing` a wire is being pulled: only terminals count."""
    reach = REACH_PX / sight.camera.scale
    if landing:
        return _with_terminal(FaceHit(at), nearest_terminal(sight, at, LANDING_PX / sight.camera.scale))
    if sight.camera.behind:
        hit = _wiring_at(sight, at, reach)
        if not hit.is_nothing:
            return hit
    for item in sorted(sight.items):
        if item.sort == "line" and item.number < len(sight.panel.lines):
            for corner, place in enumerate(sight.panel.lines[item.number].points):
                if math.dist(place, at) <= reach:
                    return FaceHit(at, item=item, corner=corner)
    part = _part_at(sight, from_face(sight.panel, at))
    if part:
        return FaceHit(at, part=part, lever=_on_lever(sight, part, from_face(sight.panel, at)))
    for index, text in reversed(list(enumerate(sight.panel.texts))):
        if _in_text(text, at, reach / 2):
            return FaceHit(at, item=FaceItem("text", index))
    for index, line in reversed(list(enumerate(sight.panel.lines))):
        if path_distance(line.points, at) <= max(line.width_mm / 2, reach):
            return FaceHit(at, item=FaceItem("line", index))
    return FaceHit(at)


def terminal_places(sight: FaceSight) -> dict[TerminalRef, Point]:
    """Return every terminal at the back in mm of the face, part by part."""
    return {
        TerminalRef(part.id, spec.name): to_face(sight.panel, terminal_at(part, kind, spec.name))
        for part in sight.at_back
        for kind in (sight.kinds[part.kind],)
        for spec in kind.terminals
    }


def next_terminal(sight: FaceSight, after: TerminalRef | None, step: int) -> Point | None:
    """Return where the terminal after or before one lies, round and round; None when there are none."""
    places = terminal_places(sight)
    if not places:
        return None
    keys = list(places)
    index = keys.index(after) + step if after in places else min(step, 0)
    return places[keys[index % len(keys)]]


def nearest_terminal(sight: FaceSight, at: Point, reach_mm: float) -> TerminalRef | None:
    """Return the terminal closest to a place of the face, None when none is in reach."""
    near = ((math.dist(place, at), ref) for ref, place in terminal_places(sight).items())
    away, found = min(near, key=lambda pair: pair[0], default=(math.inf, None))
    return found if away <= reach_mm else None


def _with_terminal(hit: FaceHit, terminal: TerminalRef | None) -> FaceHit:
    return hit._replace(terminal=terminal, part=terminal.part if terminal else "")


def _wiring_at(sight: FaceSight, at: Point, reach: float) -> FaceHit:
    """Return the end or bend of a chosen wire, the terminal or the wire at a place of the back."""
    found = courses(sight)
    for wire_id in _chosen(sight, found):
        for end, place in end_rings(found[wire_id], sight.camera.scale).items():
            if math.dist(place, at) <= reach:
                return FaceHit(at, wire=wire_id, end=end)
        bends = tuple(to_face(sight.panel, bend) for bend in sight.plan.wires[wire_id].bends)
        if (bend := bend_at(bends, at, reach)) >= 0:
            return FaceHit(at, wire=wire_id, bend=bend)
    terminal = nearest_terminal(sight, at, reach)
    if terminal is not None and _grabs(sight, terminal):
        return _with_terminal(FaceHit(at), terminal)
    away, wire = min(((path_distance(c, at), i) for i, c in found.items()), default=(math.inf, ""))
    return FaceHit(at, wire=wire if away <= WIRE_PX / sight.camera.scale else "")


def _chosen(sight: FaceSight, found: Iterable[str]) -> list[str]:
    return [i for i in found if i in sight.selected]


def _grabs(sight: FaceSight, ref: TerminalRef) -> bool:
    """Return whether a terminal is far enough from its part's middle to leave the part something to hold."""
    part = sight.plan.parts[ref.part]
    place = terminal_at(part, sight.kinds[part.kind], ref.terminal)
    return math.dist(place, (part.x_mm, part.y_mm)) * sight.camera.scale > REACH_PX * 1.5


def _part_at(sight: FaceSight, at: Point) -> str:
    least = SMALLEST_PX / sight.camera.scale / 2
    best, found = math.inf, ""
    for part in sight.at_back if sight.camera.behind else sight.parts:
        kind = sight.kinds[part.kind]
        x, y = _in_part(part, at)
        if abs(x) > max(kind.width_mm / 2, least) or abs(y) > max(kind.height_mm / 2, least):
            continue
        away = max(abs(at[0] - part.x_mm), abs(at[1] - part.y_mm))
        if away < best:
            best, found = away, part.id
    return found


def _on_lever(sight: FaceSight, part_id: str, at: Point) -> bool:
    """Return whether a place lies on what is thrown or pressed of a switch; its rim only chooses it."""
    part = sight.plan.parts[part_id]
    return not sight.camera.behind and in_lever(
        sight.kinds[part.kind], *_in_part(part, at), sight.camera.scale
    )


def _in_part(part: Part, at: Point) -> Point:
    """Return a place of the plan as seen from a part's middle, along and across it as it is turned."""
    angle = math.radians(-part.turn_deg)
    dx, dy = at[0] - part.x_mm, at[1] - part.y_mm
    return dx * math.cos(angle) - dy * math.sin(angle), dx * math.sin(angle) + dy * math.cos(angle)


def _in_text(text: FaceText, at: Point, pad: float) -> bool:
    words = legend(text)
    corners = words_corners(words._replace(turn_deg=0.0), pad)
    angle = math.radians(-words.turn_deg)
    dx, dy = at[0] - text.x_mm, at[1] - text.y_mm
    x = text.x_mm + dx * math.cos(angle) - dy * math.sin(angle)
    y = text.y_mm + dx * math.sin(angle) + dy * math.cos(angle)
    return corners[0][0] <= x <= corners[2][0] and corners[0][1] <= y <= corners[2][1]
