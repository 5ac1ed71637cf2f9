"""Flashing light: a lamp with a pulse beside it."""

from schemdraw.elements import Lamp

from wiring.drawings.symbols.flasher import pulse
from wiring.drawings.symbols_ieee import lamp


def element(state: str) -> Lamp:
    """Return the lamp with its pulse."""
    symbol = lamp.element(state)
    symbol.segments.append(pulse())
    return symbol
