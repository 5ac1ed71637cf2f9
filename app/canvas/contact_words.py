"""What a terminal of a contact is joined with, and when, in words: not all know its number."""

from wiring.catalogue.kind import Kind

MOST = 3  # the middle of a rotary switch goes to too many to name them all


def contact_words(kind: Kind | None, terminal: str) -> str:
    """Return ``to 12 at “normal”, to 14 at “reverse”``; "" for what is no contact, or has too many ways."""
    if kind is None:
        return ""
    ways = [
        (next(name for name in pair if name != terminal), position.name)
        for position in kind.positions
        for pair in position.closes
        if terminal in pair
    ]
    if not 0 < len(ways) <= MOST:
        return ""
    return ", ".join(f"to {other} at “{position}”" for other, position in ways)
