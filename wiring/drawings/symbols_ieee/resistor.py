"""Resistor: a zigzag."""

from schemdraw.elements import ResistorIEEE


def element(state: str) -> ResistorIEEE:
    """Return the zigzag."""
    return ResistorIEEE()
