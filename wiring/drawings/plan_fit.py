"""How a plan is laid into a box on paper: its bounds, its scale, and which way it is looked at."""

import math
from collections.abc import Iterable, Mapping
from typing import NamedTuple

from wiring.catalogue.kind import Kind
from wiring.drawings.plan_areas import areas
from wiring.drawings.signs.extent import extent
from wiring.pictures.picture import Point
from wiring.plan.part import Part
from wiring.plan.places import on_plan
from wiring.plan.plan import Plan

Box = tuple[float, float, float, float]  # left, top, right, bottom
# The recommended scales of ISO 5455 with steps between them, so that a board fills its sheet.
_REDUCTIONS = (1.0, 1.5, 2.0, 2.5, 3.0, 4.0, 5.0, 6.0, 7.5, 8.0, 10.0)


class Fit(NamedTuple):
    """Paper millimetres per plan millimetre, the plan's middle, and the paper's point it falls on."""

    scale: float
    middle: Point
    paper: Point
    below: bool = False

    def at(self, point: Point) -> Point:
        """Return where a point of the plan falls on the paper; seen from below, left and right swap."""
        x, y = self.offset((point[0] - self.middle[0], point[1] - self.middle[1]))
        return self.paper[0] + x, self.paper[1] + y

    def offset(self, vector: Point, factor: float | None = None) -> Point:
        """Return a plan vector on paper, at the plan's scale or another one."""
        k = self.scale if factor is None else factor
        return (-vector[0] if self.below else vector[0]) * k, vector[1] * k


def plan_bounds(plan: Plan, kinds: Mapping[str, Kind]) -> Box | None:
    """Return the rectangle, in plan mm, that holds everything drawn; None for an empty plan."""
    points: list[Point] = list(plan.board)
    for track in plan.tracks:
        points += track
    for joist in plan.joists:
        points += (joist.start, joist.end)
    for area in areas(plan):
        points += [(area.left, area.top), (area.right, area.bottom)]
    for part in plan.parts.values():
        points += part_corners(part, kinds.get(part.kind))
    for wire in plan.wires.values():
        points += wire.bends
    points = [p for p in points if math.isfinite(p[0]) and math.isfinite(p[1])]
    return around(points) if points else None


def around(points: Iterable[Point]) -> Box:
    """Return the smallest upright rectangle that holds the points."""
    listed = list(points)
    xs, ys = [p[0] for p in listed], [p[1] for p in listed]
    return min(xs), min(ys), max(xs), max(ys)


def part_corners(part: Part, kind: Kind | None) -> list[Point]:
    """Return the four corners of a part's sign on the plan; its centre four times if its kind is unknown."""
    left, top, right, bottom = extent(kind, part) if kind else (0.0, 0.0, 0.0, 0.0)
    return [on_plan(part, x, y) for x, y in ((left, top), (right, top), (right, bottom), (left, bottom))]


def fitting_scale(width_mm: float, height_mm: float, room_w_mm: float, room_h_mm: float) -> float:
    """Return the largest round scale, at most 1:1, at which a size goes into a room on paper."""
    need = max(width_mm / max(room_w_mm, 1.0), height_mm / max(room_h_mm, 1.0), 1.0)
    power = 10.0 ** math.floor(math.log10(need) + 1e-9)
    step = next((r for r in _REDUCTIONS if r * power >= need * (1 - 1e-9)), 10.0)
    return 1.0 / (step * power)


def scale_words(scale: float) -> str:
    """Return a scale as it stands in a title block: ``1:10``, ``1:7.5``."""
    return f"1:{1.0 / scale:.6g}"
