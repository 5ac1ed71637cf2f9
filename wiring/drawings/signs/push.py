"""A push button: a collar and a round cap that sinks when pressed."""

from wiring.catalogue.kind import Kind
from wiring.drawings.signs.hand import EDGE, FINE, State, box, dot
from wiring.pictures.picture import Item
from wiring.plan.part import Part


def push(kind: Kind, part: Part | None, state: State) -> tuple[Item, ...]:
    """Return the body, the collar and the cap."""
    del part
    s = min(kind.width_mm, kind.height_mm)
    pressed = state.position in ("pressed", "running")
    cap = s * (0.2 if pressed else 0.27)
    return (
        box((0, 0), kind.width_mm, kind.height_mm, corner_mm=s * 0.08, pen=EDGE),
        dot((0, 0), s * 0.4, pen=EDGE, fill="faint"),
        dot((0, 0), s * 0.3, pen=FINE, fill="paper"),
        dot((0, 0), cap, pen=FINE, fill="ink" if pressed else "copper"),
    )
