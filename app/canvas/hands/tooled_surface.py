"""Tools on the drawing surface that stay in hand until Escape: kept sets, measuring, the picture beneath."""

from pathlib import Path

from app.canvas.gestures.calibrate import calibrate_picture
from app.canvas.gestures.measure import measure
from app.canvas.gestures.place_set import place_set
from app.canvas.gestures.pointer import Around, Gesture, Preview
from app.canvas.gestures.shift_picture import shift_picture
from app.canvas.gestures.trial import try_out
from app.canvas.hands.typed_surface import TypedSurface
from app.canvas.picture_file import NotAPicture
from app.canvas.picture_ways import picture_ways


class TooledSurface(TypedSurface):
    """Takes tools in hand."""

    def begin_set(self, name: str, text: str) -> None:
        """Set down copies of a kept set until Escape."""
        self._acting.take("set", lambda around, last: place_set(around, name, text, last.turn_deg))
        self._come_in()

    def begin_measure(self) -> None:
        """Measure between places until Escape."""
        self._acting.take("measure", lambda around, _last: measure(around))
        self._come_in()

    def begin_shift_picture(self) -> None:
        """Move the picture under the plan until Escape."""
        if self._has_picture():
            self._acting.take("picture", lambda around, _last: shift_picture(around))
            self._come_in()

    def begin_calibrate(self) -> None:
        """Bring the picture under the plan to scale by two points and their distance."""
        if not self._has_picture():
            return
        left = [calibrate_picture]  # once
        self._acting.take("calibrate", lambda around, _last: left.pop()(around) if left else None)
        self._come_in()

    def _has_picture(self) -> bool:
        there = self._session.plan.backdrop is not None
        if not there:
            self._session.refused.emit("There is no picture under the plan; choose one first.")
        return there

    def lay_picture(self, path: Path) -> None:
        """Lay a picture under the plan; asks whether to keep it inside or beside, then for its scale."""
        try:
            ways = picture_ways(path, self._session, self._state.pictures, self.sight().visible)
        except NotAPicture as why:
            self._session.refused.emit(str(why))
            return
        self.choices.offer("Keep the picture", [(w.words, w.tip) for w in ways], "Lay it under the plan")
        old, steps = self._session.plan.backdrop, ["scale", "lay"]
        is_back = old is not None and not self._state.pictures.levels()  # it was lost, and was to scale

        def begin(around: Around, _last: Preview) -> Gesture | None:
            step = steps.pop() if steps else ""
            if step == "lay":
                return try_out(around, [way.edit for way in ways])
            is_new = around.plan.backdrop is not None and around.plan.backdrop is not old and not is_back
            return calibrate_picture(around) if step == "scale" and is_new else None

        self._acting.take("picture", begin)
