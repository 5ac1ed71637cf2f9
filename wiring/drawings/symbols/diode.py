"""Diode, anode first."""

from schemdraw.elements import Diode


def element(state: str) -> Diode:
    """Return the diode."""
    return Diode()
