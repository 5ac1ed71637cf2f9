"""Where the parts and wires of a drawing are: beside the words that name them."""

import math
from collections.abc import Mapping

from wiring.pictures.picture import Picture, Words
from wiring.plan.designations import part_label
from wiring.plan.plan import Plan

Box = tuple[float, float, float, float]  # left, top, right, bottom in mm
REACH_MM = 16.0  # from a click to the name of what is meant
_PAD_MM = 1.2


def named_places(plan: Plan, picture: Picture) -> Mapping[str, tuple[Box, ...]]:
    """Return the boxes of the words that name each part or wire in a drawing."""
    from wiring.pictures.metrics import words_box

    names = {part_label(plan, part_id): part_id for part_id in plan.parts}
    names |= {f"-{wire.label}": wire.id for wire in plan.wires.values()}
    found: dict[str, list[Box]] = {}
    for item in picture.items:
        if isinstance(item, Words):
            for word in item.text.split():
                meant = names.get(word.split(":")[0].rstrip(",;"))
                if meant is not None:
                    left, top, right, bottom = words_box(item)
                    found.setdefault(meant, []).append(
                        (left - _PAD_MM, top - _PAD_MM, right + _PAD_MM, bottom + _PAD_MM)
                    )
    return {what: tuple(boxes) for what, boxes in found.items()}


def nearest(places: Mapping[str, tuple[Box, ...]], x_mm: float, y_mm: float) -> str | None:
    """Return what is named nearest to a point, None when nothing is near."""
    best, distance = None, REACH_MM
    for what, boxes in places.items():
        for box in boxes:
            away = _distance(box, x_mm, y_mm)
            if away < distance:
                best, distance = what, away
    return best


def _distance(box: Box, x_mm: float, y_mm: float) -> float:
    left, top, right, bottom = box
    return math.hypot(max(left - x_mm, x_mm - right, 0.0), max(top - y_mm, y_mm - bottom, 0.0))
