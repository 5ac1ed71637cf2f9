"""Paints the layers of the still picture in short steps: surface, light, wires, parts, words and flags."""

from collections.abc import Iterator, Sequence
from typing import Literal, NamedTuple

from PySide6.QtCore import QPointF, QRect, QRectF, Qt
from PySide6.QtGui import QPainter

from app.canvas.geometry import Box
from app.canvas.painting.clips import apart, boxes_apart
from app.canvas.painting.halo_painter import paint_halos
from app.canvas.painting.harness_painter import paint_harnesses
from app.canvas.painting.kept_picture import KeptPicture
from app.canvas.painting.lamp_look import farthest_px
from app.canvas.painting.part_painter import PartPainter
from app.canvas.painting.surface_painter import paint_surface
from app.canvas.painting.wire_painter import WirePainter
from app.canvas.painting.wire_signs import arrow_box, flows
from app.canvas.painting.wireway_painter import paint_wireways
from app.canvas.painting.word_layer import lay_words, mend_words, repaint_words
from app.canvas.sight import Sight
from app.canvas.sub_plan import with_ways
from wiring.plan.names import PartId, WireId

RIM_PX = 60.0  # parts and wires so far outside the window are painted too: their words may reach into it
STROKE_PX = 30.0  # no sign or wire shows farther beside its box
DIMMED = 0.16  # how much shows of what is not in focus

Wording = Literal["stays", "pulled", "anew"]  # where words stand in a picture that is mended


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
        kept.plan, sight = sight.plan, _without(sight, held_out)
        seen = _seen(sight, held_out)
        kept.flows = flows(sight, seen.wires)
        yield from self._under(kept, sight, seen, held_out, None)
        kept.trust_lasting(sight)
        yield
        yield from lay_words(kept, sight, *_with_words(sight, seen))

    def mend(
        self,
        kept: KeptPicture,
        sight: Sight,
        held_out: frozenset[str],
        clips: Sequence[QRect],
        words: Wording,
    ) -> bool:
        """Paint clips of a picture, and words where they stand otherwise; False when nothing was painted."""
        kept.plan, sight = sight.plan, _without(sight, held_out)
        seen = _seen(sight, held_out)
        arrows = self._turn_arrows(kept, sight, seen, held_out)
        clips = apart([*clips, *arrows], kept.rect) if arrows else clips
        for clip in clips:
            for _ in self._under(kept, sight, seen, held_out, clip):
                pass
        kept.trust_lasting(sight)
        worded = _with_words(sight, seen)
        if words == "stays":
            return repaint_words(kept, sight, worded.parts, clips)
        return mend_words(kept, sight, *worded, clips, is_same_plan=words == "pulled")

    def _turn_arrows(
        self, kept: KeptPicture, sight: Sight, seen: Seen, held_out: frozenset[str]
    ) -> list[QRect]:
        """Lay wires anew where one of them has another arrow now, or none any more; return where."""
        old, now = kept.flows, flows(sight, seen.wires)
        kept.flows = now
        turned = [i for i in {**old, **now} if old.get(i) != now.get(i) and i in sight.geometry.paths]
        clips = boxes_apart([arrow_box(sight, i) for i in turned], kept.rect)
        for clip in clips if kept.has_lasting(sight) else ():  # else all that is painted is laid anew
            for _ in self._lay(kept, sight, _near(sight, _on_plan(sight, clip), held_out), seen, clip):
                pass
        return clips

    def _under(
        self, kept: KeptPicture, sight: Sight, seen: Seen, held_out: frozenset[str], clip: QRect | None
    ) -> Iterator[None]:
        painter = QPainter(kept.under)
        try:
            box, near = sight.visible, seen
            if clip is not None:
                painter.setClipRect(clip)
                box = _on_plan(sight, clip)
                near = _near(sight, box, held_out)
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
            shining = sight.geometry.parts_in(box.grown(farthest_px(sight.camera.scale) / sight.camera.scale))
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
        paint_harnesses(painter, sight)


def _without(sight: Sight, held_out: frozenset[str]) -> Sight:
    """Return what is looked at without the wireways held out; parts and wires are left out one by one."""
    ways = sight.plan.wireways.keys()
    if not ways & held_out:
        return sight
    return sight._replace(plan=with_ways(sight.plan, ways - held_out))


def _seen(sight: Sight, held_out: frozenset[str]) -> Seen:
    """Return what may show in the window, or have words that do."""
    return _in_box(sight, sight.visible.grown(RIM_PX / sight.camera.scale), held_out)


def _near(sight: Sight, box: Box, held_out: frozenset[str]) -> Seen:
    """Return the parts and wires that may show in a box of the plan."""
    return _in_box(sight, box.grown(STROKE_PX / sight.camera.scale), held_out)


def _in_box(sight: Sight, box: Box, held_out: frozenset[str]) -> Seen:
    parts, wires = sight.geometry.parts_in(box), sight.geometry.wires_in(box)
    if not held_out:
        return Seen(parts, wires)
    return Seen([i for i in parts if i not in held_out], [i for i in wires if i not in held_out])


def _with_words(sight: Sight, seen: Seen) -> Seen:
    return seen if sight.lit is None else _among(seen, sight.lit, True)


def _among(seen: Seen, lit: frozenset[str], wanted: bool) -> Seen:
    return Seen(
        [i for i in seen.parts if (i in lit) is wanted], [i for i in seen.wires if (i in lit) is wanted]
    )


def _on_plan(sight: Sight, clip: QRect) -> Box:
    corners = (clip.left(), clip.top()), (clip.right() + 1, clip.bottom() + 1)
    (left, top), (right, bottom) = (sight.camera.to_plan(*corner) for corner in corners)
    return Box(left, top, right, bottom)
