"""Paints the layers of the still picture in short steps: surface, light, wires, parts, words and flags."""

from collections.abc import Iterable, Iterator, Sequence
from typing import NamedTuple

from PySide6.QtCore import QPointF, QRect, QRectF, Qt
from PySide6.QtGui import QPainter, QRegion

from app.canvas.geometry import Box
from app.canvas.painting.area_names import area_names, paint_area_names
from app.canvas.painting.flag_painter import flag_boxes, paint_flags
from app.canvas.painting.halo_painter import paint_halos
from app.canvas.painting.harness_painter import Count, harness_counts, paint_counts, paint_harnesses
from app.canvas.painting.kept_picture import KeptPicture
from app.canvas.painting.part_painter import PartPainter
from app.canvas.painting.surface_painter import paint_surface
from app.canvas.painting.wire_painter import WirePainter
from app.canvas.painting.wireway_painter import paint_wireway_names, paint_wireways
from app.canvas.sight import Sight
from app.canvas.sub_plan import with_ways
from wiring.plan.names import PartId, WireId

RIM_PX = 60.0  # parts and wires so far outside the window are painted too: their words may reach into it
LIGHT_MM, LIGHT_MOST_PX = 40.0, 420.0  # no lamp shines farther on the plan, nor on the screen
STROKE_PX = 30.0  # no sign or wire shows farther beside its box
DIMMED = 0.16  # how much shows of what is not in focus


class Seen(NamedTuple):
    """The parts and wires of a picture, without those held out of it."""

    parts: Sequence[PartId]
    wires: Sequence[WireId]


class PictureLayers:
    """Paints with the painters of the view; at every `yield` there may be something else to do first."""

    def __init__(self, parts: PartPainter, wires: WirePainter) -> None:
        self._parts, self._wires = parts, wires

    def whole(self, kept: KeptPicture, sight: Sight, held_out: frozenset[str]) -> Iterator[None]:
        """Paint all of a picture."""
        sight = _without(sight, held_out)
        seen = _seen(sight, sight.visible.grown(RIM_PX / sight.camera.scale), held_out)
        yield from self._under(kept, sight, seen, held_out, None)
        kept.trust_lasting(sight)
        yield
        yield from self._words(kept, sight, seen, None)

    def mend(
        self,
        kept: KeptPicture,
        sight: Sight,
        held_out: frozenset[str],
        clips: Sequence[QRect],
        *,
        is_same_plan: bool,
    ) -> None:
        """Paint clips of a picture; of the same plan also what words are new, of another all words."""
        sight = _without(sight, held_out)
        seen = _seen(sight, sight.visible.grown(RIM_PX / sight.camera.scale), held_out)
        for clip in clips:
            for _ in self._under(kept, sight, seen, held_out, clip):
                pass
        kept.trust_lasting(sight)
        for _ in self._words(kept, sight, seen, clips if is_same_plan else None):
            pass

    def _under(
        self, kept: KeptPicture, sight: Sight, seen: Seen, held_out: frozenset[str], clip: QRect | None
    ) -> Iterator[None]:
        painter = QPainter(kept.under)
        try:
            box = sight.visible
            if clip is not None:
                painter.setClipRect(clip)
                box = _on_plan(sight, clip)
            near = _near(sight, seen, box)
            if kept.has_lasting(sight):
                painter.drawImage(QPointF(0, 0), kept.ground)
            else:
                paint_surface(painter, sight)
                paint_wireways(painter, sight)
                kept.keep_ground(clip)
            yield
            lit = sight.lit
            among = seen
            if lit is not None:
                painter.setOpacity(DIMMED)
                dim, dims = _among(near, lit, False), _among(seen, lit, False)
                yield from self._laid(painter, kept, sight, dim, dims)
                yield from self._parts.steps(painter, sight, dim.parts, dims.parts)
                painter.setOpacity(1.0)
                near, among = _among(near, lit, True), _among(seen, lit, True)
            rim = max(RIM_PX, min(LIGHT_MM * sight.camera.scale, LIGHT_MOST_PX))
            shining = sight.geometry.parts_in(box.grown(rim / sight.camera.scale))
            paint_halos(
                painter, sight, [i for i in shining if i not in held_out and (lit is None or i in lit)]
            )
            if lit is None:
                if not kept.has_lasting(sight):
                    yield from self._lay(kept, sight, near, among, clip)
                painter.drawImage(QPointF(0, 0), kept.laid)
            else:
                yield from self._laid(painter, kept, sight, near, among)
            yield
            yield from self._parts.steps(painter, sight, near.parts, among.parts)
        finally:
            painter.end()

    def _lay(
        self, kept: KeptPicture, sight: Sight, near: Seen, among: Seen, clip: QRect | None
    ) -> Iterator[None]:
        """Paint wires and what lies on them alone, so that they can be laid over other light again."""
        painter = QPainter(kept.laid)
        try:
            if clip is not None:
                painter.setClipRect(clip)
            painter.setCompositionMode(QPainter.CompositionMode.CompositionMode_Source)
            painter.fillRect(QRectF(0, 0, sight.width_px, sight.height_px), Qt.GlobalColor.transparent)
            painter.setCompositionMode(QPainter.CompositionMode.CompositionMode_SourceOver)
            yield from self._laid(painter, kept, sight, near, among)
        finally:
            painter.end()

    def _laid(
        self, painter: QPainter, kept: KeptPicture, sight: Sight, near: Seen, among: Seen
    ) -> Iterator[None]:
        yield from self._wires.steps(painter, sight, near.wires, among.wires, kept.signs)
        paint_wireway_names(painter, sight)
        paint_harnesses(painter, sight)

    def _words(
        self, kept: KeptPicture, sight: Sight, seen: Seen, clips: Sequence[QRect] | None
    ) -> Iterator[None]:
        """Lay the words over what lies under them: everywhere, or in clips and where new labels stand."""
        if sight.lit is not None:
            seen = _among(seen, sight.lit, True)
        names = area_names(sight)
        taken = [*(n.box for n in names), *flag_boxes(sight, seen.parts)]
        if clips is None:
            kept.counts, kept.counts_camera = harness_counts(sight, seen.parts, taken), sight.camera
        counts = _moved(kept, sight)
        yield
        news = kept.labels.place(sight, kept.key, seen.parts, [*taken, *(c.box for c in counts)])
        yield
        stale = None if clips is None else [*clips, *(_rect(box) for box in news)]
        kept.strip_words(stale)
        painter = QPainter(kept.shown)
        try:
            if stale is not None:
                painter.setClipRegion(_region(stale))
            paint_area_names(painter, sight, names)
            paint_counts(painter, sight, counts)
            yield
            yield from kept.labels.steps(painter, sight, seen.parts)
            paint_flags(painter, sight, seen.parts, seen.wires)
        finally:
            painter.end()


def _without(sight: Sight, held_out: frozenset[str]) -> Sight:
    """Return what is looked at without the wireways held out; parts and wires are left out one by one."""
    ways = sight.plan.wireways.keys()
    if not ways & held_out:
        return sight
    return sight._replace(plan=with_ways(sight.plan, ways - held_out))


def _seen(sight: Sight, box: Box, held_out: frozenset[str]) -> Seen:
    parts, wires = sight.geometry.parts_in(box), sight.geometry.wires_in(box)
    if not held_out:
        return Seen(parts, wires)
    return Seen([i for i in parts if i not in held_out], [i for i in wires if i not in held_out])


def _among(seen: Seen, lit: frozenset[str], wanted: bool) -> Seen:
    return Seen(
        [i for i in seen.parts if (i in lit) is wanted], [i for i in seen.wires if (i in lit) is wanted]
    )


def _on_plan(sight: Sight, clip: QRect) -> Box:
    corners = (clip.left(), clip.top()), (clip.right() + 1, clip.bottom() + 1)
    (left, top), (right, bottom) = (sight.camera.to_plan(*corner) for corner in corners)
    return Box(left, top, right, bottom)


def _near(sight: Sight, seen: Seen, box: Box) -> Seen:
    """Return the parts and wires that may show in a box of the plan."""
    box = box.grown(STROKE_PX / sight.camera.scale)
    parts, wires = frozenset(sight.geometry.parts_in(box)), frozenset(sight.geometry.wires_in(box))
    return Seen([i for i in seen.parts if i in parts], [i for i in seen.wires if i in wires])


def _moved(kept: KeptPicture, sight: Sight) -> list[Count]:
    """Return the counts of bundles where this camera sees them."""
    dx, dy = sight.camera.to_px(kept.counts_camera.left_mm, kept.counts_camera.top_mm)
    return [
        Count(words, Box(b.left + dx, b.top + dy, b.right + dx, b.bottom + dy)) for words, b in kept.counts
    ]


def _rect(box: Box) -> QRect:
    return QRectF(box.left, box.top, box.right - box.left, box.bottom - box.top).toAlignedRect()


def _region(rects: Iterable[QRect]) -> QRegion:
    region = QRegion()
    for rect in rects:
        region += rect
    return region
