"""The named rectangles of a plan, scenes and panels, and the windows round one panel or some parts."""

import math
from collections.abc import Mapping, Sequence
from typing import NamedTuple

from wiring.catalogue.kind import Kind
from wiring.plan.panel import Panel
from wiring.plan.panel_places import plugs_of
from wiring.plan.part import Part
from wiring.plan.plan import Plan

AIR_MM = 40.0  # left round a window, for what sticks out of it


class Area(NamedTuple):
    """A named upright rectangle in plan millimetres."""

    name: str
    left: float
    top: float
    right: float
    bottom: float

    def holds(self, x_mm: float, y_mm: float) -> bool:
        """Return whether a point lies in it."""
        return self.left <= x_mm <= self.right and self.top <= y_mm <= self.bottom

    def widened(self, by_mm: float = AIR_MM) -> "Area":
        """Return it with air all round."""
        return Area(self.name, self.left - by_mm, self.top - by_mm, self.right + by_mm, self.bottom + by_mm)


def scene_areas(plan: Plan) -> tuple[Area, ...]:
    """Return the scenes' rectangles, in plan order."""
    return tuple(
        Area(s.name, s.x_mm, s.y_mm, s.x_mm + s.width_mm, s.y_mm + s.height_mm) for s in plan.scenes.values()
    )


def panel_areas(plan: Plan) -> tuple[Area, ...]:
    """Return the panels' rectangles, in plan order."""
    return tuple(
        Area(p.name, p.x_mm, p.y_mm, p.x_mm + p.width_mm, p.y_mm + p.height_mm) for p in plan.panels.values()
    )


def areas(plan: Plan) -> tuple[Area, ...]:
    """Return scenes, then panels."""
    return (*scene_areas(plan), *panel_areas(plan))


def panel_window(plan: Plan, kinds: Mapping[str, Kind], panel: Panel) -> Area:
    """Return the window that shows a panel whole, with the plugs of its harness."""
    right, bottom = panel.x_mm + panel.width_mm, panel.y_mm + panel.height_mm
    face = Area(panel.name, panel.x_mm, panel.y_mm, right, bottom).widened()
    plugs = plugs_of(plan, kinds, panel.id)
    if not plugs:
        return face
    round_plugs = round_parts(panel.name, list(plugs), kinds)
    return Area(
        panel.name,
        min(face.left, round_plugs.left),
        min(face.top, round_plugs.top),
        max(face.right, round_plugs.right),
        max(face.bottom, round_plugs.bottom),
    )


def round_parts(name: str, parts: Sequence[Part], kinds: Mapping[str, Kind]) -> Area:
    """Return the window round parts, with air for what sticks out of it and for labels."""
    reach = max(math.hypot(kinds[p.kind].width_mm, kinds[p.kind].height_mm) / 2 for p in parts)
    xs, ys = [p.x_mm for p in parts], [p.y_mm for p in parts]
    return Area(name, min(xs), min(ys), max(xs), max(ys)).widened(AIR_MM + reach)
