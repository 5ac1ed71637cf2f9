"""Move the picture under the plan: drag anywhere, for what is drawn already stays where it is."""

from app.canvas.backdrop_box import backdrop_box
from app.canvas.geometry import Box
from app.canvas.gestures.pointer import Around, Do, Gesture, Preview
from app.canvas.gestures.snapping import on_grid
from wiring.edits.backdrop import shift_backdrop
from wiring.plan.places import Point

BEGIN = "Drag to move the picture under the plan; Ctrl: off the grid. Esc: done."
DROP = "Let go where it is to lie."


def shift_picture(around: Around) -> Gesture:
    """Move the picture by one drag; nothing moves by a click."""
    backdrop = around.plan.backdrop
    if backdrop is None:
        return None
    start: Point | None = None
    by = 0.0, 0.0
    while True:
        frame = _shifted(backdrop_box(backdrop), *by) if start is not None else None
        hint = DROP if start is not None else BEGIN
        pointer = yield Preview(frame=frame, hint=hint, cursor="grab")
        if pointer.phase == "press":
            start = pointer.at
        if start is not None:
            by = pointer.at[0] - start[0], pointer.at[1] - start[1]
            if not pointer.free:
                by = on_grid(by, around.grid_mm)
            if pointer.phase == "release" and by != (0.0, 0.0):
                return Do(shift_backdrop(*by))
            if pointer.phase == "release":
                start = None


def _shifted(box: Box, dx_mm: float, dy_mm: float) -> Box:
    return Box(box.left + dx_mm, box.top + dy_mm, box.right + dx_mm, box.bottom + dy_mm)
