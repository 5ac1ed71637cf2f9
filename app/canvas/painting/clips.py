"""Rectangles of a picture that are to be painted anew, made few and kept apart."""

from collections.abc import Iterable, Sequence

from PySide6.QtCore import QRect, QRectF

from app.canvas.geometry import Box

MOST = 160  # rectangles looked at one by one; of more the one round all of them is taken
NEAR_PX = 12  # closer ones are painted as one: each costs a little by itself


def rect_round(box: Box) -> QRect:
    """Return the whole pixels a box in pixels touches."""
    return QRectF(box.left, box.top, box.right - box.left, box.bottom - box.top).toAlignedRect()


def apart(rects: Iterable[QRect]) -> list[QRect]:
    """Return rectangles that cover the same and overlap nowhere."""
    given = [rect for rect in rects if not rect.isEmpty()]
    if len(given) > MOST:
        return [_round_all(given)]
    found: list[QRect] = []
    for rect in given:
        while True:
            around = rect.adjusted(-NEAR_PX, -NEAR_PX, NEAR_PX, NEAR_PX)
            near = [other for other in found if around.intersects(other)]
            if not near:
                break
            found = [other for other in found if other not in near]
            rect = _round_all([rect, *near])
        found.append(rect)
    return found


def meets(one: Box, other: Box) -> bool:
    """Return whether two boxes overlap."""
    return (
        one.left < other.right
        and other.left < one.right
        and one.top < other.bottom
        and other.top < one.bottom
    )


def _round_all(rects: Sequence[QRect]) -> QRect:
    whole = QRect()
    for rect in rects:
        whole |= rect
    return whole
