"""A push button of a face held down by the mouse: live while it is held, let go on release."""

from collections.abc import Generator

from app.bench.face_pointer import FaceAround, FacePointer, FacePreview
from app.canvas.gestures.pointer import Throw
from app.canvas.gestures.throw import HELD, momentary_position


def hold_on_face(around: FaceAround, part_id: str) -> Generator[FacePreview, FacePointer, FacePointer]:
    """Keep it pressed; return the pointer that lets go of it, or leaves it to drag it away."""
    pressed = momentary_position(around.kinds[around.plan.parts[part_id].kind])
    assert pressed is not None
    while True:
        pointer = yield FacePreview(held=(part_id, pressed), hint=HELD, cursor="point")
        leaves = pointer.phase == "move" and not (pointer.hit.button and pointer.hit.part == part_id)
        if leaves or pointer.phase == "release":
            return pointer


def let_go_on_face(around: FaceAround, part_id: str) -> Throw:
    """Return the act that puts it back to where it was and selects it."""
    kind = around.kinds[around.plan.parts[part_id].kind]
    return Throw(part_id, around.sight.whole.positions.get(part_id) or kind.positions[0].name)
