"""One coil of a twin-coil machine: the box of an operating coil with an arrow to what it throws."""

from schemdraw.segments import Segment

from wiring.drawings.symbols.body import Box


def element(state: str) -> Box:
    """Return one of the two coils."""
    symbol = Box(0.42)
    symbol.segments.append(
        Segment([(0.5, -0.42), (0.5, -0.85)], arrow="->", arrowwidth=0.12, arrowlength=0.18)
    )
    symbol.segments.append(Segment([(0.25, -0.14), (0.25, 0.14), (0.75, 0.14), (0.75, -0.14)]))
    return symbol
