"""Whether typed words stand in a text, written with spaces and hyphens or without."""

import re
from collections.abc import Iterable

_JOINED = re.compile(r"[\s\-–—]+")


def says(text: str, word: str) -> bool:
    """Whether a word stands in a text, or begins a word of it once spaces and hyphens are left out of both.

    Both are to be case-folded; "warmwhite" is in "warm white", but "fuse" is not in "for us, of use".
    """
    return word in text or says_joined(text, word)


def says_joined(text: str, word: str) -> bool:
    """Whether words of a text begin with a word once spaces and hyphens are left out of both."""
    wanted = _JOINED.sub("", word)
    if not wanted:
        return False
    pieces = [piece for piece in _JOINED.split(text) if piece]
    joined, begins = "", []
    for piece in pieces:
        begins.append(len(joined))
        joined += piece
    return any(joined.startswith(wanted, at) for at in begins)


def says_all(text: str, words: Iterable[str]) -> bool:
    """Whether every one of those words stands in a text."""
    return all(says(text, word) for word in words)
