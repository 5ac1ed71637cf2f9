"""Lamp: a circle with a cross."""

from schemdraw.segments import Segment

from wiring.drawings.symbols.body import Round


def element(state: str) -> Round:
    """Return the lamp."""
    symbol = Round()
    r = 0.5 / 2**0.5
    symbol.segments.append(Segment([(0.5 - r, -r), (0.5 + r, r)]))
    symbol.segments.append(Segment([(0.5 - r, r), (0.5 + r, -r)]))
    return symbol
