"""Push-button whose contact falls back late: the bow on its stem is open towards the way that is delayed."""

import math

from schemdraw.segments import Segment

from wiring.drawings.symbols.contact import Contact
from wiring.drawings.symbols.push import element as push

BOW_RADIUS, BOW_AT = 0.12, -0.06
ANGLES = [math.radians(a) for a in range(180, 361, 15)]


def element(state: str) -> Contact:
    """Return the contact with its button and the bow of a delay (IEC 60617, from memory)."""
    symbol = push(state)
    symbol.segments.append(Segment(bow()))
    return symbol


def bow() -> list[tuple[float, float]]:
    """Return the half circle across the stem of a button."""
    return [(0.5 + BOW_RADIUS * math.cos(a), BOW_AT + BOW_RADIUS * math.sin(a)) for a in ANGLES]
