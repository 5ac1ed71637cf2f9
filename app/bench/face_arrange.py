"""Line things on a face up, or space them evenly: how far each has to go. Knows no toolkit."""

from collections.abc import Callable, Mapping
from typing import TypeVar

from wiring.plan.places import Point

Box = tuple[float, float, float, float]
K = TypeVar("K")
LINES = ("left", "right", "top", "bottom", "row", "column")
SWAPPED = {"left": "right", "right": "left"}  # from behind, what is left on the screen is right on the face
SPACED = {"space_across": 0, "space_down": 1}


def lined_up(boxes: Mapping[K, Box], line: str, snap: Callable[[float], float]) -> dict[K, Point]:
    """Return the shifts that bring edges to the outermost one, or middles to the middle between them all.

    `snap` brings the middle line onto the spacing.
    """
    axis = 0 if line in ("left", "right", "column") else 1
    if line in ("left", "top"):
        spots = {key: box[axis] for key, box in boxes.items()}
        goal = min(spots.values())
    elif line in ("right", "bottom"):
        spots = {key: box[axis + 2] for key, box in boxes.items()}
        goal = max(spots.values())
    else:
        spots = {key: middle(box, axis) for key, box in boxes.items()}
        goal = snap((min(spots.values()) + max(spots.values())) / 2)
    return {key: _along(goal - spot, axis) for key, spot in spots.items()}


def spaced_out(boxes: Mapping[K, Box], axis: int) -> dict[K, Point]:
    """Return the shifts that give the middles equal distances between the two outermost."""
    spots = {key: middle(box, axis) for key, box in boxes.items()}
    order = sorted(spots, key=lambda key: spots[key])
    first, last = spots[order[0]], spots[order[-1]]
    return {
        key: _along(first + (last - first) * index / (len(order) - 1) - spots[key], axis)
        for index, key in enumerate(order)
    }


def middle(box: Box, axis: int) -> float:
    """Return the middle of a box across (0) or down (1)."""
    return (box[axis] + box[axis + 2]) / 2


def _along(by: float, axis: int) -> Point:
    return (by, 0.0) if axis == 0 else (0.0, by)
