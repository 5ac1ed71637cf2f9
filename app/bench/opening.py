"""Which panel is meant to be laid on the bench: under the pointer, or by what is selected."""

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtGui import QMouseEvent

from wiring.plan.panel_places import panel_under
from wiring.plan.plan import Plan

if TYPE_CHECKING:
    from app.canvas.view import PlanView


def panel_at_pointer(plan: Plan, view: "PlanView", event: QMouseEvent) -> str:
    """Return the panel whose name, edge or bare face a double click hits; "" for none."""
    if event.button() != Qt.MouseButton.LeftButton or view.is_busy:
        return ""
    hit = view.hit_at(event.position().x(), event.position().y())
    if hit.area in plan.panels:
        return hit.area
    if hit.id or hit.terminal is not None or hit.handle or hit.area or hit.way:
        return ""
    panel = panel_under(plan.panels.values(), hit.at)
    return panel.id if panel is not None else ""


def panel_of_selection(plan: Plan, ids: frozenset[str]) -> str:
    """Return the panel all the selected parts sit on; without a selection the only panel; "" for none."""
    panels = {plan.parts[i].panel for i in ids if i in plan.parts}
    if not ids and len(plan.panels) == 1:
        return next(iter(plan.panels))
    return panels.pop() if len(panels) == 1 else ""
