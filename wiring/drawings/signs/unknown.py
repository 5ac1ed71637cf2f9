"""A part of a kind this program does not know: an empty outline with a cross."""

from wiring.catalogue.kind import Kind
from wiring.drawings.signs.hand import FINE, State, box, line
from wiring.pictures.picture import Item, Pen
from wiring.plan.part import Part


def unknown(kind: Kind, part: Part | None, state: State) -> tuple[Item, ...]:
    """Return the dashed outline."""
    del part, state
    a, b = kind.width_mm / 2, kind.height_mm / 2
    return (
        box((0, 0), 2 * a, 2 * b, pen=Pen("ink", 0.4, (1.6, 1.0))),
        line((-a, -b), (a, b), pen=FINE),
        line((-a, b), (a, -b), pen=FINE),
    )
