"""Rectangles of a picture that are to be painted anew, made few and kept apart."""

import math
from collections.abc import Iterable, Sequence

from PySide6.QtCore import QRect, QRectF

from app.canvas.geometry import Box

MOST = 200  # rectangles looked at one by one; of more the one round all of them is taken
NEAR_PX = 12  # closer ones are painted as one: each costs a little by itself
Edges = tuple[int, int, int, int]  # left, top, right and bottom of whole pixels, the last two one beyond


def rect_round(box: Box) -> QRect:
    """Return the whole pixels a box in pixels touches."""
    return _rect(_edges(box))


def box_of(rect: QRect) -> Box:
    """Return the edges of a rectangle of whole pixels, the last two one beyond."""
    return Box(rect.left(), rect.top(), rect.right() + 1, rect.bottom() + 1)


def boxes_apart(boxes: Iterable[Box], within: QRect) -> list[QRect]:
    """Return rectangles of whole pixels that cover those boxes and overlap nowhere."""
    return _apart(map(_edges, boxes), within)


def apart(rects: Iterable[QRect], within: QRect) -> list[QRect]:
    """Return rectangles that cover the same and overlap nowhere."""
    given = ((r.left(), r.top(), r.right() + 1, r.bottom() + 1) for r in rects)
    return _apart(given, within)


def _apart(given: Iterable[Edges], within: QRect) -> list[QRect]:
    left, top, right, bottom = within.left(), within.top(), within.right() + 1, within.bottom() + 1
    cut = [(max(a, left), max(b, top), min(c, right), min(d, bottom)) for a, b, c, d in given]
    seen = [one for one in cut if one[0] < one[2] and one[1] < one[3]]
    if len(seen) > MOST:
        return [_rect(_round_all(seen))]
    found: list[Edges] = []
    for one in seen:
        while True:
            a, b, c, d = one[0] - NEAR_PX, one[1] - NEAR_PX, one[2] + NEAR_PX, one[3] + NEAR_PX
            near = [o for o in found if o[0] < c and a < o[2] and o[1] < d and b < o[3]]
            if not near:
                break
            found = [o for o in found if o not in near]
            one = _round_all([one, *near])
        found.append(one)
    return [_rect(one) for one in found]


def rim_of(outer: QRectF, inner: QRectF) -> list[QRectF]:
    """Return up to four rectangles that cover what of one lies outside another, and a little of that."""
    left, top = max(math.ceil(inner.left()), outer.left()), max(math.ceil(inner.top()), outer.top())
    right, bottom = (
        min(math.floor(inner.right()), outer.right()),
        min(math.floor(inner.bottom()), outer.bottom()),
    )
    if left >= right or top >= bottom:
        return [outer]
    high = bottom - top
    rims = (
        QRectF(outer.left(), outer.top(), outer.width(), top - outer.top()),
        QRectF(outer.left(), bottom, outer.width(), outer.bottom() - bottom),
        QRectF(outer.left(), top, left - outer.left(), high),
        QRectF(right, top, outer.right() - right, high),
    )
    return [rim for rim in rims if rim.width() > 0 and rim.height() > 0]


def meets(one: Box, other: Box) -> bool:
    """Return whether two boxes overlap."""
    return (
        one.left < other.right
        and other.left < one.right
        and one.top < other.bottom
        and other.top < one.bottom
    )


def _edges(box: Box) -> Edges:
    return math.floor(box.left), math.floor(box.top), math.ceil(box.right), math.ceil(box.bottom)


def _rect(edges: Edges) -> QRect:
    left, top, right, bottom = edges
    return QRect(left, top, right - left, bottom - top)


def _round_all(some: Sequence[Edges]) -> Edges:
    left, top, right, bottom = zip(*some, strict=True)
    return min(left), min(top), max(right), max(bottom)
