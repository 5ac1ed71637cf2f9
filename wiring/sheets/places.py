"""In which place of the layout a part stands: its scene, its panel, or the open board."""

from wiring.drawings.plan_areas import panel_areas, scene_areas
from wiring.plan.part import Part
from wiring.plan.plan import Plan

ELSEWHERE = "Elsewhere on the board"


def place_name(plan: Plan, part: Part) -> str:
    """Return the name of the scene or panel a part belongs to, or of the one it lies in."""
    if part.scene in plan.scenes:
        return plan.scenes[part.scene].name
    if part.panel in plan.panels:
        return plan.panels[part.panel].name
    around = (*panel_areas(plan), *scene_areas(plan))
    return next((area.name for area in around if area.holds(part.x_mm, part.y_mm)), ELSEWHERE)


def place_order(plan: Plan) -> dict[str, int]:
    """Return in which order places are worked through: the open board, panels, then scenes as drawn."""
    names = [ELSEWHERE, *(a.name for a in panel_areas(plan)), *(a.name for a in scene_areas(plan))]
    order: dict[str, int] = {}
    for name in names:
        order.setdefault(name, len(order))
    return order
