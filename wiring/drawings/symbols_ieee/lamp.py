"""Lamp: a circle with a loop of filament."""

from schemdraw.elements import Lamp


def element(state: str) -> Lamp:
    """Return the lamp."""
    return Lamp()
