"""A diode: a dark barrel with a band at the side the current leaves."""

from wiring.catalogue.kind import Kind
from wiring.drawings.signs.hand import EDGE, State, box, leads
from wiring.pictures.picture import Item, Pen
from wiring.plan.part import Part


def diode(kind: Kind, part: Part | None, state: State) -> tuple[Item, ...]:
    """Return the barrel and its band beside the K terminal."""
    del part, state
    w, h = kind.width_mm, kind.height_mm
    a, b = w * 0.62, h * 0.62
    band_at = next((t.x_mm for t in kind.terminals if t.name == "K"), 1.0)
    side = 1.0 if band_at >= 0 else -1.0
    return (
        *leads(kind, a / 2, 0.0),
        box((0, 0), a, b, corner_mm=h * 0.06, pen=EDGE, fill="quiet"),
        box((side * a * 0.32, 0), a * 0.14, b, pen=Pen("ink", 0.2), fill="paper"),
    )
