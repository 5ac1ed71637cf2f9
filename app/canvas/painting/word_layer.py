"""Lays words and flags over the still picture: all of them, or only where others stand than before."""

from collections.abc import Iterator, Sequence
from typing import Protocol

from PySide6.QtCore import QRect
from PySide6.QtGui import QPainter

from app.canvas.geometry import Box
from app.canvas.painting.area_names import area_names, paint_area_names
from app.canvas.painting.clips import apart, box_of, meets, rect_round
from app.canvas.painting.flag_painter import flag_boxes, flags_at, paint_flags
from app.canvas.painting.harness_painter import Count, harness_counts, paint_counts
from app.canvas.painting.kept_picture import KeptPicture
from app.canvas.painting.placed_words import Words
from app.canvas.sight import Sight
from wiring.plan.names import PartId, WireId


class _Word(Protocol):
    @property
    def box(self) -> Box:
        """Return where it stands."""


def lay_words(
    kept: KeptPicture, sight: Sight, parts: Sequence[PartId], wires: Sequence[WireId]
) -> Iterator[None]:
    """Find places for all words of a picture and paint them, in short steps."""
    kept.words, _ = _found(kept, sight, parts, wires, is_same_plan=False)
    yield
    kept.strip_words([kept.rect])
    yield
    painter = QPainter(kept.shown)
    try:
        yield from _painted(painter, kept, sight, parts, kept.words, None)
    finally:
        painter.end()


def extend_words(
    kept: KeptPicture,
    sight: Sight,
    parts: Sequence[PartId],
    wires: Sequence[WireId],
    strips: Sequence[QRect],
) -> Iterator[bool]:
    """Find places for the words of strips that are new, and paint them.

    Yields True: the second step must follow, for what has a place is taken for painted.
    """
    kept.words, stale = _found(kept, sight, parts, wires, is_same_plan=True)
    yield True
    repaint_words(kept, sight, parts, [*strips, *map(rect_round, stale)])


def find_words(kept: KeptPicture, sight: Sight, parts: Sequence[PartId], wires: Sequence[WireId]) -> None:
    """Note where words stand, none of which is another, in a picture whose pixels have been moved."""
    kept.words, _ = _found(kept, sight, parts, wires, is_same_plan=True)


def mend_words(
    kept: KeptPicture,
    sight: Sight,
    parts: Sequence[PartId],
    wires: Sequence[WireId],
    clips: Sequence[QRect],
) -> bool:
    """Paint words anew in clips and where others stand than before; False when there was nothing to paint."""
    before = kept.words
    kept.words, stale = _found(kept, sight, parts, wires, is_same_plan=False)
    stale += _others(before, kept.words)
    return repaint_words(kept, sight, parts, [*clips, *map(rect_round, stale)])


def repaint_words(kept: KeptPicture, sight: Sight, parts: Sequence[PartId], clips: Sequence[QRect]) -> bool:
    """Paint the words that reach into clips again, where they stand; False when no clip is in sight."""
    clips = apart(clips, kept.rect)
    if not clips:
        return False
    kept.strip_words(clips)
    painter = QPainter(kept.shown)
    try:
        for clip in clips:
            painter.setClipRect(clip)
            for _ in _painted(painter, kept, sight, parts, kept.words, box_of(clip)):
                pass
    finally:
        painter.end()
    return True


def _found(
    kept: KeptPicture,
    sight: Sight,
    parts: Sequence[PartId],
    wires: Sequence[WireId],
    *,
    is_same_plan: bool,
) -> tuple[Words, list[Box]]:
    """Return where words stand now, and where labels do that did not before.

    Of the same plan, that was pulled along, the counts of bundles stay where they are.
    """
    names = area_names(sight)
    names += kept.way_names.place(sight, names)
    taken = [*(n.box for n in names), *flag_boxes(sight, parts)]
    if not is_same_plan:
        kept.counts, kept.counts_camera = harness_counts(sight, parts, taken), sight.camera
    counts = _moved(kept, sight)
    taken += [count.box for count in counts]
    stale = kept.labels.place(sight, kept.plan or sight.plan, parts, kept.crowds.lit.parts, taken)
    return Words(names, counts, flags_at(sight, parts, wires)), stale


def _painted(
    painter: QPainter,
    kept: KeptPicture,
    sight: Sight,
    parts: Sequence[PartId],
    words: Words,
    within: Box | None,
) -> Iterator[None]:
    """Paint words in their order; those outside a box, in pixels, may be left out."""
    names, counts, flags = words
    if within is not None:
        names = [n for n in names if meets(n.box, within)]
        counts = [c for c in counts if meets(c.box, within)]
        flags = [f for f in flags if meets(f.box, within)]
    paint_area_names(painter, sight, names)
    paint_counts(painter, sight, counts)
    yield
    yield from kept.labels.steps(painter, sight, parts, within)
    paint_flags(painter, sight, flags)


def _others(old: Words, new: Words) -> list[Box]:
    """Return the boxes of words and flags that stand in one but not in the other."""
    pairs: tuple[tuple[Sequence[_Word], Sequence[_Word]], ...]
    pairs = ((old.names, new.names), (old.counts, new.counts), (old.flags, new.flags))
    return [
        word.box
        for one, other in pairs
        for word in (*(w for w in one if w not in other), *(w for w in other if w not in one))
    ]


def _moved(kept: KeptPicture, sight: Sight) -> list[Count]:
    """Return the counts of bundles where this camera sees them."""
    dx, dy = sight.camera.to_px(kept.counts_camera.left_mm, kept.counts_camera.top_mm)
    return [
        Count(words, Box(b.left + dx, b.top + dy, b.right + dx, b.bottom + dy)) for words, b in kept.counts
    ]
