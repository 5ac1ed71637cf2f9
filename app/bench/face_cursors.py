"""The shape of the pointer over the bench: what a press would do here."""

from PySide6.QtCore import Qt

from app.bench.face_hit import FaceHit
from app.bench.face_pointer import FacePreview

CURSORS = {
    "grab": Qt.CursorShape.ClosedHandCursor,
    "cross": Qt.CursorShape.CrossCursor,
    "point": Qt.CursorShape.PointingHandCursor,
    "no": Qt.CursorShape.ForbiddenCursor,
    "": Qt.CursorShape.ArrowCursor,
}


def cursor_on_face(preview: FacePreview, hovered: FaceHit | None, *, runs: bool) -> Qt.CursorShape:
    """Return the shape for the gesture that runs, or for what lies under the pointer."""
    if not runs and hovered is not None and hovered.lever:
        return CURSORS["point"]
    return CURSORS[preview.cursor]
