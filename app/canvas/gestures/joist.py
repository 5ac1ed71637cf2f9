"""Lay a joist by dragging from end to end; move one, or one of its ends."""

import math

import msgspec

from app.canvas.gestures.pointer import Act, Around, Do, Gesture, Pointer, Preview, travelled
from app.canvas.gestures.snapping import on_grid
from app.canvas.gestures.typed_length import BEGINS, towards, typed_mm, typed_words
from wiring.edits.joists import LEAST_MM, add_joist, change_joist
from wiring.plan.joist import Joist
from wiring.plan.places import Point
from wiring.quantities.wording import worded

LAY = "Drag from one end of the joist to the other. Ctrl: off the grid and aslant. Esc: done."
TYPED = "towards the pointer. Enter: lay it. Backspace: type it anew."
CHANGE = "Release to leave it so. Ctrl: off the grid and aslant. Esc: as it was."
STRAIGHT_DEG = 6.0  # this near to level or upright, a joist is meant to be so


def draw_joist(around: Around) -> Gesture:
    """Lay one joist, as wide as the one laid last."""
    like = around.plan.joists[-1] if around.plan.joists else Joist(start=(0, 0), end=(1, 0))
    start: Point | None = None
    bar: Joist | None = None
    typed = ""
    units = around.plan.habits.units
    while True:
        pointer = yield Preview(
            bar=bar,
            hint=f"{typed_words(typed, typed_mm(typed, units), units)}, {TYPED}"
            if typed
            else _laying(bar, units),
            types=bar is not None,
            begins="" if typed else BEGINS,
            cursor="cross",
        )
        place = _place(around, pointer)
        if start is not None and not pointer.free:
            place = _straight(start, place)
        ends = pointer.phase == "release" or pointer.key == "enter"
        taken_back = typed[-1:] if pointer.key == "back" else ""
        typed = typed[:-1] if taken_back else typed + pointer.text
        if start is not None and (length_mm := typed_mm(typed, units)):
            place = towards(start, place, length_mm)
        if pointer.key == "back" and not taken_back:
            start = bar = None
        elif start is None and (pointer.phase in ("press", "double") or ends):
            start = None if pointer.phase == "release" else place
        elif start is not None and math.dist(start, place) >= LEAST_MM:
            if ends or pointer.phase == "press":
                return Do(add_joist(start, place))
            bar = msgspec.structs.replace(like, start=start, end=place)


def _laying(bar: Joist | None, units: str) -> str:
    """Say what to do, and how long the joist is by now."""
    long = f"{worded(math.dist(bar.start, bar.end) / 1000.0, 'length', units)}, or type it. " if bar else ""
    return long + LAY


def drag_joist(around: Around, pressed: Pointer) -> Gesture:
    """Move the joist that was pressed, or the end it was pressed at."""
    index, hold = pressed.hit.joist, pressed.hit.hold
    old = around.plan.joists[index]
    new = old
    preview = Preview(cursor="grab")
    while True:
        pointer = yield preview
        if pointer.phase == "move" and (new is not old or travelled(around, pressed.at, pointer.at)):
            new = _changed(around, old, hold, pressed, pointer)
            preview = Preview(bar=new, hint=CHANGE, cursor="grab")
        elif pointer.phase == "release":
            return _act(index, old, new)


def _act(index: int, old: Joist, new: Joist) -> Act | None:
    return Do(change_joist(index, start=new.start, end=new.end)) if new != old else None


def _changed(around: Around, old: Joist, hold: str, pressed: Pointer, pointer: Pointer) -> Joist:
    if hold in ("start", "end"):
        other = old.end if hold == "start" else old.start
        place = _place(around, pointer)
        place = place if pointer.free else _straight(other, place)
        return old if math.dist(place, other) < LEAST_MM else msgspec.structs.replace(old, **{hold: place})
    wanted = old.start[0] + pointer.at[0] - pressed.at[0], old.start[1] + pointer.at[1] - pressed.at[1]
    start = wanted if pointer.free else on_grid(wanted, around.grid_mm)
    by = start[0] - old.start[0], start[1] - old.start[1]
    return msgspec.structs.replace(old, start=start, end=(old.end[0] + by[0], old.end[1] + by[1]))


def _straight(a: Point, b: Point) -> Point:
    """Return b, drawn level with or upright to a when it nearly is."""
    dx, dy = abs(b[0] - a[0]), abs(b[1] - a[1])
    nearly = math.tan(math.radians(STRAIGHT_DEG))
    if dy <= dx * nearly:
        return b[0], a[1]
    return (a[0], b[1]) if dx <= dy * nearly else b


def _place(around: Around, pointer: Pointer) -> Point:
    return pointer.at if pointer.free else on_grid(pointer.at, around.grid_mm)
