"""Which letters of a text the typeface of all sheets lacks, so that a box is printed instead."""

from wiring.pictures.typefaces import printable, typeface

NAMED = 3
LATIN = 0x250  # below it the typeface has every letter; tests hold it to that, and to the usual signs
USUAL = frozenset("Ω−–—‘’“”„…→≤≥№€")


def lacking(text: str) -> tuple[str, ...]:
    """Return the signs of a text that are printed as boxes, each once, in their order; () for most texts."""
    if text.isascii() or all(ord(sign) < LATIN or sign in USUAL for sign in text):
        return ()  # told without reading the typeface, which takes a moment the first time
    has = typeface().advances_em  # the cuts have the same letters
    return tuple(dict.fromkeys(sign for sign in printable(text) if ord(sign) not in has))


def lacking_words(text: str) -> str:
    """Return those signs as a sentence names them: ``“灯”, “塔” and 2 more``; "" where there are none."""
    signs = lacking(text)
    if not signs:
        return ""
    named = [f"“{sign}”" for sign in signs[:NAMED]]
    more = len(signs) - len(named)
    if more:
        return f"{', '.join(named)} and {more} more"
    return f"{', '.join(named[:-1])} and {named[-1]}" if len(named) > 1 else named[0]


def box_words(text: str) -> str:
    """Return the sentence for whoever types such a text; "" for one that is printed as it is."""
    named = lacking_words(text)
    return f"The sheets cannot print {named}; an empty box stands there on paper." if named else ""
