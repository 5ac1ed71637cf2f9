"""Servo: a motor in a box with its electronics."""

from schemdraw.segments import Segment, SegmentCircle, SegmentText

from wiring.drawings.symbols.body import Box


def element(state: str) -> Box:
    """Return the servo."""
    symbol = Box(0.5)
    symbol.segments.append(SegmentCircle((0.42, 0), 0.3))
    symbol.segments.append(SegmentText((0.42, 0), "M", align=("center", "center"), fontsize=7))
    symbol.segments.append(Segment([(0.84, -0.32), (0.84, 0.32)], lw=3))
    return symbol
