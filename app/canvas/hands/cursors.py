"""The shape of the pointer: what a press would do here."""

from PySide6.QtCore import Qt

from app.canvas.hits.hit import Hit

Shape = Qt.CursorShape
OF_GESTURE = {
    "grab": Shape.ClosedHandCursor,
    "cross": Shape.CrossCursor,
    "turn": Shape.ClosedHandCursor,
    "point": Shape.PointingHandCursor,
    "no": Shape.ForbiddenCursor,
}
OF_GRIP = {
    "move": Shape.SizeAllCursor,
    "left": Shape.SizeHorCursor,
    "right": Shape.SizeHorCursor,
    "top": Shape.SizeVerCursor,
    "bottom": Shape.SizeVerCursor,
    "left top": Shape.SizeFDiagCursor,
    "right bottom": Shape.SizeFDiagCursor,
    "right top": Shape.SizeBDiagCursor,
    "left bottom": Shape.SizeBDiagCursor,
}


def cursor_for(
    hit: Hit | None, gesture: str, *, pans: bool, may_pan: bool, pulled: str = ""
) -> Qt.CursorShape:
    """Return the shape for what runs and what is under the pointer; `pulled` is a wire whose legs can be."""
    if pans:
        return Shape.ClosedHandCursor
    if gesture in OF_GESTURE:
        return OF_GESTURE[gesture]
    if may_pan:
        return Shape.OpenHandCursor
    if hit is None:
        return Shape.ArrowCursor
    if hit.grip:
        return OF_GRIP.get(hit.grip, Shape.SizeAllCursor)
    if hit.terminal is not None:
        return Shape.CrossCursor
    if hit.lever:
        return Shape.PointingHandCursor
    if hit.handle or hit.bend >= 0 or hit.end or hit.part or hit.corner >= 0 or hit.hold:
        return Shape.SizeAllCursor if not hit.handle else Shape.OpenHandCursor
    if hit.wire and hit.wire == pulled:
        return Shape.SizeAllCursor
    return Shape.ArrowCursor
