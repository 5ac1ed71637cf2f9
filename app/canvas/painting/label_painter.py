"""Writes the designations of parts beside them, where there is room."""

import math
from collections.abc import Iterable, Iterator, Sequence

import numpy as np
from PySide6.QtGui import QPainter

from app.canvas.camera import whole_px
from app.canvas.geometry import Box
from app.canvas.painting.label_places import label_places
from app.canvas.painting.part_painter import shown_boxes
from app.canvas.painting.plates import Plate
from app.canvas.sight import Sight
from app.canvas.table import Floats
from app.theme.words import factor
from wiring.plan.names import PartId
from wiring.plan.part import Part
from wiring.plan.plan import Plan

LABELS_FROM = 0.4  # pixels per millimetre from which designations are written
LABELS_MOST = 500
FEW = 60  # parts in sight whose designations are written from any distance
OWN_WORDS_FROM = 1.3  # and from which the builder's own words follow
WIRE_END_PX = 22.0  # of each wire's end that labels leave free
NEAR_PX = 60.0  # how far beyond parts and the longest of their labels others are looked at, to keep off
STEP = 40  # labels written before there may be time for something else
PLATE = Plate(font_px=11, usual_px=15.0, rim_px=3.0, ground=0.82)


class LabelPainter:
    """Keeps labels where they stand while nothing they keep off is another, so that none jumps."""

    def __init__(self) -> None:
        self._key: tuple[object, ...] = ()  # what the places were found for
        self._labels: dict[PartId, tuple[str, Box] | None] = {}  # words, and pixels from the plan's origin

    def place(
        self, sight: Sight, plan: Plan, ids: Sequence[PartId], crowd: int, taken: Sequence[Box]
    ) -> list[Box]:
        """Find places for those of the labels that have none yet; return where words are others now.

        With another plan, other flags, scale or size of words all are placed anew; boxes are in pixels,
        `taken` those that other words fill. The `plan` has what is held out of sight too, and `crowd` is how
        many parts are in the view.
        """
        key = plan, sight.camera.scale, factor(), sight.lit, sight.worst.keys()
        old: dict[PartId, tuple[str, Box] | None] = {}
        if not _is_same(self._key, key):
            old = self._labels if self._key and self._key[1] == key[1] else {}
            self._key, self._labels = key, {}
        if crowd > labels_most(sight.camera.scale):
            old, self._labels = {**self._labels, **old}, {}
            return self._in_sight(sight, (label for label in old.values() if label is not None))
        news = [i for i in ids if i not in self._labels]
        if news:
            self._find(sight, news, taken)
        found = self._labels
        other = [found[i] for i in news if found[i] != old.get(i)]
        other += [label for i, label in old.items() if label != found.get(i)]
        return self._in_sight(sight, (label for label in other if label is not None))

    def copy(self) -> "LabelPainter":
        """Return another one with the same places, which may find others."""
        made = LabelPainter()
        made._key, made._labels = self._key, dict(self._labels)
        return made

    def steps(
        self, painter: QPainter, sight: Sight, ids: Sequence[PartId], within: Box | None = None
    ) -> Iterator[None]:
        """Write the labels of those parts where they have been placed, in short steps.

        Those that do not reach into `within`, in pixels, may be left out.
        """
        scale = sight.camera.scale
        x, y = sight.camera.left_mm * scale, sight.camera.top_mm * scale
        left, top, right, bottom = within or (-math.inf, -math.inf, math.inf, math.inf)
        left, top, right, bottom = left + x, top + y, right + x, bottom + y
        labels = map(self._labels.get, ids) if self._labels else ()
        there = [
            label
            for label in labels
            if label is not None
            and (box := label[1])[0] < right
            and left < box[2]
            and box[1] < bottom
            and top < box[3]
        ]
        for n, (text, box) in enumerate(there):
            if n % STEP == STEP - 1:
                yield
            pixmap = PLATE.pixmap(text, sight.shades, sight.ratio)
            painter.drawPixmap(whole_px(box.left - x), whole_px(box.top - y), pixmap)

    def _find(self, sight: Sight, ids: Sequence[PartId], taken: Sequence[Box]) -> None:
        parts = [sight.plan.parts[i] for i in ids]
        origin = np.array([sight.camera.left_mm, sight.camera.top_mm] * 2) * sight.camera.scale
        shown = shown_boxes(sight, ids)
        boxes = shown + origin
        texts = [_words(sight, part) for part in parts]
        reach_px = NEAR_PX + max(map(PLATE.width, texts))
        obstacles = _obstacles(sight, _plan_box(sight, shown, reach_px), taken) + origin
        left_out = self._write(parts, texts, boxes, obstacles)
        if left_out and sight.camera.scale >= OWN_WORDS_FROM:  # at least the designation, then
            short = [f"-{parts[i].designation}" for i in left_out]
            self._write([parts[i] for i in left_out], short, boxes[left_out], obstacles)

    def _in_sight(self, sight: Sight, labels: Iterable[tuple[str, Box]]) -> list[Box]:
        """Return what labels cover, in pixels of the view; painted at whole pixels they cover one more."""
        scale = sight.camera.scale
        x, y = sight.camera.left_mm * scale, sight.camera.top_mm * scale
        return [Box(b[0] - x - 1, b[1] - y - 1, b[2] - x + 1, b[3] - y + 1) for _, b in labels]

    def _write(
        self, parts: Sequence[Part], texts: Sequence[str], boxes: Floats, obstacles: Floats
    ) -> list[int]:
        """Place texts beside boxes; the answer says which of them had no room."""
        sizes = np.array([(PLATE.width(text), PLATE.high_px) for text in texts])
        there = [label[1] for label in self._labels.values() if label is not None]
        places = label_places(boxes, sizes, np.vstack((obstacles, np.array(there).reshape(-1, 4))))
        for part, text, place in zip(parts, texts, places, strict=True):
            self._labels[part.id] = (text, place) if place is not None else None
        return [i for i, place in enumerate(places) if place is None]


def _is_same(one: tuple[object, ...], other: tuple[object, ...]) -> bool:
    """Return whether labels stand for one as for the other; plans are large, and compared by identity."""
    return bool(one) and one[0] is other[0] and one[1:] == other[1:]


def labels_most(scale: float) -> int:
    """Return how many parts in the view may carry labels at this distance."""
    return LABELS_MOST if scale >= LABELS_FROM else FEW


def _words(sight: Sight, part: Part) -> str:
    own = part.label if sight.camera.scale >= OWN_WORDS_FROM else ""
    return f"-{part.designation}  {own}".rstrip()


def _plan_box(sight: Sight, boxes_px: Floats, rim_px: float) -> Box:
    """Return the box of the plan round boxes in pixels, with a rim."""
    left, top = (boxes_px[:, :2].min(axis=0) - rim_px).tolist()
    right, bottom = (boxes_px[:, 2:].max(axis=0) + rim_px).tolist()
    return Box(*sight.camera.to_plan(left, top), *sight.camera.to_plan(right, bottom))


def _obstacles(sight: Sight, near: Box, taken: Sequence[Box]) -> Floats:
    """Return boxes in pixels that labels keep off: parts and the ends of wires in a box, what is taken."""
    parts = sight.geometry.parts_in(near)
    rows = [shown_boxes(sight, parts)] if parts else []
    return np.vstack((*rows, _wire_ends(sight, near), np.array(taken).reshape(-1, 4)))


def _wire_ends(sight: Sight, near: Box) -> Floats:
    """Return boxes in pixels round the first stretch of every wire near by, at both ends."""
    paths = [sight.geometry.paths[w] for w in sight.geometry.wires_in(near)]
    ends = [(*p[0], *p[1]) for p in paths] + [(*p[-1], *p[-2]) for p in paths]
    if not ends:
        return np.empty((0, 4))
    camera = sight.camera
    pixels = (np.array(ends) - np.array([camera.left_mm, camera.top_mm] * 2)) * camera.scale
    start, way = pixels[:, :2], pixels[:, 2:] - pixels[:, :2]
    length = np.maximum(np.hypot(way[:, 0], way[:, 1]), 1e-6)
    end = start + way * np.minimum(1.0, WIRE_END_PX / length)[:, None]
    return np.hstack((np.minimum(start, end) - 1, np.maximum(start, end) + 1))
