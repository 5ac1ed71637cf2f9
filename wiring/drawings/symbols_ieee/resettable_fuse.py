"""Resettable fuse: a resistor that rises with heat, a zigzag with a slanting stroke."""

from schemdraw.elements import ResistorIEEE
from schemdraw.segments import Segment


def element(state: str) -> ResistorIEEE:
    """Return the temperature-dependent resistor."""
    symbol = ResistorIEEE()
    symbol.segments.append(Segment([(0, -0.45), (0.2, -0.45), (0.85, 0.45)]))
    return symbol
