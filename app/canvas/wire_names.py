"""Colours of wires in words."""

from wiring.standards.colours import colour


def colour_name(letters: str) -> str:
    """Return ``red (RD)``; the letters alone when nobody knows them."""
    try:
        return f"{colour(letters).name} ({letters})"
    except (KeyError, ValueError):
        return letters
