"""In which place of the layout a part stands: its scene, its panel, or the open board."""

from wiring.plan.part import Part
from wiring.plan.plan import Plan

ELSEWHERE = "Elsewhere on the board"


def place_name(plan: Plan, part: Part) -> str:
    """Return the name of the scene or panel a part belongs to, or of the one it lies in."""
    if part.scene in plan.scenes:
        return plan.scenes[part.scene].name
    if part.panel in plan.panels:
        return plan.panels[part.panel].name
    for place in (*plan.panels.values(), *plan.scenes.values()):
        if (
            place.x_mm <= part.x_mm <= place.x_mm + place.width_mm
            and place.y_mm <= part.y_mm <= place.y_mm + place.height_mm
        ):
            return place.name
    return ELSEWHERE


def place_order(plan: Plan) -> dict[str, int]:
    """Return in which order places are worked through: the open board, panels, then scenes as drawn."""
    names = [ELSEWHERE, *(p.name for p in plan.panels.values()), *(s.name for s in plan.scenes.values())]
    order: dict[str, int] = {}
    for name in names:
        order.setdefault(name, len(order))
    return order
