"""Switches of a face by the mouse: a click on the knob throws one, a push button is live while it is held."""

from collections.abc import Generator

from app.bench.face_pointer import FaceAround, FacePick, FacePointer, FacePreview
from app.canvas.gestures.pointer import Throw
from app.canvas.gestures.throw import HELD, momentary_position, next_position


def is_held(around: FaceAround, part_id: str) -> bool:
    """Return whether a part stays where a press puts it only as long as it is held."""
    return momentary_position(around.kinds[around.plan.parts[part_id].kind]) is not None


def hold_on_face(around: FaceAround, part_id: str) -> Generator[FacePreview, FacePointer, FacePointer]:
    """Keep it pressed; return the pointer that lets go of it, or leaves it to drag it away."""
    pressed = momentary_position(around.kinds[around.plan.parts[part_id].kind])
    assert pressed is not None
    while True:
        pointer = yield FacePreview(held=(part_id, pressed), hint=HELD, cursor="point")
        leaves = pointer.phase == "move" and not (pointer.hit.lever and pointer.hit.part == part_id)
        if leaves or pointer.phase == "release":
            return pointer


def let_go_on_face(around: FaceAround, part_id: str) -> Throw:
    """Return the act that puts it back to where it was and selects it."""
    kind = around.kinds[around.plan.parts[part_id].kind]
    return Throw(part_id, around.sight.whole.positions.get(part_id) or kind.positions[0].name)


def throw_on_face(around: FaceAround, part_id: str) -> Throw | FacePick:
    """Return the act that throws a switch to its next position; where there is none it is only chosen."""
    kind = around.kinds[around.plan.parts[part_id].kind]
    following = next_position(kind, around.sight.whole.positions.get(part_id, ""))
    return Throw(part_id, following) if following is not None else FacePick(frozenset((part_id,)))
