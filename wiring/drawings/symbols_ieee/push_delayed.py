"""Push-button whose contact falls back late: the bow of a delay on the button's stem."""

from schemdraw.segments import Segment

from wiring.drawings.symbols.push_delayed import bow
from wiring.drawings.symbols_ieee.contact import Ringed
from wiring.drawings.symbols_ieee.push import element as push


def element(state: str) -> Ringed:
    """Return the contact with its button and the bow (IEEE 315, from memory)."""
    symbol = push(state)
    symbol.segments.append(Segment(bow()))
    return symbol
