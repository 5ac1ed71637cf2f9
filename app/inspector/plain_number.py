"""Reads a number without a unit, whole or not, as people write it."""

import re

LARGEST = 1e9


def plain_number(text: str) -> float:
    """Return the number; ValueError with one plain sentence for what is none, or could mean two."""
    from wiring.quantities.numbers import NUMBER, number, tidied, two_ways

    typed = tidied(text)
    if two_ways(typed):
        raise ValueError(f"“{text[:40]}” can be read in two ways; write it without the separator.")
    try:
        if not re.fullmatch(NUMBER, typed):
            raise ValueError
        value = number(typed)
        if value > LARGEST:
            raise ValueError
    except ValueError:
        raise ValueError(f"“{text[:40]}” cannot be read as a number; type for example 2.5.") from None
    return value
