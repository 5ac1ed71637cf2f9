"""Which scene or panel lies under a point, and how parts follow when either of them moves."""

from collections.abc import Iterable

from wiring.plan.panel import Panel
from wiring.plan.part import Part
from wiring.plan.plan import Plan
from wiring.plan.scene import Scene


def area_at(areas: Iterable[Scene | Panel], x_mm: float, y_mm: float) -> str:
    """Return the id of the smallest area that holds the point; "" when none does.

    The smallest, because a scene drawn inside another is the more exact answer.
    """
    holding = [
        (a.width_mm * a.height_mm, a.id)
        for a in areas
        if a.width_mm > 0
        and a.height_mm > 0
        and a.x_mm <= x_mm <= a.x_mm + a.width_mm
        and a.y_mm <= y_mm <= a.y_mm + a.height_mm
    ]
    return min(holding)[1] if holding else ""


def scene_at(plan: Plan, x_mm: float, y_mm: float) -> str:
    """Return the id of the scene a point lies in; "" for none."""
    return area_at(plan.scenes.values(), x_mm, y_mm)


def panel_at(plan: Plan, x_mm: float, y_mm: float) -> str:
    """Return the id of the panel a point lies on; "" for none."""
    return area_at(plan.panels.values(), x_mm, y_mm)


def areas_after(old: Plan, new: Plan, before: Part, after: Part) -> tuple[str, str]:
    """Return the scene and panel of a part after it, or an area, was moved.

    A part whose scene was the one it stood in takes the one it stands in now; a part that was put into a
    scene by hand, away from where it stands, keeps it. So with panels.
    """
    scene, panel = after.scene, after.panel
    if before.scene == scene_at(old, before.x_mm, before.y_mm):
        scene = scene_at(new, after.x_mm, after.y_mm)
    if before.panel == panel_at(old, before.x_mm, before.y_mm):
        panel = panel_at(new, after.x_mm, after.y_mm)
    return scene, panel
