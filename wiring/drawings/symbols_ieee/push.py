"""Push-button: a contact with the button over its blade."""

from schemdraw.segments import Segment

from wiring.drawings.symbols_ieee.contact import Ringed
from wiring.drawings.symbols_ieee.contact import element as contact


def element(state: str) -> Ringed:
    """Return the contact with its button."""
    symbol = contact(state)
    inner = 0.04 if "closed" in state else 0.15
    symbol.segments.append(Segment([(0.5, inner), (0.5, -0.45)]))
    symbol.segments.append(Segment([(0.32, -0.45), (0.68, -0.45)]))
    return symbol
