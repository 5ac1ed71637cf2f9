"""Flashing light: a lamp with a pulse beside it."""

from schemdraw.segments import Segment

from wiring.drawings.symbols import lamp
from wiring.drawings.symbols.body import Round


def pulse() -> Segment:
    """Return one pulse beside a symbol."""
    y = -0.85
    return Segment(
        [(0.75, y), (0.75, y + 0.1), (0.45, y + 0.1), (0.45, y + 0.2), (0.75, y + 0.2), (0.75, y + 0.3)]
    )


def element(state: str) -> Round:
    """Return the lamp with its pulse."""
    symbol = lamp.element(state)
    symbol.segments.append(pulse())
    return symbol
