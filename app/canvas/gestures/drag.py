"""Move what is selected: it follows the pointer, snaps, and is moved for good on release."""

from app.canvas.gestures.pointer import Act, Around, Do, Gesture, Pick, Pointer, Preview, travelled
from app.canvas.gestures.resumed import resumed
from app.canvas.gestures.spots import marks_of, spot_at
from app.canvas.hands.ground_edits import shifted_joists, with_grounds_shifted
from app.canvas.sub_plan import sub_plan
from app.ground_keys import joist_key
from wiring.edits.harness_follow import with_harness_of
from wiring.edits.move import move
from wiring.plan.names import PartId
from wiring.plan.places import Point

HINT = "Release to set down. Ctrl: off the grid. Esc: leave it where it was."


def drag_parts(around: Around, start: Point, held: PartId, parts: frozenset[PartId]) -> Gesture:
    """Shift parts by the way the pointer travels from `start`, holding one of them.

    Those that were not selected are afterwards: the next key is meant for what the hand has held.
    """
    part = around.plan.parts[held]
    grounds = around.grounds if held in around.selected else frozenset[str]()
    act = yield from drag_all(around, start, (part.x_mm, part.y_mm), parts, grounds)
    return act._replace(pick=parts) if isinstance(act, Do) and held not in around.selected else act


def drag_joists(around: Around, pressed: Pointer) -> Gesture:
    """Shift all that is selected by one of its joists; a mere click selects that joist alone."""
    index = pressed.hit.joist
    parts = frozenset(i for i in around.selected if i in around.plan.parts)
    drag = drag_all(around, pressed.at, around.plan.joists[index].start, parts, around.grounds)
    next(drag)
    pointer = yield Preview(cursor="grab")
    while not (pointer.phase == "move" and travelled(around, pressed.at, pointer.at)):
        if pointer.phase == "release":
            return Pick(frozenset(), joist_key(index))
        pointer = yield Preview(cursor="grab")
    return (yield from resumed(drag, pointer))


def drag_all(
    around: Around, start: Point, origin: Point, parts: frozenset[PartId], grounds: frozenset[str]
) -> Gesture:
    """Shift parts and what of the ground is selected with them; `origin` is the place that snaps."""
    touched = parts | around.geometry.wires_of(parts) | with_harness_of(around.plan, parts, around.kinds)
    some = sub_plan(around.plan, touched)  # a preview says nothing of the rest
    marks = marks_of(around, parts)
    shift: Point = (0.0, 0.0)
    pointer: Pointer = yield Preview(cursor="grab", hint=HINT)
    while True:
        if pointer.phase == "move":
            wanted = (origin[0] + pointer.at[0] - start[0], origin[1] + pointer.at[1] - start[1])
            place = spot_at(around, wanted, marks, free=pointer.free)
            shift = (place.at[0] - origin[0], place.at[1] - origin[1])
            plan = move(parts, *shift, kinds=around.kinds).apply(some) if parts else None
            bars = shifted_joists(around.plan, grounds, *shift)
            preview = Preview(plan, touched, bars=bars, guides=place.guides, cursor="grab", hint=HINT)
        elif pointer.phase == "release":
            return _act(around, parts, grounds, shift)
        pointer = yield preview


def _act(around: Around, parts: frozenset[PartId], grounds: frozenset[str], shift: Point) -> Act | None:
    if shift == (0.0, 0.0):
        return None
    if not grounds:
        return Do(move(parts, *shift, kinds=around.kinds))
    return Do(with_grounds_shifted(around.plan, parts, grounds, *shift, around.kinds))
