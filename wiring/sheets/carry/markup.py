"""HTML from plain calls: every text is escaped unless it is markup already."""

import re
from collections.abc import Iterable
from html import escape

from wiring.pictures.typefaces import printable

# "-X1:3" as a word of its own, short enough for the narrowest screen
_DESIGNATION = re.compile(r"(?<!\S)(-[^\s<>]{1,18})(?!\S)")
_VOID = frozenset({"input", "meta", "br"})


class Markup(str):
    """Text that is HTML already."""

    __slots__ = ()


def tag(name: str, *children: str, **attributes: str | bool) -> Markup:
    """Return an element; ``data_find`` becomes ``data-find``, ``class_`` loses its line, True is a bare name.

    Attributes that are False are left out; control and format characters never come through.
    """
    said = "".join(_attribute(key, value) for key, value in attributes.items() if value is not False)
    if name in _VOID:
        return Markup(f"<{name}{said}>")
    return Markup(f"<{name}{said}>{joined(children)}</{name}>")


def joined(children: Iterable[str]) -> Markup:
    """Return the children one after another, escaped where they are plain text."""
    return Markup("".join(c if isinstance(c, Markup) else escape(printable(c)) for c in children))


def own(text: str) -> Markup:
    """Return words of the user's own, set apart so that their writing direction turns nothing else."""
    return tag(
        "bdi", *(tag("span", word, class_="whole") if word.startswith("-") else word for word in _words(text))
    )


def _words(text: str) -> list[str]:
    """Return the text cut about its designations, which are not broken behind their minus sign."""
    return [word for word in _DESIGNATION.split(text) if word]


def _attribute(key: str, value: str | bool) -> str:
    name = key.rstrip("_").replace("_", "-")
    return f" {name}" if value is True else f' {name}="{escape(printable(str(value)))}"'
