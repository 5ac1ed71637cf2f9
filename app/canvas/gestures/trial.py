"""Show what an edit would do, let one of several be chosen, and do it when agreed."""

from collections.abc import Sequence

from app.canvas.backdrop_box import backdrop_box
from app.canvas.gestures.pointer import Around, Do, Gesture, Preview
from wiring.edits.edit import Edit, EditRefused
from wiring.plan.changes import changes_between

OTHERWISE = "This way cannot be: Space shows another. Esc: leave it."
AGREE = "Enter: do it so. Space: another way. Esc: leave it."


def try_out(around: Around, edits: Sequence[Edit], hint: str = AGREE) -> Gesture:
    """Show the first of the edits; Space or a choice shows another, Enter carries the shown one out."""
    chosen = 0
    preview = _shown(around, edits[0], 0, hint)
    while True:
        pointer = yield preview
        if pointer.key == "enter" and preview.plan is not None:
            return Do(edits[chosen], pick_new=True)
        now = chosen
        if pointer.key == "flip":
            now = (chosen + 1) % len(edits)
        elif 0 <= pointer.choice < len(edits):
            now = pointer.choice
        if now != chosen:
            chosen = now
            preview = _shown(around, edits[chosen], chosen, hint)


def _shown(around: Around, edit: Edit, index: int, hint: str) -> Preview:
    try:
        plan = edit.apply(around.plan)
    except EditRefused as refusal:
        return Preview(hint=OTHERWISE, chosen=index, refused=str(refusal), cursor="no")
    changes = changes_between(around.plan, plan)
    laid = plan.backdrop if plan.backdrop is not around.plan.backdrop else None
    frame = backdrop_box(laid) if laid is not None else None
    return Preview(plan, changes.ids, frame=frame, hint=hint, chosen=index)
