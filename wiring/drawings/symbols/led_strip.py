"""Strip of light-emitting diodes: a long box with one of its diodes inside."""

from schemdraw.segments import Segment, SegmentPoly

from wiring.drawings.symbols.body import Box, rays


def element(state: str) -> Box:
    """Return the strip."""
    symbol = Box(0.3)
    symbol.segments.append(SegmentPoly([(0.32, 0.16), (0.62, 0), (0.32, -0.16)]))
    symbol.segments.append(Segment([(0.62, -0.16), (0.62, 0.16)]))
    symbol.segments.append(Segment([(0, 0), (1, 0)]))
    symbol.segments.extend(rays(0.3, -0.36, 0.22))
    return symbol
