"""Places on a panel that has a spacing of its own: pulled onto that instead of the plan's grid."""

from app.canvas.gestures.pointer import Around
from app.canvas.gestures.snapping import Snapped
from wiring.plan.panel_places import from_face, on_spacing, panel_under, to_face
from wiring.plan.places import Point


def snapped_on_panel(around: Around, at: Point) -> Snapped | None:
    """Return the place on the spacing of the panel that lies there; None where there is none."""
    panel = panel_under(around.plan.panels.values(), at) if around.plan.panels else None
    if panel is None or not panel.spacing_mm:
        return None
    return Snapped(from_face(panel, on_spacing(to_face(panel, at), panel.spacing_mm)))
