"""A gesture that has been started, gone on with as part of another."""

from app.canvas.gestures.pointer import Act, Gesture, Pointer


def resumed(gesture: Gesture, pointer: Pointer) -> Gesture:
    """Go on with a started gesture, giving it first the pointer that led to it."""
    while True:
        try:
            preview = gesture.send(pointer)
        except StopIteration as done:
            act: Act | None = done.value
            return act
        pointer = yield preview
