"""Move what is selected: it follows the pointer, snaps, and is moved for good on release."""

import numpy as np

from app.canvas.gestures.panel_snap import snapped_on_panel
from app.canvas.gestures.pointer import Act, Around, Do, Gesture, Pointer, Preview
from app.canvas.gestures.snapping import Snapped, snapped
from app.canvas.table import Floats
from app.canvas.touched import sub_plan
from wiring.edits.move import move
from wiring.plan.names import PartId
from wiring.plan.places import Point

HINT = "Release to set down. Ctrl: off the grid. Esc: leave it where it was."


def drag_parts(around: Around, start: Point, held: PartId, parts: frozenset[PartId]) -> Gesture:
    """Shift parts by the way the pointer travels from `start`, holding one of them."""
    origin = around.plan.parts[held]
    touched = parts | around.geometry.wires_of(parts)
    some = sub_plan(around.plan, touched)  # a preview says nothing of the rest
    others = standing_still(around, parts)
    shift: Point = (0.0, 0.0)
    pointer: Pointer = yield Preview(cursor="grab", hint=HINT)
    while True:
        if pointer.phase == "move":
            place = _place(around, pointer, (origin.x_mm, origin.y_mm), start, others)
            shift = (place.at[0] - origin.x_mm, place.at[1] - origin.y_mm)
            plan = move(parts, *shift).apply(some)
            preview = Preview(plan, touched, guides=place.guides, cursor="grab", hint=HINT)
        elif pointer.phase == "release":
            return _act(parts, shift)
        pointer = yield preview


def standing_still(around: Around, moved: frozenset[PartId]) -> Floats:
    """Return x and y of every part that does not move."""
    keys = around.geometry.parts.keys()
    rows = [around.geometry.parts.get(k)[4:6] for k in keys if k not in moved]
    return np.array(rows) if rows else np.empty((0, 2))


def _place(around: Around, pointer: Pointer, origin: Point, start: Point, others: Floats) -> Snapped:
    wanted = (origin[0] + pointer.at[0] - start[0], origin[1] + pointer.at[1] - start[1])
    if pointer.free:
        return Snapped(wanted)
    return snapped_on_panel(around, wanted) or snapped(wanted, others, around.grid_mm, around.scale)


def _act(parts: frozenset[PartId], shift: Point) -> Act | None:
    return Do(move(parts, *shift)) if shift != (0.0, 0.0) else None
