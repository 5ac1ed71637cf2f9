"""Pull a wire from terminal to terminal, with a bend at every click on the way."""

import itertools

from app.canvas.gestures.clear_corner import bodies_of, keeps_level_first
from app.canvas.gestures.pointer import Around, Do, Gesture, Pointer, Preview, travelled
from app.canvas.hits.hit import Hit
from wiring.edits.connect import connect
from wiring.edits.edit import Edit, EditRefused
from wiring.edits.pole_colour import pole_colour
from wiring.edits.square_way import Box
from wiring.plan.designations import terminal_label
from wiring.plan.names import TerminalRef
from wiring.plan.places import Point

BEGIN = "Click the terminal where the wire starts. Esc: done."
ON_THE_WAY = (
    "Click to bend, or the terminal where it ends. Ctrl: slanted. "
    "Space: other corner. Backspace: one bend back."
)
NOT_A_TERMINAL = "A wire starts at a terminal: click one of the copper dots."
NEITHER = "BK"  # the colour of a wire joined to no supply yet
SAME = "This is where the wire starts: choose another terminal."


def pull_wire(around: Around) -> Gesture:
    """Wait for a click on a terminal, then pull a wire from it."""
    hint = BEGIN
    pointer: Pointer | None = None
    while True:
        landing = pointer.hit.terminal if pointer is not None else None
        pointer = yield Preview(lands=True, landing=landing, hint=hint, cursor="cross")
        if pointer.phase in ("press", "double") or pointer.key == "enter":
            if pointer.hit.terminal is not None:
                return (yield from pull_from(around, pointer.hit.terminal, pointer.at))
            hint = NOT_A_TERMINAL
        elif pointer.hit.terminal is not None:
            hint = BEGIN


def pull_from(around: Around, start: TerminalRef, pressed_at: Point) -> Gesture:
    """Pull a wire from a terminal under the pressed pointer until it lands on another one."""
    x, y = around.geometry.terminals.get(start).tolist()
    fixed: list[tuple[Point, ...]] = [((x, y),)]  # one entry a click, so that Backspace takes back a click
    flipped, has_left, down_at = False, False, pressed_at
    hint = f"From {terminal_label(around.plan, start)}. {ON_THE_WAY}"
    pointer = Pointer("move", pressed_at, Hit(pressed_at, terminal=start))
    while True:
        if pointer.key == "back" and len(fixed) > 1:
            fixed.pop()
        flipped = flipped != (pointer.key == "flip")
        presses = pointer.phase in ("press", "double") or pointer.key == "enter"
        if presses:
            down_at, has_left = pointer.at, False
        has_left = has_left or travelled(around, down_at, pointer.at)
        points = [p for step in fixed for p in step]
        landing, tail, refusal = _aim(around, pointer, start, points, flipped)
        if presses or (pointer.phase == "release" and has_left):
            if landing is not None and not refusal:
                return Do(_wire(around, start, landing, (*points, *tail)), pick_new=True)
            if landing is None and tail:
                fixed.append(tail)
        shown = "" if landing == start and not has_left else refusal
        pointer = yield Preview(
            line=(*points, *tail),
            look=(around.wire_size, _colour(around, start, *([landing] if landing is not None else ()))),
            landing=landing,
            lands=True,
            hint=shown or hint,
            cursor="no" if shown else "cross",
        )


def _aim(
    around: Around, pointer: Pointer, start: TerminalRef, points: list[Point], flipped: bool
) -> tuple[TerminalRef | None, tuple[Point, ...], str]:
    """Return where the wire would land, its way from the last fixed point, and why it may not."""
    landing = pointer.hit.terminal
    if landing is not None:
        x, y = around.geometry.terminals.get(landing).tolist()
        tail = _legs(points, (x, y), pointer.free, flipped, bodies_of(around, (start, landing)))
        refusal = (
            SAME if landing == start else _refusal(around, _wire(around, start, landing, (*points, *tail)))
        )
        return landing, tail, refusal
    place = pointer.at if pointer.free else around.on_grid(pointer.at)
    return None, _legs(points, place, pointer.free, flipped, bodies_of(around, (start,))), ""


def _legs(
    points: list[Point], to: Point, free: bool, flipped: bool, bodies: tuple[Box, ...] = ()
) -> tuple[Point, ...]:
    """Return the way from the last fixed point: over a square corner off bodies, or straight when free."""
    last = points[-1]
    if to == last:
        return ()
    dx, dy = to[0] - last[0], to[1] - last[1]
    if free or abs(dx) < 1e-6 or abs(dy) < 1e-6:
        return (to,)
    along_x = abs(dx) >= abs(dy)
    if len(points) > 1:  # go on in the direction of the last leg's corner, not back over it
        before = points[-2]
        along_x = abs(last[0] - before[0]) < abs(last[1] - before[1])
    along_x = keeps_level_first(last, to, bodies, along_x)
    corner = (to[0], last[1]) if along_x != flipped else (last[0], to[1])
    return (corner, to)


def _wire(around: Around, start: TerminalRef, end: TerminalRef, path: tuple[Point, ...]) -> Edit:
    bends = _without_idle_bends(path)[1:-1]
    return connect(start, end, bends, around.wire_size, _colour(around, start, end), kinds=around.kinds)


def _colour(around: Around, *ends: TerminalRef) -> str:
    """Return the colour that was chosen, else the one its circuit gives the wire."""
    return around.wire_colour or pole_colour(around.plan, around.kinds, ends) or NEITHER


def _refusal(around: Around, edit: Edit) -> str:
    try:
        edit.apply(around.plan)
    except EditRefused as refusal:
        return str(refusal)
    return ""


def _without_idle_bends(path: tuple[Point, ...]) -> tuple[Point, ...]:
    """Return the path without points that lie on a straight line between their neighbours."""
    kept = [path[0]]
    for here, after in itertools.pairwise(path):
        before = kept[-1]
        cross = (here[0] - before[0]) * (after[1] - here[1]) - (here[1] - before[1]) * (after[0] - here[0])
        forward = (here[0] - before[0]) * (after[0] - here[0]) + (here[1] - before[1]) * (after[1] - here[1])
        if here != before and (abs(cross) > 1e-6 or forward < 0):
            kept.append(here)
    return (*kept, path[-1])
