"""One coil of a twin-coil machine: a winding with an arrow to what it throws."""

from schemdraw.elements import Inductor2
from schemdraw.segments import Segment


def element(state: str) -> Inductor2:
    """Return one of the two coils."""
    symbol = Inductor2(loops=5)
    symbol.segments.append(Segment([(0.5, -0.3), (0.5, -0.8)], arrow="->", arrowwidth=0.12, arrowlength=0.18))
    return symbol
