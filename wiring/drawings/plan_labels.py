"""Puts words beside what they name so that none covers another: greedy, nearest free place first."""

import math
from collections import defaultdict
from collections.abc import Iterable, Iterator, Sequence
from itertools import pairwise

from wiring.drawings.plan_fit import Box
from wiring.pictures.metrics import ascent_mm, descent_mm, overlap, width_mm
from wiring.pictures.picture import Item, Path, Pen, Point, Words

_CELL_MM = 7.0
_MOST_CROSSED = 7  # points of lines, 0.8 mm apart: about two wires across; more would be hidden
_LEADER = Pen("quiet", 0.15)
_WAYS = tuple(
    (math.cos(math.radians(a)), math.sin(math.radians(a)))
    for a in (-90, 0, 180, 90, -45, -135, 45, 135, -22, -158, 22, 158, -67, -113, 67, 113)
)


class Room:
    """The paper that is taken: boxes words must not touch, and lines they had better not lie on."""

    def __init__(self, limits: Box) -> None:
        self._limits = limits
        self._boxes: dict[tuple[int, int], list[Box]] = defaultdict(list)
        self._dots: dict[tuple[int, int], list[Point]] = defaultdict(list)

    def take(self, box: Box) -> None:
        """Mark a box as taken."""
        for cell in _cells(box):
            self._boxes[cell].append(box)

    def draw(self, points: Sequence[Point]) -> None:
        """Mark a line as drawn."""
        for (x, y), (u, v) in pairwise(points):
            steps = max(1, int(math.hypot(u - x, v - y) / 0.8))
            for i in range(steps + 1):
                at = (x + (u - x) * i / steps, y + (v - y) * i / steps)
                self._dots[_cell(at)].append(at)

    def free(self, box: Box) -> bool:
        """Return whether a box lies within the limits and touches nothing taken."""
        left, top, right, bottom = self._limits
        if box[0] < left or box[1] < top or box[2] > right or box[3] > bottom:
            return False
        return not any(overlap(box, other) for cell in _cells(box) for other in self._boxes[cell])

    def crossed(self, box: Box) -> int:
        """Return how many points of drawn lines lie in a box."""
        return sum(
            box[0] <= x <= box[2] and box[1] <= y <= box[3]
            for cell in _cells(box)
            for x, y in self._dots[cell]
        )


def labelled(
    room: Room,
    text: str,
    about: Box,
    size_mm: float,
    *,
    reaches_mm: Iterable[float] = (0.5, 2.5, 5.0, 9.0),
    colour: str = "ink",
    semibold: bool = False,
) -> tuple[Item, ...]:
    """Return the words, and a leader when they stand off, beside a box; nothing when no place is free."""
    weight = "semibold" if semibold else "regular"
    wide = width_mm(text, size_mm, weight) + 0.3
    up, down = ascent_mm(size_mm, weight) * 0.92, descent_mm(size_mm, weight)
    best: tuple[float, Box, float] | None = None
    for reach, box in _candidates(about, wide, up + down, reaches_mm):
        if best is not None and reach * 0.35 >= best[0]:
            break
        if not room.free(box):
            continue
        crossed = room.crossed(box)
        if crossed > _MOST_CROSSED:
            continue
        cost = reach * 0.35 + crossed * 0.8
        if best is None or cost < best[0]:
            best = (cost, box, reach)
    if best is None:
        return ()
    _, box, reach = best
    room.take(box)
    words = Words(
        text,
        ((box[0] + box[2]) / 2, box[1] + up),
        size_mm,
        colour,
        "semibold" if semibold else "regular",
        "centre",
        ground="paper" if room.crossed(box) else "",
    )
    if reach < 3.0:
        return (words,)
    near = _nearest(box, ((about[0] + about[2]) / 2, (about[1] + about[3]) / 2))
    leader = (near, _nearest(about, near))
    room.draw(leader)
    return Path(leader, _LEADER), words


def _candidates(
    about: Box, wide: float, high: float, reaches: Iterable[float]
) -> Iterator[tuple[float, Box]]:
    x, y = (about[0] + about[2]) / 2, (about[1] + about[3]) / 2
    half_w, half_h = (about[2] - about[0]) / 2, (about[3] - about[1]) / 2
    for reach in reaches:
        for cos, sin in _WAYS:
            u = x + _push(cos, half_w + wide / 2 + reach)
            v = y + _push(sin, half_h + high / 2 + reach)
            yield reach, (u - wide / 2, v - high / 2, u + wide / 2, v + high / 2)


def _push(part: float, far: float) -> float:
    # a slanted way stands off as far as a straight one on its leading side, so corners touch nothing
    return part * far if abs(part) < 0.5 else math.copysign(far, part)


def _nearest(box: Box, to: Point) -> Point:
    return min(max(to[0], box[0]), box[2]), min(max(to[1], box[1]), box[3])


def _cell(at: Point) -> tuple[int, int]:
    return int(at[0] // _CELL_MM), int(at[1] // _CELL_MM)


def _cells(box: Box) -> list[tuple[int, int]]:
    (left, top), (right, bottom) = _cell((box[0], box[1])), _cell((box[2], box[3]))
    return [(x, y) for x in range(left, right + 1) for y in range(top, bottom + 1)]
