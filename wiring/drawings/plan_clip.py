"""Cuts lines at the edge of a window."""

from collections.abc import Sequence
from itertools import pairwise
from typing import NamedTuple

from wiring.pictures.picture import Point

Box = tuple[float, float, float, float]


class Piece(NamedTuple):
    """A stretch of a line inside the window, and whether its ends are the line's own."""

    points: tuple[Point, ...]
    from_start: bool
    to_end: bool


def pieces(points: Sequence[Point], box: Box) -> tuple[Piece, ...]:
    """Return the stretches of a polyline that lie in a box, in order."""
    found: list[Piece] = []
    run: list[Point] = []
    begins = False
    last = len(points) - 2

    def close(to_end: bool) -> None:
        if len(run) > 1:
            found.append(Piece(tuple(run), begins, to_end))
        run.clear()

    for i, (a, b) in enumerate(pairwise(points)):
        kept = segment_in(a, b, box)
        if kept is None:
            close(to_end=False)
            continue
        (p, q), (cut_start, cut_end) = kept
        if cut_start:
            close(to_end=False)
        if not run:
            run.append(p)
            begins = i == 0 and not cut_start
        run.append(q)
        if cut_end or i == last:
            close(to_end=i == last and not cut_end)
    return tuple(found)


def segment_in(a: Point, b: Point, box: Box) -> tuple[tuple[Point, Point], tuple[bool, bool]] | None:
    """Return the part of a segment in a box and which of its ends were cut (Liang, Barsky); None outside."""
    dx, dy = b[0] - a[0], b[1] - a[1]
    low, high = 0.0, 1.0
    for step, room in (
        (-dx, a[0] - box[0]),
        (dx, box[2] - a[0]),
        (-dy, a[1] - box[1]),
        (dy, box[3] - a[1]),
    ):
        if step == 0.0:
            if room < 0.0:
                return None
            continue
        t = room / step
        if step < 0.0:
            low = max(low, t)
        else:
            high = min(high, t)
    if low > high:
        return None
    start = (a[0] + dx * low, a[1] + dy * low) if low > 0.0 else a
    end = (a[0] + dx * high, a[1] + dy * high) if high < 1.0 else b
    return (start, end), (low > 0.0, high < 1.0)


def overlap_of(one: Box, other: Box) -> Box | None:
    """Return the rectangle two boxes share; None when they share none."""
    left, top = max(one[0], other[0]), max(one[1], other[1])
    right, bottom = min(one[2], other[2]), min(one[3], other[3])
    return (left, top, right, bottom) if left < right and top < bottom else None
