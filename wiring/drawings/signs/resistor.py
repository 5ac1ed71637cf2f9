"""A resistor: a waisted body with bands on two leads."""

from wiring.catalogue.kind import Kind
from wiring.drawings.signs.hand import EDGE, State, leads, line
from wiring.pictures.picture import Item, Path, Pen
from wiring.plan.part import Part


def resistor(kind: Kind, part: Part | None, state: State) -> tuple[Item, ...]:
    """Return the body with three bands and one apart."""
    del part, state
    w, h = kind.width_mm, kind.height_mm
    a, b = w * 0.34, min(h * 0.46, w * 0.18)
    outline: list[tuple[float, float]] = [(-a, -b * 0.7)]
    for step in (
        ((-a, -b), (-a * 0.72, -b * 1.1), (-a * 0.5, -b * 0.72)),
        ((-a * 0.2, -b * 0.66), (a * 0.2, -b * 0.66), (a * 0.5, -b * 0.72)),
        ((a * 0.72, -b * 1.1), (a, -b), (a, -b * 0.7)),
        ((a * 1.04, -b * 0.3), (a * 1.04, b * 0.3), (a, b * 0.7)),
        ((a, b), (a * 0.72, b * 1.1), (a * 0.5, b * 0.72)),
        ((a * 0.2, b * 0.66), (-a * 0.2, b * 0.66), (-a * 0.5, b * 0.72)),
        ((-a * 0.72, b * 1.1), (-a, b), (-a, b * 0.7)),
        ((-a * 1.04, b * 0.3), (-a * 1.04, -b * 0.3), (-a, -b * 0.7)),
    ):
        outline += step
    band = Pen("quiet", max(0.4, w * 0.045))
    bands = [line((x * a, -b * 0.62), (x * a, b * 0.62), pen=band) for x in (-0.4, -0.12, 0.16)]
    apart = line((a * 0.74, -b * 0.8), (a * 0.74, b * 0.8), pen=Pen("copper", max(0.4, w * 0.045)))
    return (
        *leads(kind, a, 0.0),
        Path(tuple(outline), EDGE, "raised", closed=True, smooth=True),
        *bands,
        apart,
    )
