"""Push-button contact: a contact with the bar that a finger presses."""

from schemdraw.segments import Segment

from wiring.drawings.symbols.switch import Contact
from wiring.drawings.symbols.switch import element as contact


def element(state: str) -> Contact:
    """Return the contact with its button."""
    symbol = contact(state)
    inner = 0.0 if "closed" in state else 0.15
    symbol.segments.append(Segment([(0.5, inner), (0.5, -0.5)], ls="--"))
    symbol.segments.append(Segment([(0.36, -0.42), (0.36, -0.5), (0.64, -0.5), (0.64, -0.42)]))
    return symbol
