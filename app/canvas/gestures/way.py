"""Move the corner of a wireway; the wires along it follow."""

from app.canvas.gestures.pointer import Around, Do, Gesture, Pick, Pointer, Preview, travelled
from app.canvas.gestures.snapping import on_grid
from app.canvas.rerouting import with_wireway_followed
from wiring.edits.wireways import move_corner

HINT = "Release to leave the corner here; the wires along it follow. Esc: as it was."


def drag_corner(around: Around, pressed: Pointer) -> Gesture:
    """Move one corner with the pointer."""
    way, corner = pressed.hit.way, pressed.hit.corner
    held = frozenset(w.id for w in around.plan.wires.values() if way in w.along)
    place = around.plan.wireways[way].points[corner]
    old = place
    preview = Preview(cursor="grab", hint=HINT)
    while True:
        pointer = yield preview
        if pointer.phase == "move" and (place != old or travelled(around, pressed.at, pointer.at)):
            place = pointer.at if pointer.free else on_grid(pointer.at, around.grid_mm)
            plan = with_wireway_followed(move_corner(way, corner, *place), around.kinds, way).apply(
                around.plan
            )
            preview = Preview(plan, held, outline=plan.wireways[way].points, cursor="grab", hint=HINT)
        elif pointer.phase == "release":
            if place == old:
                return Pick(frozenset(), way)
            return Do(with_wireway_followed(move_corner(way, corner, *place), around.kinds, way))
