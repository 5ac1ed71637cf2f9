"""Move a corner of the board's outline or of a track."""

from app.canvas.gestures.pointer import Around, Do, Gesture, Pick, Pointer, Preview, travelled
from app.canvas.gestures.snapping import on_grid
from app.canvas.hands.ground_edits import line_changed
from app.ground_keys import BOARD, line_points
from wiring.plan.places import Point
from wiring.plan.plan import Line

HINT = "Release to leave the corner here. Ctrl: off the grid. Esc: as it was."


def drag_line_corner(around: Around, pressed: Pointer) -> Gesture:
    """Move one corner with the pointer."""
    key, corner = pressed.hit.line, pressed.hit.corner
    old = line_points(around.plan, key)
    new = old
    preview = Preview(cursor="grab", hint=HINT)
    while True:
        pointer = yield preview
        if pointer.phase == "move" and (new is not old or travelled(around, pressed.at, pointer.at)):
            place = pointer.at if pointer.free else on_grid(pointer.at, around.grid_mm)
            new = _with(old, corner, place)
            shown = (*new, new[0]) if key == BOARD else new
            preview = Preview(outline=shown, cursor="grab", hint=HINT)
        elif pointer.phase == "release":
            return Do(line_changed(key, new)) if new != old else Pick(frozenset(), key)


def _with(line: Line, corner: int, place: Point) -> Line:
    return (*line[:corner], place, *line[corner + 1 :])
