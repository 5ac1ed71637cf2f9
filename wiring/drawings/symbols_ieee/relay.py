"""Relay coil: the loops of a winding."""

from schemdraw.elements import Inductor2


def element(state: str) -> Inductor2:
    """Return the coil; its contacts stand in their own paths."""
    return Inductor2(loops=5)
