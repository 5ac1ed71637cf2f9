"""Place a row of parts: drag its line, then say how many or how far apart."""

import math
from contextlib import suppress
from itertools import pairwise

from app.canvas.gestures.pointer import Around, Do, Gesture, Pointer, Preview, travelled
from wiring.catalogue.kind import Kind
from wiring.edits.edit import Edit, EditRefused
from wiring.edits.place_row import place_row, row_places
from wiring.edits.smooth_line import smooth_line
from wiring.plan.places import Point
from wiring.plan.plan import Plan
from wiring.quantities.not_understood import NotUnderstood
from wiring.quantities.reading import read
from wiring.quantities.wording import worded

SPACING_MM = {"metric": 100.0, "us": 101.6}  # about a street lamp's distance in H0
STRAIGHT_SHARE = 0.12  # a line this close to level or upright is meant to be


def place_in_row(
    around: Around, kind: Kind, start: Point, turn_deg: float, apart_mm: float | None = None
) -> Gesture:
    """Set down parts from `start` along the line that is dragged; typed text says how many there are.

    While nothing is typed they stand `apart_mm` apart, or as far as street lamps do.
    """
    end, typed, is_laid = start, "", False
    via: list[Point] = []
    while True:
        edit, plan, words = _row(around, kind, (start, *via, end), typed, turn_deg, apart_mm)
        new = frozenset(plan.parts.keys() - around.plan.parts.keys()) if plan is not None else frozenset()
        pointer: Pointer = yield Preview(
            plan,
            new,
            guides=tuple(pairwise(smooth_line((start, *via, end)))),
            hint=words,
            types=True,
            cursor="cross" if plan else "no",
        )
        if pointer.key == "back":
            typed = typed[:-1]
        typed += pointer.text
        if is_laid and pointer.phase == "press" and pointer.adds:
            via, is_laid = [*via, end], False  # Shift again: the row bends here and goes on
        agrees = pointer.key == "enter" or (is_laid and pointer.phase in ("press", "double"))
        if agrees and plan is not None:
            return Do(edit, pick_new=True)
        if pointer.phase in ("move", "release", "press") and not is_laid:
            last = via[-1] if via else start
            end = _end(around, last, pointer)
            is_laid = pointer.phase != "move" and travelled(around, last, end)


def _row(
    around: Around,
    kind: Kind,
    line: tuple[Point, ...],
    typed: str,
    turn_deg: float,
    wished_mm: float | None,
) -> tuple[Edit, Plan | None, str]:
    units = around.plan.habits.units
    count, spacing_mm = None, wished_mm or SPACING_MM.get(units, 100.0)
    text = typed.strip()
    if text.isdigit():
        count = int(text)
    elif text:
        # Half-typed text is no fault: until it can be read, the row stays as it was.
        with suppress(NotUnderstood):
            spacing_mm = read(text, "length") * 1000.0
    start, *via, end = line
    edit = place_row(kind, start, end, via=via, count=count, spacing_mm=spacing_mm, turn_deg=turn_deg)
    try:
        places = row_places(start, end, via=via, count=count, spacing_mm=spacing_mm)
        plan = edit.apply(around.plan)
    except EditRefused as refusal:
        return edit, None, f"{typed} {refusal}".strip()
    apart_m = math.dist(places[0], places[1]) / 1000.0 if len(places) > 1 else 0.0
    said = f"{len(places)} parts, {worded(apart_m, 'length', units)} apart" if apart_m else "One part"
    how = (
        f"Typed: {typed}" if typed else "Type how many (8) or how far apart (120 mm), Shift+click to curve it"
    )
    return edit, plan, f"{said}. {how}. Enter: set them down."


def _end(around: Around, start: Point, pointer: Pointer) -> Point:
    """Return where the row ends: level or upright when nearly so, on the grid unless free."""
    if pointer.free:
        return pointer.at
    x, y = around.on_grid(pointer.at)
    dx, dy = abs(x - start[0]), abs(y - start[1])
    if dy <= STRAIGHT_SHARE * dx:
        return x, start[1]
    if dx <= STRAIGHT_SHARE * dy:
        return start[0], y
    return x, y
