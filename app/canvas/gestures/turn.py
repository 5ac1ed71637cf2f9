"""Turn what is selected by its handle, in steps of 15 degrees unless free."""

import math

from app.canvas.gestures.pointer import Around, Do, Gesture, Preview
from app.canvas.sub_plan import sub_plan
from wiring.edits.turn import turn
from wiring.plan.names import PartId
from wiring.plan.places import Point

STEP_DEG = 15.0
HINT = "Release to leave it so. Ctrl: any angle. Esc: as it was."


def turn_parts(around: Around, start: Point, centre: Point, parts: frozenset[PartId]) -> Gesture:
    """Turn parts about a point by the angle the pointer sweeps around it."""
    touched = parts | around.geometry.wires_of(parts)
    some = sub_plan(around.plan, touched)
    first = math.atan2(start[1] - centre[1], start[0] - centre[0])
    degrees = 0.0
    preview = Preview(cursor="turn", hint=HINT)
    while True:
        pointer = yield preview
        if pointer.phase == "move":
            swept = math.degrees(math.atan2(pointer.at[1] - centre[1], pointer.at[0] - centre[0]) - first)
            degrees = swept if pointer.free else round(swept / STEP_DEG) * STEP_DEG
            plan = turn(parts, degrees, centre, kinds=around.kinds).apply(some)
            preview = Preview(plan, touched, cursor="turn", hint=HINT)
        elif pointer.phase == "release":
            return Do(turn(parts, degrees, centre, kinds=around.kinds)) if degrees % 360 else None
