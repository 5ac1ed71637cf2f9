"""Place a part from the tray: its ghost follows the pointer and turns before it is set down."""

from app.canvas.gestures.drag import standing_still
from app.canvas.gestures.panel_snap import snapped_on_panel
from app.canvas.gestures.pointer import Around, Do, Gesture, Preview
from app.canvas.gestures.row import place_in_row
from app.canvas.gestures.snapping import Snapped, snapped
from wiring.catalogue.kind import Kind
from wiring.edits.place_part import place
from wiring.plan.part import Part

GHOST_ID = "ghost"
QUARTER_DEG = 90.0


def place_part(around: Around, kind: Kind, turn_deg: float = 0.0) -> Gesture:
    """Set down one part of a kind where the pointer clicks; R turns it while it is in the hand."""
    hint = f"Click to place {article(kind.title)}. Shift and drag: a row. R: turn. Esc: done."
    others = standing_still(around, frozenset())
    preview = Preview(hint=hint, cursor="cross")
    while True:
        pointer = yield preview
        turned = {"turn": QUARTER_DEG, "turn back": -QUARTER_DEG}.get(pointer.key, 0.0)
        turn_deg = (turn_deg + turned) % 360
        spot = (
            Snapped(pointer.at)
            if pointer.free
            else snapped_on_panel(around, pointer.at)
            or snapped(pointer.at, others, around.grid_mm, around.scale)
        )
        if pointer.phase == "press" and pointer.adds:
            return (yield from place_in_row(around, kind, spot.at, turn_deg))
        if pointer.phase in ("press", "double") or pointer.key == "enter":
            return Do(place(kind, *spot.at, turn_deg), pick_new=True)
        ghost = Part(
            id=GHOST_ID,
            kind=kind.key,
            designation=kind.designation,
            x_mm=spot.at[0],
            y_mm=spot.at[1],
            turn_deg=turn_deg,
        )
        preview = Preview(ghost=ghost, guides=spot.guides, hint=hint, cursor="cross")


def article(title: str) -> str:
    """Return the title as it stands within a sentence, with its article."""
    within = title[:1].lower() + title[1:] if title[1:2].islower() else title
    return f"{'an' if within[:1].lower() in 'aeio' or title.startswith('LED') else 'a'} {within}"
