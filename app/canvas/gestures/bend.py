"""Move a bend of a wire, or make a new one."""

import itertools

from app.canvas.gestures.pointer import Act, Around, Do, Gesture, Preview
from app.canvas.hits.hit import segment_distance
from wiring.edits.bends import add_bend, move_bend, remove_bend
from wiring.plan.names import WireId
from wiring.plan.places import Point

HINT = "Release to leave the bend here. Backspace: take it out. Esc: as it was."


def drag_bend(around: Around, wire_id: WireId, index: int) -> Gesture:
    """Move one bend with the pointer; Backspace takes it out."""
    old = around.plan.wires[wire_id].bends[index]
    place = old
    preview = Preview(cursor="grab", hint=HINT)
    while True:
        pointer = yield preview
        if pointer.key == "back":
            return Do(remove_bend(wire_id, index))
        if pointer.phase == "move":
            place = pointer.at if pointer.free else around.on_grid(pointer.at)
            plan = move_bend(wire_id, index, *place).apply(around.plan)
            preview = Preview(plan, frozenset((wire_id,)), cursor="grab", hint=HINT)
        elif pointer.phase == "release":
            return Do(move_bend(wire_id, index, *place)) if place != old else None


def new_bend(around: Around, wire_id: WireId, at: Point) -> Act | None:
    """Return the act that puts a bend into the leg of a wire nearest to a place."""
    raw = around.geometry.raw_path(wire_id)
    legs = list(itertools.pairwise(raw))
    if not legs:
        return None
    nearest = min(range(len(legs)), key=lambda i: segment_distance(*legs[i], at))
    return Do(add_bend(wire_id, nearest, *around.on_grid(at)))
