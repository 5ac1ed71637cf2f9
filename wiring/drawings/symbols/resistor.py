"""Resistor: a plain box."""

from schemdraw.elements import ResistorIEC


def element(state: str) -> ResistorIEC:
    """Return the box."""
    return ResistorIEC()
