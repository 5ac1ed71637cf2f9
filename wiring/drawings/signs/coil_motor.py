"""A twin-coil motor: two wound coils on one line and the iron that jumps between them."""

from wiring.catalogue.kind import Kind
from wiring.drawings.signs.hand import EDGE, FINE, State, box, line
from wiring.pictures.picture import Item, Pen
from wiring.plan.part import Part

_JUMP = {"normal": -1.0, "reverse": 1.0}


def coil_motor(kind: Kind, part: Part | None, state: State) -> tuple[Item, ...]:
    """Return the base plate, both coils, and the iron on the side of the motor's position."""
    del part
    w, h = kind.width_mm, kind.height_mm
    coil_w, coil_h = w * 0.30, h * 0.52
    shift = _JUMP.get(state.position, 0.0) * w * 0.07
    items: list[Item] = [
        box((0, 0), w, h * 0.9, corner_mm=h * 0.06, pen=EDGE),
        box((shift, 0), w * 0.8, h * 0.16, pen=FINE, fill="quiet"),
    ]
    for side in (-1.0, 1.0):
        x = side * w * 0.25
        items.append(box((x, 0), coil_w, coil_h, corner_mm=h * 0.04, pen=EDGE, fill="faint"))
        for turn in range(1, 6):
            u = x - coil_w / 2 + coil_w * turn / 6
            items.append(line((u, -coil_h / 2), (u, coil_h / 2), pen=Pen("copper", max(0.3, w * 0.012))))
    items.append(line((shift, -h * 0.08), (shift, -h * 0.4), pen=Pen("ink", max(0.6, w * 0.02))))
    return tuple(items)
