"""A slide switch: a slot and a ribbed knob at one of its ends."""

from wiring.catalogue.kind import Kind
from wiring.drawings.signs.hand import EDGE, FINE, State, box, line
from wiring.drawings.signs.toggle import lever_way
from wiring.pictures.picture import Item, Pen
from wiring.plan.part import Part


def slide(kind: Kind, part: Part | None, state: State) -> tuple[Item, ...]:
    """Return the plate, the slot along its longer side and the knob where it stands."""
    del part
    w, h = kind.width_mm, kind.height_mm
    upright = h > w
    long, wide = (h, w) if upright else (w, h)
    slot, knob = long * 0.6, long * 0.26
    along = lever_way(kind, state.position) * (slot - knob) / 2

    def at(u: float, v: float) -> tuple[float, float]:
        return (v, u) if upright else (u, v)

    def sized(u: float, v: float) -> tuple[float, float]:
        return (v, u) if upright else (u, v)

    ribs = [
        line(at(along + d * knob, -wide * 0.17), at(along + d * knob, wide * 0.17), pen=Pen("paper", 0.3))
        for d in (-0.22, 0.0, 0.22)
    ]
    return (
        box((0, 0), w, h, corner_mm=wide * 0.1, pen=EDGE),
        box((0, 0), *sized(slot, wide * 0.46), pen=FINE, fill="faint"),
        box(at(along, 0.0), *sized(knob, wide * 0.46), pen=FINE, fill="ink"),
        *ribs,
    )
