"""A relay: a box that shows its coil and the contact it throws."""

from wiring.catalogue.kind import Kind
from wiring.drawings.signs.hand import EDGE, FINE, State, box, dot, line
from wiring.pictures.picture import Item, Pen
from wiring.plan.part import Part


def relay(kind: Kind, part: Part | None, state: State) -> tuple[Item, ...]:
    """Return the case, the wound coil at one end and the arm of the contact at the other."""
    del part
    w, h = kind.width_mm, kind.height_mm
    operated = state.position == "operated"
    coil = (-w * 0.2, 0.0)
    coil_w, coil_h = w * 0.26, h * 0.5
    turns = [
        line(
            (coil[0] - coil_w / 2, coil_h * (i / 5 - 0.5)),
            (coil[0] + coil_w / 2, coil_h * (i / 5 - 0.5)),
            pen=Pen("copper", 0.35),
        )
        for i in range(1, 5)
    ]
    hinge = (w * 0.14, h * 0.2)
    tip = (w * 0.32, -h * 0.2 if operated else 0.0)
    return (
        box((0, 0), w, h, corner_mm=min(w, h) * 0.06, pen=EDGE),
        box(coil, coil_w, coil_h, pen=FINE, fill="faint"),
        *turns,
        line(hinge, tip, pen=Pen("ink", 0.6)),
        dot(hinge, 0.7, pen=FINE, fill="ink"),
        dot((w * 0.34, -h * 0.22), 0.7, pen=FINE, fill="paper"),
        dot((w * 0.36, h * 0.02), 0.7, pen=FINE, fill="paper"),
    )
