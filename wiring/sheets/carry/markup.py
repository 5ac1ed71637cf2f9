"""HTML from plain calls: every text is escaped unless it is markup already."""

from collections.abc import Iterable
from html import escape

from wiring.pictures.typefaces import printable

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
    return tag("bdi", text)


def _attribute(key: str, value: str | bool) -> str:
    name = key.rstrip("_").replace("_", "-")
    return f" {name}" if value is True else f' {name}="{escape(printable(str(value)))}"'
