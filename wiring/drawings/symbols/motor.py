"""Direct-current motor: a circle with M and the sign of direct current."""

from schemdraw.segments import Segment, SegmentText

from wiring.drawings.symbols.body import Round


def element(state: str) -> Round:
    """Return the motor."""
    symbol = Round()
    symbol.segments.append(SegmentText((0.47, 0), "M", align=("center", "center"), fontsize=9))
    for row in (0.72, 0.78):
        symbol.segments.append(Segment([(row, -0.14), (row, 0.14)]))
    return symbol
