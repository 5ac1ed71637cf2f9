"""Place a part from the tray: its ghost follows the pointer and turns before it is set down."""

import math

from app.canvas.gestures.pointer import Around, Do, Gesture, Preview
from app.canvas.gestures.row import place_in_row
from app.canvas.gestures.spots import marks_of, spot_at
from app.canvas.splitting import goes_into_wires
from wiring.catalogue.kind import Kind
from wiring.edits.edit import Edit
from wiring.edits.place_part import place
from wiring.edits.split_wire import insert_in_wire
from wiring.plan.part import Part
from wiring.plan.places import Point, terminal_at

GHOST_ID = "ghost"
QUARTER_DEG = 90.0
INTO = "Click to put it into wire -{}. Ctrl: beside the wire. R: turn. Esc: done."


def place_part(around: Around, kind: Kind, turn_deg: float = 0.0) -> Gesture:
    """Set down one part of a kind where the pointer clicks; R turns it while it is in the hand."""
    hint = f"Click to place {article(kind.title)}. Shift and drag: a row. R: turn. Esc: done."
    marks = marks_of(around)
    preview = Preview(hint=hint, cursor="cross")
    while True:
        pointer = yield preview
        turned = {"turn": QUARTER_DEG, "turn back": -QUARTER_DEG}.get(pointer.key, 0.0)
        turn_deg = (turn_deg + turned) % 360
        spot = spot_at(around, pointer.at, marks, free=pointer.free)
        if pointer.phase == "press" and pointer.adds:
            return (yield from place_in_row(around, kind, spot.at, turn_deg))
        into = pointer.hit.wire if goes_into_wires(kind) and not pointer.free else ""
        if pointer.phase in ("press", "double") or pointer.key == "enter":
            if into:
                return Do(_put_into(around, into, kind, spot.at, turn_deg), pick_new=True)
            return Do(place(kind, *spot.at, turn_deg), pick_new=True)
        ghost = Part(
            id=GHOST_ID,
            kind=kind.key,
            designation=kind.designation,
            x_mm=spot.at[0],
            y_mm=spot.at[1],
            turn_deg=turn_deg,
        )
        said = INTO.format(around.plan.wires[into].label) if into else hint
        preview = Preview(ghost=ghost, guides=spot.guides, hint=said, cursor="cross")


def _put_into(around: Around, wire_id: str, kind: Kind, at: Point, turn_deg: float) -> Edit:
    """Return the edit that sets a part into a wire, with the side first that faces the wire's start."""
    start = around.geometry.raw_path(wire_id)[0]
    part = Part(id=GHOST_ID, kind=kind.key, designation="X", x_mm=at[0], y_mm=at[1], turn_deg=turn_deg)
    names = [t.name for t in kind.terminals]
    near, far = sorted(names, key=lambda name: round(math.dist(terminal_at(part, kind, name), start), 3))
    return insert_in_wire(wire_id, kind, *at, turn_deg, near=near, far=far, kinds=around.kinds)


def article(title: str) -> str:
    """Return the title as it stands within a sentence, with its article; several things have none."""
    within = title[:1].lower() + title[1:] if title[1:2].islower() else title
    if "cells " in within:
        return within
    return f"{'an' if within[:1].lower() in 'aeio' or title.startswith('LED') else 'a'} {within}"
