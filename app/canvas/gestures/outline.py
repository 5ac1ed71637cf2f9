"""Draw the outline of the board, or the course of a track or wireway, point by point."""

import math
from collections.abc import Callable, Mapping

import numpy as np

from app.canvas.gestures.pointer import Around, Do, Gesture, Pointer, Preview
from app.canvas.gestures.snapping import Snapped, snapped
from app.canvas.gestures.typed_length import BEGINS, towards, typed_mm, typed_words
from wiring.edits.benchwork import add_track, set_board
from wiring.edits.edit import Edit
from wiring.edits.wireways import add_wireway
from wiring.plan.places import Point
from wiring.quantities.wording import worded

HINTS = {
    "board": "Click the corners of the board, the first one again to close it. Backspace: one corner back.",
    "track": "Click along the track, twice at its end. Backspace: one point back.",
    "wireway": "Click along the beam or through the holes, twice at the end. Backspace: one corner back.",
}
CLOSING_PX = 10.0
LEAST_POINTS = {"board": 3, "track": 2, "wireway": 2}
EDITS: Mapping[str, Callable[[list[Point]], Edit]] = {
    "board": set_board,
    "track": add_track,
    "wireway": add_wireway,
}


def draw_outline(around: Around, what: str) -> Gesture:
    """Draw the "board", a "track" or a "wireway" until a double click, Enter or the board's first corner.

    A length that is typed sets the next point that far away, in the direction of the pointer.
    """
    points: list[Point] = []
    typed, free = "", False
    there = Snapped((0.0, 0.0))
    pointer: Pointer | None = None
    while True:
        place = _reached(around, points, there.at, typed, free)
        shown = [*points, place] if pointer is not None and place not in points[-1:] else points
        pointer = yield Preview(
            outline=tuple(shown),
            guides=there.guides,
            hint=_words(around, what, points, place, typed),
            types=bool(points),
            begins="" if typed else BEGINS,
            cursor="cross",
        )
        there = _place(around, points, pointer)
        if pointer.key == "back" and typed:
            typed = typed[:-1]
        elif pointer.key == "back" and points:
            points.pop()
        typed += pointer.text
        free = pointer.free
        place = _reached(around, points, there.at, typed, free)
        enough = len(points) >= LEAST_POINTS[what] and not typed
        ends = pointer.phase == "double" or pointer.key == "enter"
        closes = what == "board" and pointer.phase == "press" and _at_first(around, points, pointer.at)
        if enough and (ends or closes):
            return Do(EDITS[what](points))
        sets = pointer.phase == "press" or pointer.key in ("flip", "enter")
        if sets and place not in points[-1:]:
            points.append(place)
            typed = ""


def _words(around: Around, what: str, points: list[Point], place: Point, typed: str) -> str:
    units = around.plan.habits.units
    if typed:
        words = typed_words(typed, typed_mm(typed, units), units)
        return f"{words}, towards the pointer. Enter: set it there. Backspace: type it anew."
    if not points or place == points[-1]:
        return HINTS[what]
    return f"{worded(math.dist(points[-1], place) / 1000.0, 'length', units)}, or type it. {HINTS[what]}"


def _at_first(around: Around, points: list[Point], at: Point) -> bool:
    return bool(points) and math.dist(points[0], at) * around.scale <= CLOSING_PX


def _reached(around: Around, points: list[Point], there: Point, typed: str, free: bool) -> Point:
    """Return where the next point would be set."""
    length_mm = typed_mm(typed, around.plan.habits.units)
    return towards(points[-1], there, length_mm, free=free) if length_mm and points else there


def _place(around: Around, points: list[Point], pointer: Pointer) -> Snapped:
    """Return the place meant: in line with points set before, or on the grid."""
    if pointer.free:
        return Snapped(pointer.at)
    return snapped(pointer.at, np.array(points).reshape(-1, 2), around.grid_mm, around.scale)
