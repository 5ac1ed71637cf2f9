"""Bring the picture under the plan to scale: two points on it, and how far apart they really are."""

import math

from app.canvas.gestures.pointer import Around, Do, Gesture, Pointer, Preview
from app.canvas.gestures.typed_length import typed_mm, typed_words
from wiring.edits.backdrop import calibrate
from wiring.plan.places import Point
from wiring.quantities.wording import worded

FIRST = "Click a point on the picture, the end of a board’s edge for example."
SECOND = "Click a second point whose distance from the first you know."
LEAST_PX = 12.0


def calibrate_picture(around: Around) -> Gesture:
    """Take two points by clicks, then a length that is typed; Enter scales the picture."""
    points: list[Point] = []
    here: Point | None = None
    hint = FIRST
    while len(points) < 2:
        shown = (*points, here) if here is not None and points else tuple(points)
        pointer = yield Preview(outline=shown, hint=hint, cursor="cross")
        here = pointer.at
        if pointer.key == "back" and points:
            points, hint = [], FIRST
        elif _takes(around, points, pointer):
            points.append(here)
            hint = SECOND
    return (yield from _typed_length(around, points[0], points[1]))


def _takes(around: Around, points: list[Point], pointer: Pointer) -> bool:
    """Return whether a point is meant: a click or Enter, away from the first one."""
    if pointer.phase not in ("press", "double") and pointer.key != "enter":
        return False
    return not points or math.dist(points[0], pointer.at) * around.scale >= LEAST_PX


def _typed_length(around: Around, a: Point, b: Point) -> Gesture:
    units = around.plan.habits.units
    now = worded(math.dist(a, b) / 1000.0, "length", units)
    typed = ""
    while True:
        length_mm = typed_mm(typed, units)
        said = typed_words(typed, length_mm, units) or f"shown as {now}"
        hint = f"How far apart are they really? Type it, 2.4 m or 8 ft, then Enter: {said}"
        pointer = yield Preview(outline=(a, b), hint=hint, types=True, cursor="cross")
        typed = typed[:-1] if pointer.key == "back" else typed + pointer.text
        if pointer.key == "enter" and length_mm > 0:
            return Do(calibrate(a, b, length_mm))
