"""A servo: a slim case with ears and a horn on an off-centre shaft."""

import math

from wiring.catalogue.kind import Kind
from wiring.drawings.signs.hand import EDGE, FINE, State, box, dot, shape
from wiring.pictures.picture import Item
from wiring.plan.part import Part

_HORN = {"normal": -40.0, "reverse": 40.0}


def servo(kind: Kind, part: Part | None, state: State) -> tuple[Item, ...]:
    """Return the ears with their holes, the case, and the horn, which points the way the servo stands."""
    del part
    w, h = kind.width_mm, kind.height_mm
    body_w, ear_h = w * 0.72, h * 0.7
    shaft = (-body_w * 0.25, 0.0)
    angle = math.radians(_HORN.get(state.position, 0.0))
    reach, wide = h * 0.62, h * 0.11
    cos, sin = math.cos(angle), math.sin(angle)
    corners = ((-wide * 1.5, 0.0), (-wide * 0.7, -reach), (wide * 0.7, -reach), (wide * 1.5, 0.0))
    horn = [(shaft[0] + x * cos - y * sin, shaft[1] + x * sin + y * cos) for x, y in corners]
    holes = [
        dot((sx * (w / 2 - (w - body_w) / 4), 0), (w - body_w) * 0.1, pen=FINE, fill="paper")
        for sx in (-1, 1)
    ]
    return (
        box((0, 0), w, ear_h, corner_mm=h * 0.06, pen=EDGE, fill="faint"),
        *holes,
        box((0, 0), body_w, h, corner_mm=h * 0.06, pen=EDGE),
        dot(shaft, h * 0.3, pen=FINE, fill="faint"),
        shape(*horn, pen=FINE, fill="paper"),
        dot(shaft, wide * 1.6, pen=FINE, fill="paper"),
        dot(shaft, wide * 0.6, pen=FINE, fill="ink"),
    )
