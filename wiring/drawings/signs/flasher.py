"""A flasher unit: a small board that carries the sign of a pulse."""

from wiring.catalogue.kind import Kind
from wiring.drawings.signs.hand import FINE, State, box, line
from wiring.drawings.signs.module import board
from wiring.pictures.picture import Item, Pen
from wiring.plan.part import Part


def flasher(kind: Kind, part: Part | None, state: State) -> tuple[Item, ...]:
    """Return the board with two pulses on a label."""
    del part, state
    s = min(kind.width_mm, kind.height_mm) * 0.62
    w, t = s * 1.2, s * 0.2
    pulses = line(
        (-w * 0.42, t),
        (-w * 0.25, t),
        (-w * 0.25, -t),
        (-w * 0.05, -t),
        (-w * 0.05, t),
        (w * 0.15, t),
        (w * 0.15, -t),
        (w * 0.35, -t),
        (w * 0.35, t),
        (w * 0.42, t),
        pen=Pen("ink", max(0.3, s * 0.05)),
    )
    return *board(kind), box((0, 0), w, s * 0.8, corner_mm=s * 0.1, pen=FINE, fill="paper"), pulses
