"""A stall motor: a case with a round motor in it and an arm that swings in a slot."""

import math

from wiring.catalogue.kind import Kind
from wiring.drawings.signs.hand import EDGE, FINE, State, box, dot, line, screw
from wiring.pictures.picture import Item, Pen
from wiring.plan.part import Part

_SWING = {"normal": -24.0, "reverse": 24.0}


def stall_motor(kind: Kind, part: Part | None, state: State) -> tuple[Item, ...]:
    """Return the case, the motor can and the arm, which leans the way the motor stands."""
    del part
    w, h = kind.width_mm, kind.height_mm
    s = min(w, h)
    angle = math.radians(_SWING.get(state.position, 0.0))
    foot = (0.0, h * 0.12)
    reach = h * 0.44
    tip = (foot[0] + reach * math.sin(angle), foot[1] - reach * math.cos(angle))
    screws = [screw((sx * (w / 2 - s * 0.1), h / 2 - s * 0.1), s * 0.055)[0] for sx in (-1, 1)]
    return (
        box((0, 0), w, h, corner_mm=s * 0.08, pen=EDGE),
        *screws,
        box((0, -h * 0.31), w * 0.62, s * 0.1, corner_mm=s * 0.05, pen=FINE, fill="faint"),
        dot((0, h * 0.14), s * 0.27, pen=FINE, fill="faint"),
        line(foot, tip, pen=Pen("ink", max(0.8, s * 0.05))),
        dot(foot, s * 0.06, pen=FINE, fill="paper"),
        dot(tip, s * 0.04, pen=FINE, fill="copper"),
    )
