"""Paints what comes into sight when the paper is pulled: at once, or in steps before it is needed."""

from collections.abc import Iterator
from time import perf_counter

from PySide6.QtCore import QRect

from app.canvas.painting.kept_picture import KeptPicture
from app.canvas.painting.picture_layers import PictureLayers
from app.canvas.painting.picture_room import Way
from app.canvas.sight import Sight


class PulledStrips:
    """Paints strips beside what is painted of a picture, and holds the one that is begun."""

    def __init__(self, layers: PictureLayers) -> None:
        self._layers = layers
        self._begun: Iterator[bool | None] | None = None
        self._is_bound = False  # to go on to its end
        self._strip: QRect | None = None  # that is begun; None when the picture is moved

    def pull(self, kept: KeptPicture, sight: Sight, held_out: frozenset[str]) -> bool:
        """Have in the picture what the view looks at, unless most would be new; say whether it painted."""
        room, camera = kept.room, sight.camera
        if not room.is_near(camera):
            return False
        if self._strip is not None and not self._strip.intersects(room.view(camera)):
            self.drop()
        self._finish(self._begun)
        shortage = room.shortage(camera)
        if any(shortage):
            self._finish(self._moved(kept, sight, held_out, shortage))
        strips = room.strips(room.needed(camera))
        if strips:
            self._finish(self._layers.add_strips(kept, sight, held_out, strips))
        return bool(strips)

    def reach_ahead(
        self, kept: KeptPicture, sight: Sight, held_out: frozenset[str], until: float, way: Way | None
    ) -> bool:
        """Paint until a time what comes into sight when the view moves on that way; False when all is there.

        A little on all sides when it rests.
        """
        room, camera = kept.room, sight.camera
        while True:
            if self._begun is not None:
                step = next(self._begun, self)
                self._is_bound = step is True
                if step is self:
                    self._begun = self._strip = None
            elif any(shortage := room.shortage(camera, way)):
                self._begun = self._moved(kept, sight, held_out, shortage)
            elif strips := room.strips(room.ahead(camera, way))[:1]:
                self._strip = strips[0]
                self._begun = self._layers.add_strips(kept, sight, held_out, strips)
            else:
                return False
            if perf_counter() >= until:
                return True

    def catch_up(self, made: KeptPicture, sight: Sight, held_out: frozenset[str], until: float) -> bool:
        """Paint until a time what the view looks at since a picture was begun; False when all is there."""
        room, camera = made.room, sight.camera
        if room.shows(camera) or not room.is_near(camera):
            return False
        (x, y), (u, v) = room.place(camera), room.place(made.judged)
        return self.reach_ahead(made, sight, held_out, until, (x - u, y - v))

    def drop(self) -> None:
        """Leave the strip that is begun: the picture is painted on elsewhere, or not shown any more."""
        if self._is_bound:
            self._finish(self._begun)
        elif self._begun is not None:
            self._begun.close()  # type: ignore[attr-defined]
        self._begun, self._strip, self._is_bound = None, None, False

    def _finish(self, steps: Iterator[bool | None] | None) -> None:
        for _ in steps or ():
            pass
        self._begun, self._strip, self._is_bound = None, None, False

    def _moved(
        self, kept: KeptPicture, sight: Sight, held_out: frozenset[str], by: tuple[int, int]
    ) -> Iterator[bool]:
        """Move a picture so that the view has room in it."""
        yield from kept.move(*by)
        self._layers.find_words(kept, sight, held_out)
