"""Fuse: a box with the wire running through it."""

from schemdraw.segments import Segment

from wiring.drawings.symbols.body import Box


def element(state: str) -> Box:
    """Return the fuse; blown, its wire is gone from the middle."""
    symbol = Box(0.2)
    runs = [(0.0, 0.3), (0.7, 1.0)] if state == "blown" else [(0.0, 1.0)]
    for start, end in runs:
        symbol.segments.append(Segment([(start, 0), (end, 0)]))
    return symbol
