"""Push-button: a contact with the bar that a finger presses."""

from wiring.drawings.symbols.contact import Contact
from wiring.drawings.symbols.contact import element as contact


def element(state: str) -> Contact:
    """Return the contact with its button."""
    symbol = contact(state)
    symbol.by_hand(legs=True)
    return symbol
