"""Places on the face of a panel: from the plan to the face and back, and onto its spacing."""

from collections.abc import Iterable, Mapping

from wiring.catalogue.kind import Kind
from wiring.plan.names import PanelId
from wiring.plan.panel import Panel
from wiring.plan.part import Part
from wiring.plan.places import Point
from wiring.plan.plan import Plan


def to_face(panel: Panel, at: Point) -> Point:
    """Return a place of the plan in mm from the face's upper left corner, seen from the front."""
    return at[0] - panel.x_mm, at[1] - panel.y_mm


def from_face(panel: Panel, at: Point) -> Point:
    """Return a place of the face in plan mm."""
    return at[0] + panel.x_mm, at[1] + panel.y_mm


def holds(panel: Panel, x_mm: float, y_mm: float) -> bool:
    """Return whether a place of the plan lies on a face."""
    right, bottom = panel.x_mm + panel.width_mm, panel.y_mm + panel.height_mm
    return panel.x_mm <= x_mm <= right and panel.y_mm <= y_mm <= bottom


def panel_under(panels: Iterable[Panel], at: Point) -> Panel | None:
    """Return the smallest panel under a place of the plan; None beside all of them."""
    under = [p for p in panels if holds(p, *at)]
    return min(under, key=lambda p: p.width_mm * p.height_mm, default=None)


def on_spacing(at: Point, spacing_mm: float) -> Point:
    """Return the nearest place of a face that is a whole number of spacings from its upper left corner."""
    if spacing_mm <= 0:
        return at
    return round(at[0] / spacing_mm) * spacing_mm, round(at[1] / spacing_mm) * spacing_mm


def of_panel(plan: Plan, panel: Panel) -> tuple[Part, ...]:
    """Return the parts that belong to a panel: put on it, or lying on its face and put on no other."""
    return tuple(
        p
        for p in plan.parts.values()
        if p.panel == panel.id or (not p.panel and holds(panel, p.x_mm, p.y_mm))
    )


def plugs_of(plan: Plan, kinds: Mapping[str, Kind], panel_id: PanelId) -> tuple[Part, ...]:
    """Return the plugs by which a panel's wires come out, in plan order."""
    return tuple(
        p
        for p in plan.parts.values()
        if p.panel == panel_id and p.kind in kinds and kinds[p.kind].behaviour == "pairs"
    )
