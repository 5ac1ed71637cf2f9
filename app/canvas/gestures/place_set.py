"""Place a kept set: all its parts and wires follow the pointer until a click sets them down."""

from app.canvas.gestures.pointer import Around, Do, Gesture, Preview
from app.canvas.gestures.snapping import on_grid
from wiring.edits.edit import Edit
from wiring.edits.fragment import paste
from wiring.plan.changes import changes_between
from wiring.plan.places import Point


def place_set(around: Around, name: str, text: str) -> Gesture:
    """Set down a copy of the set with its middle where the pointer clicks."""
    hint = f"Click to set down “{name}”. Esc: done."
    preview = Preview(hint=hint, cursor="cross")
    while True:
        pointer = yield preview
        at = pointer.at if pointer.free else on_grid(pointer.at, around.grid_mm)
        edit = _edit(name, text, at)
        if pointer.phase in ("press", "double") or pointer.key == "enter":
            return Do(edit, pick_new=True)
        plan = edit.apply(around.plan)
        touched = changes_between(around.plan, plan).ids
        preview = Preview(plan, touched, hint=hint, cursor="cross")


def _edit(name: str, text: str, at: Point) -> Edit:
    return paste(text, at=at)._replace(label=f"Place {name}")
