"""A filament lamp: a clear bulb with its coiled wire."""

from wiring.catalogue.kind import Kind
from wiring.drawings.signs.hand import EDGE, State, dot, leads
from wiring.pictures.picture import Item, Path, Pen
from wiring.plan.part import Part


def filament(kind: Kind, part: Part | None, state: State) -> tuple[Item, ...]:
    """Return the bulb and the coil of wire, which glows when the lamp is lit."""
    del part
    r = min(kind.width_mm, kind.height_mm) / 2
    lit = state.lightness is not None and state.lightness >= 1.0
    n, width, high = 3, r * 1.0, r * 0.55
    step = width / (3 * n)
    points = [(-width / 2, 0.0)]
    for turn in range(n):
        x = -width / 2 + 3 * step * turn
        up = -high if turn % 2 == 0 else high
        points += [(x + step * 0.6, up), (x + step * 2.4, up), (x + 3 * step, 0.0)]
    return (
        *leads(kind, r, 0.0),
        dot((0, 0), r, pen=EDGE, fill="lit" if lit else "raised"),
        dot((0, 0), r * 0.78, pen=Pen("quiet", 0.15)),
        Path(tuple(points), Pen("copper", max(0.25, r * 0.12)), smooth=True),
    )
