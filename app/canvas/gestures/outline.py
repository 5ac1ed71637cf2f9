"""Draw the outline of the board, or the course of a track or wireway, point by point."""

import math
from collections.abc import Callable, Mapping

from app.canvas.gestures.pointer import Around, Do, Gesture, Pointer, Preview
from app.canvas.gestures.snapping import on_grid
from wiring.edits.benchwork import add_track, set_board
from wiring.edits.edit import Edit
from wiring.edits.wireways import add_wireway
from wiring.plan.places import Point

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
    """Draw the "board", a "track" or a "wireway" until a double click, Enter or the board's first corner."""
    points: list[Point] = []
    pointer: Pointer | None = None
    while True:
        here = _place(around, pointer) if pointer is not None else None
        shown = [*points, here] if here is not None and here not in points[-1:] else points
        pointer = yield Preview(outline=tuple(shown), hint=HINTS[what], cursor="cross")
        place = _place(around, pointer)
        if pointer.key == "back" and points:
            points.pop()
        enough = len(points) >= LEAST_POINTS[what]
        ends = pointer.phase == "double" or pointer.key == "enter"
        closes = what == "board" and pointer.phase == "press" and _at_first(around, points, pointer.at)
        if enough and (ends or closes):
            return Do(EDITS[what](points))
        sets = pointer.phase == "press" or pointer.key in ("flip", "enter")
        if sets and place not in points[-1:]:
            points.append(place)


def _at_first(around: Around, points: list[Point], at: Point) -> bool:
    return bool(points) and math.dist(points[0], at) * around.scale <= CLOSING_PX


def _place(around: Around, pointer: Pointer) -> Point:
    return pointer.at if pointer.free else on_grid(pointer.at, around.grid_mm)
