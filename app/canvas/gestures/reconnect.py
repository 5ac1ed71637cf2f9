"""Lay one end of a wire on another terminal by dragging it there."""

from app.canvas.gestures.pointer import Around, Do, Gesture, Pointer, Preview
from wiring.edits.connect import reconnect
from wiring.edits.edit import Edit, EditRefused
from wiring.edits.remove import remove
from wiring.plan.names import TerminalRef, WireId
from wiring.plan.places import Point

HINT = "Let go over another terminal to lay the wire's end there. Esc: as it was."


def drag_end(around: Around, wire_id: WireId, which: str) -> Gesture:
    """Move the "start" or "end" of a wire; let go anywhere but over a terminal, it stays where it was."""
    wire = around.plan.wires[wire_id]
    without = remove((wire_id,)).apply(around.plan)
    preview = Preview(without, frozenset((wire_id,)), lands=True, hint=HINT, cursor="grab")
    while True:
        pointer = yield preview
        landing, why_not = _landing(around, wire_id, which, pointer)
        if pointer.phase == "release":
            return Do(_edit(around, wire_id, which, landing)) if landing is not None and not why_not else None
        if pointer.phase == "move":
            preview = preview._replace(
                line=_line(around, wire_id, which, pointer, landing),
                look=(wire.size, wire.colour),
                landing=landing,
                hint=why_not or HINT,
                cursor="no" if why_not else "grab",
            )


def _landing(around: Around, wire_id: WireId, which: str, pointer: Pointer) -> tuple[TerminalRef | None, str]:
    landing = pointer.hit.terminal
    if landing is None:
        return None, ""
    try:
        _edit(around, wire_id, which, landing).apply(around.plan)
    except EditRefused as refusal:
        return landing, str(refusal)
    return landing, ""


def _edit(around: Around, wire_id: WireId, which: str, landing: TerminalRef) -> Edit:
    return reconnect(wire_id, "start" if which == "start" else "end", landing, kinds=around.kinds)


def _line(
    around: Around, wire_id: WireId, which: str, pointer: Pointer, landing: TerminalRef | None
) -> tuple[Point, ...]:
    path = around.geometry.raw_path(wire_id)
    if landing is not None:
        x, y = around.geometry.terminals.get(landing).tolist()
        place: Point = (x, y)
    else:
        place = pointer.at if pointer.free else around.on_grid(pointer.at)
    return (place, *path[1:]) if which == "start" else (*path[:-1], place)
