"""What a sheet's text is made of: blocks of known height, and how they fill page after page."""

from collections.abc import Sequence
from typing import NamedTuple

from wiring.pictures.metrics import LINE_EM, fitted, wrapped
from wiring.pictures.picture import Anchor, Item, Point, Words
from wiring.pictures.transform import moved

BODY_MM = 3.4
LIST_MM = 3.2
SMALL_MM = 2.9
_OVER_MM = 3.4


class Block(NamedTuple):
    """Items from (0, 0) down; a block of a table brings the header that a new page repeats."""

    height_mm: float
    items: tuple[Item, ...]
    keep_next: bool = False  # never the last on a page
    header: "tuple[Item, ...]" = ()
    header_mm: float = 0.0
    joined: tuple[Item, ...] = ()  # of a row that goes on: the items where both its parts are on one page
    over: str | None = None  # of a heading: the line over its table where that goes on, "" for none


def heading(text: str, width: float, *, anchor: str = "", level: int = 1) -> Block:
    """Return a heading that stays with what follows it."""
    size = {1: 6.0, 2: 4.4}.get(level, 3.8)
    weight = "bold" if level == 1 else "semibold"
    lead = {1: 0.5, 2: 4.0}.get(level, 2.5)
    lines = wrapped(text, width, size, weight)
    step = size * LINE_EM
    items: list[Item] = [
        Words(line, (0.0, lead + size * 0.8 + i * step), size, weight=weight)  # type: ignore[arg-type]
        for i, line in enumerate(lines)
    ]
    if anchor:
        items.append(Anchor(anchor, (0.0, 0.0)))
    over = fitted(f"{text}, continued", width, _OVER_MM, "semibold") if level > 1 else ""
    return Block(lead + step * len(lines) + 1.6, tuple(items), keep_next=True, over=over)


def paragraph(
    text: str,
    width: float,
    *,
    size_mm: float = BODY_MM,
    colour: str = "ink",
    after_mm: float = 2.2,
    leads: bool = False,
) -> tuple[Block, ...]:
    """Return running text, one block a line, so that a page may end inside it unless it leads a table."""
    step = size_mm * 1.35
    lines = wrapped(text, width, size_mm)
    blocks = [Block(step, (Words(line, (0.0, size_mm * 0.95), size_mm, colour),)) for line in lines]
    blocks[0] = blocks[0]._replace(keep_next=len(lines) > 1)
    blocks[-1] = blocks[-1]._replace(height_mm=step + after_mm)
    return tuple(b._replace(keep_next=True) for b in blocks) if leads else tuple(blocks)


def bullets(texts: Sequence[str], width: float, *, size_mm: float = BODY_MM) -> tuple[Block, ...]:
    """Return a list with a dash before each text; each text stays whole."""
    step, indent = size_mm * 1.35, 5.0
    blocks: list[Block] = []
    for text in texts:
        lines = wrapped(text, width - indent, size_mm)
        items: list[Item] = [Words("–", (0.8, size_mm * 0.95), size_mm, "copper", "bold")]
        items += [Words(line, (indent, size_mm * 0.95 + i * step), size_mm) for i, line in enumerate(lines)]
        blocks.append(Block(step * len(lines) + 0.9, tuple(items)))
    return tuple(blocks)


def gap(height_mm: float) -> Block:
    """Return empty paper."""
    return Block(height_mm, ())


class LaidPage(NamedTuple):
    """One page of text: what lies on it, and the number of its first block."""

    items: tuple[Item, ...]
    first: int


_Low = tuple[float, tuple[Item, ...]]  # how far down some items stand


def paginated(
    blocks: Sequence[Block], height_mm: float, corner: Point = (0.0, 0.0)
) -> tuple[tuple[Item, ...], ...]:
    """Return the items of each page; see `laid_out`."""
    return tuple(page.items for page in laid_out(blocks, height_mm, corner))


def laid_out(blocks: Sequence[Block], height_mm: float, corner: Point = (0.0, 0.0)) -> tuple[LaidPage, ...]:
    """Return the pages, their items from the upper left corner of the text; tables repeat their header.

    A table that goes on from an earlier page names its heading again. A block higher than a page gets a
    page of its own. Headings never end a page.
    """
    return tuple(
        LaidPage(tuple(item for y, items in page for item in moved(items, (corner[0], corner[1] + y))), first)
        for page, first in _placed(blocks, height_mm)
    )


def page_count(blocks: Sequence[Block], height_mm: float) -> int:
    """Return how many pages the blocks take."""
    return len(_placed(blocks, height_mm))


def _placed(blocks: Sequence[Block], height_mm: float) -> list[tuple[list[_Low], int]]:
    """Return what stands how far down on each page, and the number of its first block."""
    pages: list[tuple[list[_Low], int]] = [([], 0)]
    y = 0.0
    open_header: tuple[Item, ...] = ()
    over = ""
    i = 0
    while i < len(blocks):
        group = [blocks[i]]
        while group[-1].keep_next and i + len(group) < len(blocks):
            group.append(blocks[i + len(group)])
        need = _needed(group, open_header)
        fresh = not y  # nothing stands on the page yet but the name of a table that goes on
        if y and y + need > height_mm + 1e-6 and any(b.items for b in group):
            pages.append(([], i))
            y, fresh = 0.0, True
            if over and group[0].header and group[0].header is open_header:
                pages[-1][0].append((0.0, (Words(over, (0.0, _OVER_MM), _OVER_MM, "quiet", "semibold"),)))
                y = _OVER_MM * LINE_EM + 1.0
            open_header = ()
        page = pages[-1][0]
        for block in group:
            over = over if block.over is None else block.over
            if block.header and block.header is not open_header:
                page.append((y, block.header))
                y += block.header_mm
            open_header = block.header
            if not (y == 0.0 and not block.items):  # empty paper is not carried over to a new page
                page.append((y, block.joined if block.joined and not fresh else block.items))
                y += block.height_mm
                fresh = False
        i += len(group)
    return pages


def _needed(group: Sequence[Block], open_header: tuple[Item, ...]) -> float:
    need = 0.0
    for block in group:
        if block.header and block.header is not open_header:
            need += block.header_mm
        open_header = block.header
        need += block.height_mm
    return need
