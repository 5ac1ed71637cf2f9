"""Relay coil: the box of an electromechanical operating device."""

from wiring.drawings.symbols.body import Box


def element(state: str) -> Box:
    """Return the coil; its contacts stand in their own paths."""
    return Box(0.55)
