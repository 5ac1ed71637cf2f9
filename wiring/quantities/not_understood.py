"""What is said when something typed cannot be read."""

from wiring.quantities.quantity import EXAMPLES, Quantity, name_of


class NotUnderstood(ValueError):  # noqa: N818 - named for what the user is told
    """Something typed that cannot be read; the message is one plain sentence for the user."""


def quoted(text: str) -> str:
    """Return what was typed in quotes, short and on one line."""
    shown = "".join(c if c.isprintable() else " " for c in text[:40]).strip()
    return f"“{shown}…”" if len(text.strip()) > len(shown) else f"“{shown}”"


def refusal(text: str, quantity: Quantity, why: str = "") -> NotUnderstood:
    """Return the exception for a text that is no value of the quantity; `why` goes in the middle."""
    example = f"type for example {EXAMPLES[quantity]}."
    if not text.strip():
        return NotUnderstood(f"Nothing was typed where {name_of(quantity)} is wanted; {example}")
    return NotUnderstood(f"{quoted(text)} {why or f'cannot be read as {name_of(quantity)}'}; {example}")
