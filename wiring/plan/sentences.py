"""Sentences for the user that quote what stands in a file or was typed, kept readable whatever that is."""

LONGEST = 320
_END = 120  # of a sentence that is too long: the end says what to do


def one_line(sentence: str) -> str:
    """Return a sentence on one line: odd characters become spaces, an overlong middle is left out."""
    text = " ".join("".join(c if c.isprintable() else " " for c in sentence).split())
    if len(text) <= LONGEST:
        return text
    return f"{text[: LONGEST - _END - 3]} … {text[-_END:]}"


def after_colon(sentence: str) -> str:
    """Return a sentence the way it goes on after a colon: its first word small, unless that is a name."""
    first = sentence.split(" ", 1)[0]
    return sentence[0].lower() + sentence[1:] if first.isalpha() and first.istitle() else sentence
