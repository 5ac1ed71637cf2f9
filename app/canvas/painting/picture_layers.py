"""Paints the layers of the still picture in short steps: surface, light, wires, parts, words and flags."""

from collections.abc import Iterator, Sequence
from functools import reduce

from PySide6.QtCore import QPointF, QRect, Qt
from PySide6.QtGui import QPainter

from app.canvas.geometry import Box
from app.canvas.painting.clips import apart, box_of, boxes_apart
from app.canvas.painting.detail import Crowd, Seen, crowds
from app.canvas.painting.halo_painter import paint_halos
from app.canvas.painting.harness_painter import paint_harnesses
from app.canvas.painting.kept_picture import KeptPicture
from app.canvas.painting.lamp_look import farthest_px
from app.canvas.painting.part_painter import PartPainter
from app.canvas.painting.surface_painter import paint_surface
from app.canvas.painting.wire_painter import WirePainter
from app.canvas.painting.wire_signs import arrow_box, flows
from app.canvas.painting.wireway_painter import paint_wireways
from app.canvas.painting.word_layer import extend_words, find_words, lay_words, mend_words, repaint_words
from app.canvas.sight import Sight
from app.canvas.sub_plan import with_ways

RIM_PX = 60.0  # parts and wires so far outside the window are painted too: their words may reach into it
STROKE_PX = 30.0  # no sign or wire shows farther beside its box
DIMMED = 0.16  # how much shows of what is not in focus


class PictureLayers:
    """Paints with the painters of the view; at every `yield` there may be something else to do first."""

    def __init__(self, parts: PartPainter, wires: WirePainter) -> None:
        self._parts, self._wires = parts, wires

    def whole(self, kept: KeptPicture, sight: Sight, held_out: frozenset[str]) -> Iterator[None]:
        """Paint all that the view shows of a picture."""
        kept.plan, kept.judged, sight = sight.plan, sight.camera, _without(kept.sight_of(sight), held_out)
        seen = self.seen(sight, held_out)
        kept.crowds, kept.flows = crowds(seen, sight.lit), flows(sight, seen.wires)
        yield
        yield from self._under(kept, sight, held_out, seen, seen, kept.rect)
        kept.trust_lasting(sight)
        yield
        yield from lay_words(kept, sight, *_with_words(sight, seen))

    def mend(
        self,
        kept: KeptPicture,
        sight: Sight,
        held_out: frozenset[str],
        seen: Seen,
        clips: Sequence[QRect],
        *,
        words_stay: bool,
    ) -> bool:
        """Paint clips of a picture, and words where they stand otherwise; False when nothing was painted."""
        kept.plan, sight = sight.plan, _without(kept.sight_of(sight), held_out)
        arrows = self._turn_arrows(kept, sight, seen, held_out)
        clips = apart([*clips, *arrows], kept.rect) if arrows else clips
        for clip in clips:
            for _ in self._under(kept, sight, held_out, seen, _near(sight, clip, held_out), clip):
                pass
        kept.trust_lasting(sight)
        worded = _with_words(sight, seen)
        if words_stay:
            return repaint_words(kept, sight, worded.parts, clips)
        return mend_words(kept, sight, *worded, clips)

    def add_strips(
        self, kept: KeptPicture, sight: Sight, held_out: frozenset[str], strips: Sequence[QRect]
    ) -> Iterator[bool | None]:
        """Paint strips beside what is painted of a picture; they are part of it once all steps are done.

        Yields True once it must not be left any more.
        """
        sight = _without(kept.sight_of(sight), held_out)
        larger = reduce(QRect.united, strips, kept.rect)
        sight = sight._replace(window=box_of(larger))
        seen = self.seen(sight, held_out)
        yield None
        for strip in strips:
            near = _near(sight, strip, held_out)
            yield from self._under(kept, sight, held_out, seen, near, strip, is_bare=True)
            yield None
        kept.flows, kept.room.covered = flows(sight, seen.wires), larger
        yield from extend_words(kept, sight, *_with_words(sight, seen), strips)

    def find_words(self, kept: KeptPicture, sight: Sight, held_out: frozenset[str]) -> None:
        """Note where the words stand in a picture whose pixels have been moved."""
        sight = _without(kept.sight_of(sight), held_out)
        find_words(kept, sight, *_with_words(sight, self.seen(sight, held_out)))

    def seen(self, sight: Sight, held_out: frozenset[str]) -> Seen:
        """Return what may show in the window, or have words that do."""
        return _in_box(sight, sight.visible.grown(RIM_PX / sight.camera.scale), held_out)

    def _turn_arrows(
        self, kept: KeptPicture, sight: Sight, seen: Seen, held_out: frozenset[str]
    ) -> list[QRect]:
        """Lay wires anew where one of them has another arrow now, or none any more; return where."""
        old, now = kept.flows, flows(sight, seen.wires)
        kept.flows = now
        turned = [i for i in {**old, **now} if old.get(i) != now.get(i) and i in sight.geometry.paths]
        clips = boxes_apart([arrow_box(sight, i) for i in turned], kept.rect)
        for clip in clips if kept.has_lasting(sight) else ():  # else all that is painted is laid anew
            for _ in self._lay(kept, sight, _near(sight, clip, held_out), seen, clip):
                pass
        return clips

    def _under(
        self,
        kept: KeptPicture,
        sight: Sight,
        held_out: frozenset[str],
        seen: Seen,
        near: Seen,
        clip: QRect,
        *,
        is_bare: bool = False,
    ) -> Iterator[None]:
        """Paint all but words in a clip, in which only parts and wires `near` show; bare, nothing is kept."""
        lit, (among, dims) = sight.lit, (seen, Seen((), ()))
        has_lasting = not is_bare and kept.has_lasting(sight)
        painter = QPainter(kept.under)
        try:
            painter.setClipRect(clip)
            if has_lasting:
                painter.drawImage(QPointF(0, 0), kept.ground)
            else:
                there = sight._replace(window=box_of(clip).grown(RIM_PX))
                paint_surface(painter, there)
                paint_wireways(painter, there)
                yield
                kept.keep_ground(clip)
            yield
            if lit is not None:
                painter.setOpacity(DIMMED)
                dim, dims = near.among(lit, wanted=False), seen.among(lit, wanted=False)
                crowd = kept.crowds.dim
                yield from self._laid(painter, kept, sight, dim, dims, crowd)
                yield from self._parts.steps(painter, sight, dim.parts, crowd.parts)
                painter.setOpacity(1.0)
                near, among = near.among(lit, wanted=True), seen.among(lit, wanted=True)
            shining = sight.geometry.parts_in(
                _on_plan(sight, clip).grown(farthest_px(sight.camera.scale) / sight.camera.scale)
            )
            paint_halos(
                painter, sight, [i for i in shining if i not in held_out and (lit is None or i in lit)]
            )
            yield
            crowd = kept.crowds.lit
            if lit is None:
                if not has_lasting:
                    yield from self._lay(kept, sight, near, among, clip)
                painter.drawImage(QPointF(0, 0), kept.laid)
            else:
                yield from self._laid(painter, kept, sight, near, among, crowd)
            yield
            yield from self._parts.steps(painter, sight, near.parts, crowd.parts)
        finally:
            painter.end()

    def _lay(self, kept: KeptPicture, sight: Sight, near: Seen, among: Seen, clip: QRect) -> Iterator[None]:
        """Paint wires and what lies on them alone, so that they can be laid over other light again."""
        painter = QPainter(kept.laid)
        try:
            painter.setClipRect(clip)
            painter.setCompositionMode(QPainter.CompositionMode.CompositionMode_Source)
            painter.fillRect(clip, Qt.GlobalColor.transparent)
            painter.setCompositionMode(QPainter.CompositionMode.CompositionMode_SourceOver)
            yield
            yield from self._laid(painter, kept, sight, near, among, kept.crowds.lit)
        finally:
            painter.end()

    def _laid(
        self, painter: QPainter, kept: KeptPicture, sight: Sight, near: Seen, among: Seen, crowd: Crowd
    ) -> Iterator[None]:
        yield from self._wires.steps(painter, sight, near.wires, among.wires, crowd.wires, kept.signs)
        paint_harnesses(painter, sight)


def _without(sight: Sight, held_out: frozenset[str]) -> Sight:
    """Return what is looked at without the wireways held out; parts and wires are left out one by one."""
    ways = sight.plan.wireways.keys()
    if not ways & held_out:
        return sight
    return sight._replace(plan=with_ways(sight.plan, ways - held_out))


def _near(sight: Sight, clip: QRect, held_out: frozenset[str]) -> Seen:
    """Return the parts and wires that may show in some pixels of a picture."""
    return _in_box(sight, _on_plan(sight, clip).grown(STROKE_PX / sight.camera.scale), held_out)


def _in_box(sight: Sight, box: Box, held_out: frozenset[str]) -> Seen:
    parts, wires = sight.geometry.parts_in(box), sight.geometry.wires_in(box)
    if not held_out:
        return Seen(parts, wires)
    return Seen([i for i in parts if i not in held_out], [i for i in wires if i not in held_out])


def _with_words(sight: Sight, seen: Seen) -> Seen:
    return seen if sight.lit is None else seen.among(sight.lit, wanted=True)


def _on_plan(sight: Sight, clip: QRect) -> Box:
    left, top, right, bottom = box_of(clip)
    return Box(*sight.camera.to_plan(left, top), *sight.camera.to_plan(right, bottom))
