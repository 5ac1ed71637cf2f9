"""Place a kept set: all its parts and wires follow the pointer until a click sets them down."""

from app.canvas.gestures.place import QUARTER_DEG
from app.canvas.gestures.pointer import Around, Do, Gesture, Preview
from app.canvas.gestures.snapping import on_grid
from wiring.edits.fragment import paste
from wiring.plan.changes import changes_between

TURNS = {"turn": QUARTER_DEG, "turn back": -QUARTER_DEG}


def place_set(around: Around, name: str, text: str, turn_deg: float = 0.0) -> Gesture:
    """Set down a copy of the set with its middle where the pointer clicks; R turns it in the hand."""
    hint = f"Click to set down “{name}”. R: turn. Esc: done."
    preview = Preview(turn_deg=turn_deg, hint=hint, cursor="cross")
    while True:
        pointer = yield preview
        turn_deg = (turn_deg + TURNS.get(pointer.key, 0.0)) % 360.0
        at = pointer.at if pointer.free else on_grid(pointer.at, around.grid_mm)
        edit = paste(text, at=at, turn_deg=turn_deg, as_one=True, kinds=around.kinds)
        edit = edit._replace(label=f"Place {name}")
        if pointer.phase in ("press", "double") or pointer.key == "enter":
            return Do(edit, pick_new=True)
        plan = edit.apply(around.plan)
        touched = changes_between(around.plan, plan).ids
        preview = Preview(plan, touched, turn_deg=turn_deg, hint=hint, cursor="cross")
