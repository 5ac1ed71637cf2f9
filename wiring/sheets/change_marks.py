"""Marks what changed since the last printed set: a triangle with the letter of the set, as is usual."""

from collections.abc import Collection, Sequence
from typing import NamedTuple

from wiring.drawings.marks import part_mark, wire_mark, wire_on_plan
from wiring.pictures.metrics import Box, overlap, width_mm, words_box
from wiring.pictures.picture import Anchor, Item, Path, Pen, Point, Words
from wiring.sheets.pending import row_mark
from wiring.sheets.section import Leaf, Section

_HALF_MM, _HIGH_MM, _LETTER_MM = 2.1, 3.7, 2.1
_MARGIN_MM = 2.6  # the middle of a mark beside a list stands this far left of the list
_PEN = Pen("ink", 0.25)
_REACHES_MM = (0.0, 3.0, 6.0, 9.0)
_WAYS = ((0, -1), (1, 0), (0, 1), (-1, 0), (1, -1), (-1, -1), (1, 1), (-1, 1))


class Marks(NamedTuple):
    """The letter, and the wires and parts that bear it."""

    letter: str
    ids: Collection[str]


def marked(sections: Sequence[Section], marks: Marks) -> tuple[Section, ...]:
    """Return the sections with a triangle at every line and on every drawing of what changed."""
    rows = {row_mark(i) for i in marks.ids}
    drawn = {
        name
        for i in marks.ids
        for name in (wire_mark(i), part_mark(i), wire_on_plan(i, whole=True), wire_on_plan(i, whole=False))
    }
    return tuple(
        s._replace(leaves=tuple(_marked(leaf, marks.letter, rows, drawn) for leaf in s.leaves))
        for s in sections
    )


def _marked(leaf: Leaf, letter: str, rows: Collection[str], drawn: Collection[str]) -> Leaf:
    anchors = [i for i in leaf.items if isinstance(i, Anchor)]
    beside = {round(a.at[1], 2): a.at for a in anchors if a.name in rows}
    over = [a.at for a in anchors if a.name in drawn]
    if not beside and not over:
        return leaf
    left = leaf.sheet.body[0] - _MARGIN_MM
    items: list[Item] = [item for _, y in beside.values() for item in triangle((left, y), letter)]
    taken = [words_box(i) for i in leaf.items if isinstance(i, Words)] if over else []
    for at in over:
        items += _clear_of(at, letter, taken, leaf.sheet.body)
    return leaf._replace(items=(*leaf.items, *items))


def _clear_of(at: Point, letter: str, taken: list[Box], body: Box) -> tuple[Item, ...]:
    """Return a mark near a place of a drawing that lies on no words; nothing where there is no room."""
    for reach in _REACHES_MM:
        for across, down in _WAYS:
            middle = at[0] + across * reach, at[1] + down * reach
            box = (
                middle[0] - _HALF_MM,
                middle[1] - _HIGH_MM / 2,
                middle[0] + _HALF_MM,
                middle[1] + _HIGH_MM / 2,
            )
            inside = box[0] >= body[0] and box[1] >= body[1] and box[2] <= body[2] and box[3] <= body[3]
            if inside and not any(overlap(box, other) for other in taken):
                taken.append(box)
                return triangle(middle, letter)
    return ()


def triangle(middle: Point, letter: str) -> tuple[Item, ...]:
    """Return a triangle with a letter in it, its middle where told."""
    x, y = middle
    top, foot = y - _HIGH_MM / 2, y + _HIGH_MM / 2
    size = min(_LETTER_MM, 2.0 * _LETTER_MM / max(width_mm(letter, _LETTER_MM, "bold"), 0.1))
    return (
        Path(((x, top), (x + _HALF_MM, foot), (x - _HALF_MM, foot)), _PEN, "paper", closed=True),
        Words(letter, (x, foot - 0.45), size, "ink", "bold", "centre"),
    )
