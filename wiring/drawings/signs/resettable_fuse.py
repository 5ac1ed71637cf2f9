"""A resettable fuse: a flat disc on two leads, with the bend of its curve; tripped, it darkens."""

from wiring.catalogue.kind import Kind
from wiring.drawings.signs.hand import EDGE, State, dot, leads, line
from wiring.pictures.picture import Item, Pen
from wiring.plan.part import Part


def resettable_fuse(kind: Kind, part: Part | None, state: State) -> tuple[Item, ...]:
    """Return the disc and its mark."""
    del part
    r = min(kind.width_mm, kind.height_mm) / 2
    tripped = state.position == "tripped"
    mark = Pen("paper" if tripped else "ink", max(0.4, r * 0.1))
    return (
        *leads(kind, r, 0.0),
        dot((0, 0), r, pen=EDGE, fill="quiet" if tripped else "raised"),
        line((-r * 0.6, r * 0.36), (-r * 0.1, r * 0.36), (r * 0.5, -r * 0.44), pen=mark),
    )
