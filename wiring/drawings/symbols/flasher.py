"""Flashing light: a lamp with a pulse beside it."""

from schemdraw.segments import Segment

from wiring.drawings.symbols import lamp
from wiring.drawings.symbols.body import Round


def element(state: str) -> Round:
    """Return the lamp with its pulse."""
    symbol = lamp.element(state)
    y = -0.85
    symbol.segments.append(
        Segment(
            [(0.75, y), (0.75, y + 0.1), (0.45, y + 0.1), (0.45, y + 0.2), (0.75, y + 0.2), (0.75, y + 0.3)]
        )
    )
    return symbol
