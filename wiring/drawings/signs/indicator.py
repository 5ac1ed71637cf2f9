"""A panel indicator: a lens in a bright bezel."""

from wiring.catalogue.kind import Kind
from wiring.drawings.signs.hand import EDGE, FINE, State, dot, leads, line
from wiring.drawings.signs.lens_colours import lens_colour
from wiring.pictures.picture import Item, Pen
from wiring.plan.part import Part


def indicator(kind: Kind, part: Part | None, state: State) -> tuple[Item, ...]:
    """Return the bezel in two rings and the lens, cut like a jewel so that it differs from a bare LED."""
    del part, state
    r = min(kind.width_mm, kind.height_mm) / 2
    cut = Pen("paper", max(0.2, r * 0.07))
    return (
        *leads(kind, r, 0.0),
        dot((0, 0), r, pen=EDGE, fill="faint"),
        dot((0, 0), r * 0.8, pen=FINE, fill="paper"),
        dot((0, 0), r * 0.62, pen=FINE, fill=lens_colour(kind)),
        line((-r * 0.36, 0), (r * 0.36, 0), pen=cut),
        line((0, -r * 0.36), (0, r * 0.36), pen=cut),
    )
