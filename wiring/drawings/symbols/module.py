"""Electronic module: a box with two leads and a mark of electronics inside."""

from schemdraw.segments import Segment

from wiring.drawings.symbols.body import Box


def element(state: str) -> Box:
    """Return the box."""
    symbol = Box(0.42)
    symbol.segments.append(Segment([(0.36, -0.2), (0.36, 0.2)], lw=3))
    symbol.segments.append(Segment([(0.36, -0.1), (0.62, -0.22)]))
    symbol.segments.append(Segment([(0.36, 0.1), (0.62, 0.22)]))
    return symbol
