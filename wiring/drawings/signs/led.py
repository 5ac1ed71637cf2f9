"""A light-emitting diode: a dome in its colour, flat at the minus side."""

from wiring.catalogue.kind import Kind
from wiring.drawings.signs.hand import EDGE, State, dot, leads, line
from wiring.drawings.signs.lens_colours import lens_colour
from wiring.pictures.picture import NO_PEN, Item
from wiring.plan.part import Part


def led(kind: Kind, part: Part | None, state: State) -> tuple[Item, ...]:
    """Return the rim, the dome with its gleam, and the flat beside the K terminal."""
    del part, state
    r = min(kind.width_mm, kind.height_mm) / 2
    minus = next((t for t in kind.terminals if t.name == "K" or t.mark == "-"), None)
    side = 1.0 if minus is None or minus.x_mm >= 0 else -1.0
    return (
        *leads(kind, r * 0.9, 0.0),
        dot((0, 0), r, pen=EDGE, fill="raised"),
        dot((0, 0), r * 0.74, fill=lens_colour(kind)),
        dot((-r * 0.24, -r * 0.28), r * 0.2, pen=NO_PEN, fill="#ffffff", opacity=0.7),
        line((side * r * 0.9, -r * 0.42), (side * r * 0.9, r * 0.42), pen=EDGE._replace(width_mm=0.7)),
    )
