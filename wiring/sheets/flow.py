"""Short lists that follow each other share their sheets where this saves one."""

from collections.abc import Sequence
from typing import NamedTuple

from wiring.sheets.blocks import Block, gap, laid_out, page_count
from wiring.sheets.paper import Sheet
from wiring.sheets.section import Leaf, Section, Start

_BETWEEN_MM = 5.0
_TIGHTER = (0.96, 0.92)
_SHORT = 2  # pages; a longer list begins on a sheet of its own


class Text(NamedTuple):
    """A document of running text and tables."""

    title: str
    anchor: str
    blocks: tuple[Block, ...]


def flowed(texts: Sequence[Text], sheet: Sheet) -> tuple[Section, ...]:
    """Return the documents as sections, in their order."""
    groups: list[list[Text]] = []
    for text in (t for t in texts if t.blocks):
        if groups and _saves(groups[-1], text, sheet):
            groups[-1].append(text)
        else:
            groups.append([text])
    return tuple(_section(group, sheet) for group in groups)


def _saves(group: Sequence[Text], text: Text, sheet: Sheet) -> bool:
    here, more = _pages(group, sheet), _pages([text], sheet)
    return more <= _SHORT and _pages([*group, text], sheet) < here + more


def _pages(group: Sequence[Text], sheet: Sheet) -> int:
    return page_count(_joined(group)[0], _height(sheet))


def _height(sheet: Sheet) -> float:
    return sheet.body[3] - sheet.body[1]


def _joined(group: Sequence[Text]) -> tuple[list[Block], list[int]]:
    """Return the blocks one after the other, and at which each document begins."""
    blocks: list[Block] = []
    begins: list[int] = []
    for text in group:
        if blocks:
            blocks.append(gap(_BETWEEN_MM))
        begins.append(len(blocks))
        blocks += text.blocks
    return blocks, begins


def _section(group: Sequence[Text], sheet: Sheet) -> Section:
    left, top, _, _ = sheet.body
    blocks, begins = _joined(group)
    pages = laid_out(blocks, _height(sheet), (left, top))
    for share in _TIGHTER if len(pages) > 1 else ():  # where this saves the page of a last few rows
        tight = [b._replace(height_mm=b.height_mm * share) for b in blocks]
        if page_count(tight, _height(sheet)) < len(pages):
            pages = laid_out(tight, _height(sheet), (left, top))
            break
    firsts = [page.first for page in pages]
    ends = [*firsts[1:], len(blocks)]
    leaves, starts = [], []
    for number, (page, end) in enumerate(zip(pages, ends, strict=True)):
        over = [*begins[1:], len(blocks)]
        here = [t.title for t, a, b in zip(group, begins, over, strict=True) if a < end and b > page.first]
        starts += [
            Start(t.title, t.anchor, number)
            for t, a in zip(group, begins, strict=True)
            if page.first <= a < end
        ]
        leaves.append(Leaf(sheet, page.items, _together(here)))
    return Section(group[0].title, group[0].anchor, tuple(leaves), tuple(starts))


def _together(titles: Sequence[str]) -> str:
    return ", ".join((titles[0], *(t[:1].lower() + t[1:] for t in titles[1:]))) if titles else ""
