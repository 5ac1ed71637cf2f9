"""A direct-current supply: a case with cooling fins and a lead from the adapter."""

from wiring.catalogue.kind import Kind
from wiring.drawings.signs.hand import EDGE, FINE, State, box, line
from wiring.pictures.picture import Item, Pen
from wiring.plan.part import Part


def case(kind: Kind) -> tuple[Item, ...]:
    """Return the case with a label plate, as every mains-side supply has it."""
    w, h = kind.width_mm, kind.height_mm
    return (
        box((0, 0), w, h, corner_mm=min(w, h) * 0.1, pen=EDGE),
        box((w * 0.1, 0), w * 0.36, h * 0.44, corner_mm=min(w, h) * 0.03, pen=FINE, fill="paper"),
    )


def supply(kind: Kind, part: Part | None, state: State) -> tuple[Item, ...]:
    """Return the case, its fins at the far end from the label, and two bars: direct current."""
    del part, state
    w, h = kind.width_mm, kind.height_mm
    fin = Pen("quiet", max(0.5, w * 0.012))
    fins = [
        line((-w * 0.42 + w * 0.055 * i, -h * 0.34), (-w * 0.42 + w * 0.055 * i, h * 0.34), pen=fin)
        for i in range(6)
    ]
    x, s = w * 0.1, min(w * 0.2, h * 0.24)
    bold = Pen("ink", max(0.5, s * 0.1))
    dashes = [
        line((x - s + s * i * 0.8, s * 0.22), (x - s + s * (i * 0.8 + 0.45), s * 0.22), pen=bold)
        for i in range(3)
    ]
    return *case(kind), *fins, line((x - s, -s * 0.22), (x + s, -s * 0.22), pen=bold), *dashes
