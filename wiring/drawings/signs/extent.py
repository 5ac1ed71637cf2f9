"""The rectangle a part's sign fills."""

from wiring.catalogue.kind import Kind
from wiring.drawings.signs.strip import strip_span
from wiring.plan.part import Part


def extent(kind: Kind, part: Part | None = None) -> tuple[float, float, float, float]:
    """Return (left, top, right, bottom) in mm about the part's centre, unturned, terminals included."""
    left, right = -kind.width_mm / 2, kind.width_mm / 2
    if kind.sign == "strip":
        left, right = strip_span(kind, part)
    xs = [left, right, *(t.x_mm for t in kind.terminals)]
    ys = [-kind.height_mm / 2, kind.height_mm / 2, *(t.y_mm for t in kind.terminals)]
    return min(xs), min(ys), max(xs), max(ys)
