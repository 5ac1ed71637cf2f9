"""Which part or wire is meant by the words at a place of a sheet."""

import re

from app.theme.fonts import picture_width
from wiring.pictures.picture import Picture, Words
from wiring.plan.plan import Plan

REACH_MM = 3.0  # how far beside the words a click still means them
SHIFTS = {"left": 0.0, "centre": 0.5, "right": 1.0}
NAME = re.compile(r"[A-Za-z]+[0-9]+")


def named_at(picture: Picture, x_mm: float, y_mm: float, plan: Plan) -> tuple[str, ...]:
    """Return the part or wire whose name stands nearest in the line of words at a place; empty for none."""
    names = {p.designation: p.id for p in plan.parts.values()} | {w.label: w.id for w in plan.wires.values()}
    best, found = (float("inf"), 0.0), ""
    for words in (item for item in picture.items if isinstance(item, Words)):
        one = next((names[n] for n in NAME.findall(words.text) if n in names), "")
        if one:
            across, down = _away(words, x_mm, y_mm)
            if down <= REACH_MM and (across, down) < best:
                best, found = (across, down), one
    return (found,) if found else ()


def _away(words: Words, x_mm: float, y_mm: float) -> tuple[float, float]:
    """Return how far a place lies beside a line of words and above or below it, in mm."""
    dx, dy = x_mm - words.at[0], y_mm - words.at[1]
    turns = round(words.turn_deg / 90.0) % 4
    along, across = ((dx, dy), (dy, -dx), (-dx, -dy), (-dy, dx))[turns]
    width = picture_width(words.text, words.weight) * words.size_mm
    left = -SHIFTS[words.align] * width
    return max(left - along, along - left - width, 0.0), abs(across)
