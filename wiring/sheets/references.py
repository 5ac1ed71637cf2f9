"""References between the sheets, both ways: sheet and zone as IEC 61082 has them, such as 27/B4.

Drawings carry invisible marks; once every sheet has its number, the marks are looked up and written out.
"""

from collections.abc import Mapping, Sequence
from itertools import groupby
from typing import Literal, NamedTuple

from wiring.drawings.marks import SEE, net_idle, net_in, net_out
from wiring.pictures.metrics import width_mm, words_box, wrapped
from wiring.pictures.picture import Anchor, Item, Link, Point, Words
from wiring.sheets.page import zone
from wiring.sheets.pending import marks_of, numbered, sheet_mark_of
from wiring.sheets.section import Leaf, Section

_SIZE_MM, _FOOT_MM = 2.5, 2.6
_MOST_LINES = 5
_IN, _OUT_LEFT, _OUT_RIGHT = net_in(""), net_out("", to_left=True), net_out("")
_IDLE = net_idle("")


class Place(NamedTuple):
    """Where a mark stands: the number of its sheet, its zone, and the name links lead to."""

    sheet: int
    zone: str
    target: str

    @property
    def words(self) -> str:
        """The place as it is written."""
        return f"{self.sheet}/{self.zone}"


Places = Mapping[str, tuple[Place, ...]]


def referred(sections: Sequence[Section]) -> tuple[Section, ...]:
    """Return the sections with every reference written out and linked; marks nothing leads to are dropped."""
    places = _places(sections)
    written = [s._replace(leaves=tuple(_written(leaf, places) for leaf in s.leaves)) for s in sections]
    wanted = {i.target for s in written for leaf in s.leaves for i in leaf.items if isinstance(i, Link)}
    number, found = 0, []
    for section in written:
        leaves = []
        for leaf in section.leaves:
            number += 1
            kept = _kept(leaf.items, number, wanted)
            wanted.difference_update(i.name for i in kept if isinstance(i, Anchor))  # the first place is told
            leaves.append(leaf._replace(items=tuple(kept)))
        found.append(section._replace(leaves=tuple(leaves)))
    return tuple(found)


def _places(sections: Sequence[Section]) -> Places:
    found: dict[str, list[Place]] = {}
    leaves = (leaf for section in sections for leaf in section.leaves)
    for number, leaf in enumerate(leaves, start=1):
        for item in leaf.items:
            if isinstance(item, Anchor) and item.name:
                known = found.setdefault(item.name, [])
                known.append(Place(number, zone(leaf.sheet, item.at), _target(item, number)))
    return {name: tuple(known) for name, known in found.items()}


def _target(anchor: Anchor, number: int) -> str:
    """Return the name of one mark of a set: nets have several of one name."""
    if not anchor.name.startswith("net "):
        return anchor.name
    return f"net {number} {anchor.at[0]:.2f} {anchor.at[1]:.2f}"


def _kept(items: Sequence[Item], number: int, wanted: set[str]) -> list[Item]:
    kept: list[Item] = []
    for item in items:
        if isinstance(item, Anchor):
            target = _target(item, number)
            if target in wanted:
                kept.append(Anchor(target, item.at))
        else:
            kept.append(item)
    return kept


def _written(leaf: Leaf, places: Places) -> Leaf:
    items: list[Item] = []
    lists: dict[str, tuple[Place, ...]] = {}
    for item in leaf.items:
        if isinstance(item, Words) and (marks := marks_of(item)):
            place = next((places[m][0] for m in marks if m in places), None)
            items += _reference(place, item.at, item.size_mm, item.align) if place else ()
            continue
        if isinstance(item, Words) and (mark := sheet_mark_of(item)):
            items += _numbered(places[mark][0], item) if mark in places else ()
            continue
        items.append(item)
        if isinstance(item, Anchor):
            items += _at_pole(item, places) or _at_net(item, places, lists)
    return leaf._replace(items=(*items, *_lists(leaf, lists)))


def _numbered(place: Place, words: Words) -> tuple[Item, ...]:
    """Return the number of the sheet of a place, as the words that stand for it are set, with its link."""
    said = numbered(words, place.sheet)
    left, top, right, bottom = words_box(said)
    return said, Link(left, top, right - left, bottom - top, place.target)


def _at_pole(mark: Anchor, places: Places) -> tuple[Item, ...]:
    """Return the reference from one piece of a part to another that is drawn apart from it."""
    if not mark.name.startswith(SEE):
        return ()
    others = places.get(mark.name[len(SEE) :], ())
    return _reference(others[0], mark.at, _SIZE_MM, "left") if others else ()


def _at_net(mark: Anchor, places: Places, lists: dict[str, tuple[Place, ...]]) -> tuple[Item, ...]:
    """Return the reference at the end of a net: to where it comes from, or to where it goes on."""
    kind = next((k for k in (_IN, _IDLE, _OUT_LEFT, _OUT_RIGHT) if mark.name.startswith(k)), "")
    if not kind:
        return ()
    name = mark.name[len(kind) :]
    if kind in (_IN, _IDLE):
        homes = (*places.get(_OUT_RIGHT + name, ()), *places.get(_OUT_LEFT + name, ()))
        homes = homes or (places.get(_IN + name, ()) if kind == _IDLE else ())
        return _reference(homes[0], mark.at, _SIZE_MM, "right" if kind == _IN else "left") if homes else ()
    others = sorted((*places.get(_IN + name, ()), *places.get(_IDLE + name, ())), key=lambda p: p.sheet)
    if not others:
        return ()
    lists[name] = tuple(others)
    more = f" +{len(others) - 1}" if len(others) > 1 else ""
    return _reference(others[0], mark.at, _SIZE_MM, "right" if kind == _OUT_LEFT else "left", more)


def _reference(
    place: Place, at: Point, size: float, align: Literal["left", "right", "centre"], more: str = ""
) -> tuple[Item, ...]:
    words = Words(place.words + more, at, size, "note", align=align, stand="base" if size > 3 else "middle")
    left, top, right, bottom = words_box(words)
    return words, Link(left, top, right - left, bottom - top, place.target)


def _lists(leaf: Leaf, lists: Mapping[str, tuple[Place, ...]]) -> tuple[Item, ...]:
    """Return, beside the title block, all the places where nets of this sheet go on, if more than one."""
    left, _, _, bottom = leaf.sheet.frame
    room = leaf.sheet.title_block[0] - left - 8.0
    told = [f"{name} goes on: {_sheets(places)}" for name, places in lists.items() if len(places) > 1]
    lines = [line for text in told for line in wrapped(text, room, _FOOT_MM)]
    if len(lines) > _MOST_LINES:
        lines = [*lines[: _MOST_LINES - 1], "and on the sheets that follow."]
    first = bottom - 18.0
    return tuple(
        Words(line, (left + 4.0, first + i * 3.6), _FOOT_MM, "quiet")
        for i, line in enumerate(lines)
        if width_mm(line, _FOOT_MM) <= room
    )


def _sheets(places: Sequence[Place]) -> str:
    """Return places sheet by sheet: ``28/A1 B1 C1, 29/A1``."""
    said = []
    for sheet, group in groupby(places, key=lambda p: p.sheet):
        zones = dict.fromkeys(p.zone for p in group)
        said.append(f"{sheet}/{' '.join(zones)}")
    return ", ".join(said)
