"""The picture of all that stands still, kept until what it shows is another thing."""

import math
from collections.abc import Callable, Hashable, Iterator, Sequence
from time import perf_counter
from typing import Literal

from PySide6.QtCore import QRect, QRectF
from PySide6.QtGui import QPainter

from app.canvas.geometry import Box
from app.canvas.hits.hit import SMALLEST_PX
from app.canvas.painting.changed_places import Place
from app.canvas.painting.clips import boxes_apart, rim_of
from app.canvas.painting.kept_picture import KeptPicture
from app.canvas.painting.lamp_look import farthest_px
from app.canvas.painting.part_painter import PartPainter
from app.canvas.painting.picture_layers import RIM_PX, PictureLayers
from app.canvas.painting.picture_room import look_of
from app.canvas.painting.pulled_strips import PulledStrips
from app.canvas.painting.wire_painter import WirePainter
from app.canvas.sight import Sight

LIGHT_WORK = 10  # parts and wires in sight that are painted at once even while the view is pulled and zoomed
HALF_PX = 0.51  # a picture is moved by whole pixels; it waits so far off its place until it is painted anew
SIGN_PX = SMALLEST_PX / 2 + 4.0  # no sign shows farther beside its box, be it ever so small
MOST_MENDED = 0.6  # of the picture; for more of it all is painted


Progress = Literal["more", "ready", "nothing"]  # a new picture is ready to be shown; nothing is left to do
StirredSince = Callable[[object], Sequence[Place] | None]  # where the picture of an older key is out of date


class StillPicture:
    """Paints surface, light, wires, parts, labels and flags, but not what is held out of it.

    A change of the plan, and a pull of the paper, paint anew only the region where something lies otherwise.
    While the view is zoomed, the last picture is shown larger or smaller, and the next one is painted in
    short slices between the frames.
    """

    def __init__(self, parts: PartPainter, wires: WirePainter) -> None:
        self._wires, self._layers = wires, PictureLayers(parts, wires)
        self._strips = PulledStrips(self._layers)
        self._kept: KeptPicture | None = None
        self._wide: KeptPicture | None = None  # from farther away, for the rim while zooming out
        self._spare: KeptPicture | None = None  # memory for the next one
        self._next: KeptPicture | None = None  # being painted
        self._slices: Iterator[None] | None = None
        self.painted = 0  # how often something of it was painted anew

    def paint(
        self,
        painter: QPainter,
        sight: Sight,
        key: Hashable,
        held_out: frozenset[str],
        stirred_since: StirredSince,
        *,
        may_wait: bool,
    ) -> bool:
        """Paint the kept picture; False when it was an old one, which `work` will replace."""
        kept, camera = self._kept, sight.camera
        if kept is None or not self._follow(kept, sight, key, held_out, stirred_since, may_wait=may_wait):
            is_held_out = kept is not None and kept.held_out == held_out and kept.room.look == look_of(sight)
            if not (may_wait and is_held_out and not _is_light(sight)):
                kept = self._paint_whole(sight, key, held_out)
        assert kept is not None
        if kept.key == key and not kept.room.shows(camera):
            self.painted += self._strips.pull(kept, sight, held_out)
            if not kept.room.shows(camera) and (not may_wait or _is_light(sight)):
                kept = self._paint_whole(sight, key, held_out)
        if kept.key != key or not kept.room.shows(camera, HALF_PX):
            self._paint_old(painter, sight, kept)
            return False
        kept.show(painter, camera)
        if not may_wait:
            self._judge(kept, sight, held_out)
        return kept.is_right(camera)

    def work(
        self, sight: Sight, key: Hashable, held_out: frozenset[str], until: float, *, settled: bool
    ) -> Progress:
        """Paint on at the next picture until a time, or beside the one that is shown.

        Unless `settled`, a picture that was begun for another place is finished first.
        """
        kept = self._kept
        if kept is not None and kept.is_of(sight, key, held_out) and kept.is_right(sight.camera):
            way = None if settled else kept.way
            has_more = self._strips.reach_ahead(kept, sight, held_out, until, way)
            has_more = has_more or (settled and kept.soften())
            return "more" if has_more else "nothing"
        if self._next is not None and not (
            self._next.is_of(sight, key, held_out) and (not settled or self._next.judged == sight.camera)
        ):
            self._drop_next()
        if self._next is None or self._slices is None:
            self._next = self._new(sight, key, held_out)
            self._slices = self._layers.whole(self._next, sight, held_out)
        is_painted = True
        for _ in self._slices:
            is_painted = False
            if perf_counter() >= until:
                return "more"
        if not settled:  # soon it is shown larger or smaller
            if not is_painted:
                return "more"  # that takes the time of a slice of its own
            if self._strips.catch_up(self._next, sight, held_out, until):
                return "more"
            self._next.soften()
        self._slices = None
        self._put(self._next)
        self._next = None
        return "ready"

    def _follow(
        self,
        kept: KeptPicture,
        sight: Sight,
        key: Hashable,
        held_out: frozenset[str],
        stirred_since: StirredSince,
        *,
        may_wait: bool,
    ) -> bool:
        """Bring the picture up to the plan where it lies; False when more than a region is out of date."""
        if kept.is_of(sight, key, held_out):
            return True
        places = stirred_since(kept.key)
        if places is None or kept.room.look != look_of(sight) or sight.lit is not None:
            return False
        self._strips.drop()
        kept.forget_margin()
        there = kept.sight_of(sight)
        seen = self._layers.seen(there, held_out)
        if not (may_wait or kept.is_fine_for(there, seen)):
            return False
        clips = self._to_mend(kept, there, held_out, places)
        if clips is None and (may_wait or not kept.has_lasting(there)):
            return False
        if clips is None:
            clips = [kept.rect]
        flagged = any(place.sort == "flag" for place in places)
        stay = not flagged and (
            not clips or (kept.held_out == held_out and all(place.sort == "sign" for place in places))
        )
        kept.key, kept.held_out = key, held_out
        self.painted += self._layers.mend(kept, sight, held_out, seen, clips, words_stay=stay)
        return True

    def _to_mend(
        self, kept: KeptPicture, sight: Sight, held_out: frozenset[str], places: Sequence[Place]
    ) -> list[QRect] | None:
        """Return the pixels in which the picture is out of date, none when in none; None for most of it."""
        rim_px = {"sign": SIGN_PX, "any": RIM_PX}
        if sight.figures is not None:
            light = farthest_px(sight.camera.scale)
            rim_px = {"sign": SIGN_PX + light, "any": max(RIM_PX, light)}
        taken = held_out ^ kept.held_out
        let_go = sight.geometry.around(taken) if taken else None
        camera, boxes = sight.camera, []
        for box, sort in [*places, Place(let_go)] if let_go is not None else places:
            if sort != "flag":
                left, top = camera.to_px(box.left, box.top)
                right, bottom = camera.to_px(box.right, box.bottom)
                rim = rim_px[sort]
                boxes.append(Box(left - rim, top - rim, right + rim, bottom + rim))
        clips = boxes_apart(boxes, kept.rect)
        area = sum(clip.width() * clip.height() for clip in clips)
        return None if area > MOST_MENDED * kept.rect.width() * kept.rect.height() else clips

    def _judge(self, kept: KeptPicture, sight: Sight, held_out: frozenset[str]) -> None:
        """Find out whether a picture that was pulled is painted as finely as one that is painted there."""
        if kept.judged != sight.camera:
            kept.judged = sight.camera
            kept.is_apt = kept.is_fine_for(sight, self._layers.seen(sight, held_out))

    def _paint_whole(self, sight: Sight, key: Hashable, held_out: frozenset[str]) -> KeptPicture:
        self._drop_next()
        made = self._new(sight, key, held_out)
        for _ in self._layers.whole(made, sight, held_out):
            pass
        self._put(made)
        return made

    def _new(self, sight: Sight, key: Hashable, held_out: frozenset[str]) -> KeptPicture:
        made, self._spare = KeptPicture(sight, self._spare), None
        made.key, made.held_out = key, held_out
        old = self._kept
        if old is not None and old.held_out == held_out and old.scale == sight.camera.scale:
            made.labels = old.labels.copy()  # so that no word jumps
            made.signs = old.signs if old.is_of(sight, key, held_out) else made.signs
        return made

    def _put(self, made: KeptPicture) -> None:
        """Show a picture from now on; keep the one from farthest away for the rim while zooming out."""
        self._strips.drop()
        old, wide = self._kept, self._wide
        if wide is not None and (wide.key, wide.room.look) != (made.key, made.room.look):
            self._wide = wide = None
        self._kept, self._wires.signs = made, made.signs
        self.painted += 1
        if old is None:
            return
        is_wider = old.key == made.key and old.scale < min(
            made.scale, wide.scale if wide is not None else math.inf
        )
        self._spare = wide if is_wider else old
        if is_wider:
            self._wide = old

    def _drop_next(self) -> None:
        self._strips.drop()
        if self._slices is not None:
            self._slices.close()  # type: ignore[attr-defined]
        self._spare, self._next, self._slices = self._next or self._spare, None, None

    def _paint_old(self, painter: QPainter, sight: Sight, kept: KeptPicture) -> None:
        """Paint the last picture larger or smaller, and round it what is known of the rest."""
        there, wide = kept.target(sight.camera), self._wide
        for rim in rim_of(QRectF(0, 0, sight.width_px, sight.height_px), there):
            painter.save()
            painter.setClipRect(rim)
            painter.fillRect(rim, sight.shades.around)
            if wide is not None and (wide.key, wide.room.look) == (kept.key, kept.room.look):
                wide.paint_for(painter, sight.camera)
            painter.restore()
        kept.paint_for(painter, sight.camera)


def _is_light(sight: Sight) -> bool:
    """Return whether so little is in sight that it is painted in less time than a frame has."""
    box = sight.visible
    return len(sight.geometry.parts_in(box)) + len(sight.geometry.wires_in(box)) <= LIGHT_WORK
