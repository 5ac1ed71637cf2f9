"""A part of the set of sheets: pages that belong together under one bookmark."""

from collections.abc import Sequence
from typing import NamedTuple

from wiring.pictures.picture import Anchor, Item, Picture
from wiring.pictures.transform import moved
from wiring.sheets.blocks import Block, page_count, paginated
from wiring.sheets.paper import Sheet

_TIGHTER = (0.96, 0.92, 0.88, 0.85)  # shares of its height text is tried at, the airiest first


class Leaf(NamedTuple):
    """One page before it knows its number: the sheet, what lies on it, and what its title block adds."""

    sheet: Sheet
    items: tuple[Item, ...]
    kind: str
    scale: str = ""
    side: str = ""
    bookmark: str = ""  # its own line of the outline, below that of its document


class Start(NamedTuple):
    """Where a document begins within its section: its line of the contents, and which leaf."""

    title: str
    anchor: str
    leaf: int


class Section(NamedTuple):
    """Pages that belong together; short documents that share their sheets each have a start of their own."""

    title: str
    anchor: str
    leaves: tuple[Leaf, ...]
    shared: tuple[Start, ...] = ()

    @property
    def starts(self) -> tuple[Start, ...]:
        """The documents in it, in their order."""
        return self.shared or (Start(self.title, self.anchor, 0),)


def text_section(
    title: str, anchor: str, sheet: Sheet, blocks: Sequence[Block], *, tightest: float = 1.0
) -> Section:
    """Return running text and tables, page after page.

    It may be set tighter, down to that share of its height, where this saves a page.
    """
    left, top, _, bottom = sheet.body
    pages = paginated(blocks, bottom - top, (left, top))
    for share in (s for s in _TIGHTER if s >= tightest):
        tight = [b._replace(height_mm=b.height_mm * share) for b in blocks]
        if page_count(tight, bottom - top) < len(pages):
            pages = paginated(tight, bottom - top, (left, top))
            break
    leaves = tuple(Leaf(sheet, page, title) for page in pages)
    return Section(title, anchor, leaves)


def picture_leaf(
    sheet: Sheet, picture: Picture, kind: str, *, anchor: str = "", scale: str = "", side: str = ""
) -> Leaf:
    """Return a page that holds one picture, set into the upper left corner of the body."""
    left, top, _, _ = sheet.body
    items = moved(picture.items, (left - picture.left_mm, top - picture.top_mm))
    mark: tuple[Item, ...] = (Anchor(anchor, (left, top)),) if anchor else ()
    return Leaf(sheet, (*mark, *items), kind, scale, side)


def body_size(sheet: Sheet) -> tuple[float, float]:
    """Return width and height of a sheet's body."""
    left, top, right, bottom = sheet.body
    return right - left, bottom - top
