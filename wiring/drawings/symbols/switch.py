"""Switch worked by hand: a contact with the bar of a manual control."""

from wiring.drawings.symbols.contact import Contact
from wiring.drawings.symbols.contact import element as contact


def element(state: str) -> Contact:
    """Return the contact with its bar."""
    symbol = contact(state)
    symbol.by_hand(legs=False)
    return symbol
