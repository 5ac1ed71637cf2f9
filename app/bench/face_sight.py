"""Everything the painters of the bench look at, as one value, and what lies under a place of the face."""

import math
from collections.abc import Mapping
from typing import Literal, NamedTuple

from app.bench.bench import FaceItem
from app.bench.face_camera import FaceCamera
from app.canvas.geometry import own_box, turned_box
from app.canvas.hit import path_distance
from app.canvas.sight import Sight
from wiring.catalogue.kind import Kind
from wiring.drawings.panel_face import legend
from wiring.pictures.metrics import words_corners
from wiring.plan.panel import FaceText, Panel
from wiring.plan.panel_bodies import bodies_on, misfits
from wiring.plan.panel_places import from_face, holds, of_panel, to_face
from wiring.plan.part import Part
from wiring.plan.places import Point
from wiring.plan.plan import Plan

REACH_PX = 6.0
SMALLEST_PX = 16.0  # a part is never hit smaller than this


class FaceSight(NamedTuple):
    """A panel, how it is looked at, and what is known about its plan."""

    plan: Plan
    panel: Panel
    camera: FaceCamera
    whole: Sight  # of the plan: kinds, positions, figures, colours
    selected: frozenset[str] = frozenset()
    items: frozenset[FaceItem] = frozenset()

    @property
    def kinds(self) -> Mapping[str, Kind]:
        """The catalogue."""
        return self.whole.kinds

    @property
    def parts(self) -> tuple[Part, ...]:
        """The parts that lie on the face, of known kinds, in plan order."""
        return tuple(
            p
            for p in of_panel(self.plan, self.panel)
            if p.kind in self.kinds and holds(self.panel, p.x_mm, p.y_mm)
        )

    def misfits(self) -> frozenset[str]:
        """Return the parts that cannot be mounted as they stand."""
        return misfits(bodies_on(self.plan, self.kinds, self.panel), self.panel)


class FaceHit(NamedTuple):
    """What is under the pointer; `at` in mm of the face."""

    at: Point
    part: str = ""
    item: FaceItem | None = None
    corner: int = -1  # of a chosen track line
    grip: Literal["", "held"] = ""


def hit_on_face(sight: FaceSight, at: Point) -> FaceHit:
    """Return what a click at a place means: a corner of a chosen line, a part, a legend, a line."""
    reach = REACH_PX / sight.camera.scale
    for item in sorted(sight.items):
        if item.sort == "line" and item.number < len(sight.panel.lines):
            for corner, place in enumerate(sight.panel.lines[item.number].points):
                if math.dist(place, at) <= reach:
                    return FaceHit(at, item=item, corner=corner)
    part = _part_at(sight, from_face(sight.panel, at))
    if part:
        return FaceHit(at, part=part)
    for index, text in reversed(list(enumerate(sight.panel.texts))):
        if _in_text(text, at, reach / 2):
            return FaceHit(at, item=FaceItem("text", index))
    for index, line in reversed(list(enumerate(sight.panel.lines))):
        if path_distance(line.points, at) <= max(line.width_mm / 2, reach):
            return FaceHit(at, item=FaceItem("line", index))
    return FaceHit(at)


def item_box(panel: Panel, item: FaceItem) -> tuple[float, float, float, float]:
    """Return the box round a line or a legend, in mm of the face."""
    if item.sort == "line":
        line = panel.lines[item.number]
        points, rim = line.points, line.width_mm / 2
    else:
        points, rim = words_corners(legend(panel.texts[item.number])), 0.0
    xs, ys = [p[0] for p in points], [p[1] for p in points]
    return min(xs) - rim, min(ys) - rim, max(xs) + rim, max(ys) + rim


def part_box(sight: FaceSight, part: Part) -> tuple[float, float, float, float]:
    """Return the box round a part's sign, in mm of the face."""
    box = turned_box(part, own_box(part, sight.kinds.get(part.kind)))
    (left, top), (right, bottom) = (
        to_face(sight.panel, (box.left, box.top)),
        to_face(sight.panel, (box.right, box.bottom)),
    )
    return left, top, right, bottom


def _part_at(sight: FaceSight, at: Point) -> str:
    least = SMALLEST_PX / sight.camera.scale / 2
    best, found = math.inf, ""
    for part in sight.parts:
        kind = sight.kinds[part.kind]
        half = max(max(kind.width_mm, kind.height_mm) / 2, least)
        away = max(abs(part.x_mm - at[0]), abs(part.y_mm - at[1]))
        if away <= half and away < best:
            best, found = away, part.id
    return found


def _in_text(text: FaceText, at: Point, pad: float) -> bool:
    words = legend(text)
    corners = words_corners(words._replace(turn_deg=0.0), pad)
    angle = math.radians(-words.turn_deg)
    dx, dy = at[0] - text.x_mm, at[1] - text.y_mm
    x = text.x_mm + dx * math.cos(angle) - dy * math.sin(angle)
    y = text.y_mm + dx * math.sin(angle) + dy * math.cos(angle)
    return corners[0][0] <= x <= corners[2][0] and corners[0][1] <= y <= corners[2][1]
