"""Measure: how far it is between two places, across, down and straight."""

import math
from itertools import pairwise

from app.canvas.gestures.pointer import Around, Gesture, Pointer, Preview
from wiring.plan.places import Point
from wiring.quantities.wording import worded

BEGIN = "Click or drag from where to measure. Esc: done."
NEAR_PX = 8.0


def measure(around: Around) -> Gesture:
    """Show the distance from the place that was clicked last; every click measures on from there."""
    points: list[Point] = []
    pointer: Pointer | None = None
    while True:
        here = _place(around, pointer) if pointer is not None else None
        line = (*points, here) if here is not None and points else tuple(points)
        pointer = yield Preview(outline=line, hint=_words(around, line), cursor="cross")
        place = _place(around, pointer)
        if pointer.key == "back" and points:
            points.pop()
        elif pointer.phase == "double":
            points = []
        elif (
            pointer.phase == "press"
            or pointer.key == "enter"
            or (
                pointer.phase == "release"
                and points
                and math.dist(points[-1], place) * around.scale > NEAR_PX
            )
        ):
            points.append(place)


def _place(around: Around, pointer: Pointer) -> Point:
    """Return the terminal or part's middle under the pointer, else the place itself."""
    if pointer.free:
        return pointer.at
    if pointer.hit.terminal is not None:
        x, y = around.geometry.terminals.get(pointer.hit.terminal).tolist()
        return x, y
    part = around.plan.parts.get(pointer.hit.part)
    return (part.x_mm, part.y_mm) if part is not None else pointer.at


def _words(around: Around, line: tuple[Point, ...]) -> str:
    if len(line) < 2:
        return BEGIN
    units = around.plan.habits.units

    def said(length_mm: float) -> str:
        return worded(length_mm / 1000.0, "length", units)

    (ax, ay), (bx, by) = line[-2], line[-1]
    straight, across, down = math.hypot(bx - ax, by - ay), abs(bx - ax), abs(by - ay)
    words = f"{said(straight)} straight, {said(across)} across, {said(down)} down"
    if len(line) > 2:
        whole = sum(math.dist(a, b) for a, b in pairwise(line))
        words += f"; {said(whole)} in all"
    return f"{words}. Twice: begin anew."
