"""Battery of cells: long plate plus, short plate minus."""

from schemdraw.elements import Battery


def element(state: str) -> Battery:
    """Return the battery, plus first."""
    return Battery()
