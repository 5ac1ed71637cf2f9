"""Throw a switch with a click, or hold a push button down."""

from collections.abc import Generator

from app.canvas.gestures.pointer import Act, Around, Pointer, Preview, Throw
from wiring.catalogue.kind import Kind
from wiring.plan.names import PartId

HELD = "Held down until you let go. Pull it away to move it."
BY_ITSELF = frozenset(
    {"moving", "stalled", "blown", "tripped"}
)  # positions a part comes into, nobody puts it


def next_position(kind: Kind, now: str) -> str | None:
    """Return the position that follows in the kind's order; None when there is no other to put it into."""
    names = [p.name for p in kind.positions if p.name not in BY_ITSELF]
    if len(names) < 2:
        return None
    return names[(names.index(now) + 1) % len(names)] if now in names else names[0]


def momentary_position(kind: Kind) -> str | None:
    """Return the position a push button is in while it is held; None for what stays where it is put."""
    return next((p.name for p in kind.positions if p.momentary), None)


def throw_part(around: Around, part: PartId) -> Act | None:
    """Return the act that throws a part to its next position."""
    kind = around.kinds.get(around.plan.parts[part].kind)
    following = next_position(kind, around.positions.get(part, "")) if kind is not None else None
    return Throw(part, following) if following is not None else None


def thrown_by_press(around: Around, part: PartId) -> tuple[PartId, str] | None:
    """Return the position a part is brought to by a press on its lever, or by letting go of it then."""
    kind = around.kinds.get(around.plan.parts[part].kind)
    held = momentary_position(kind) if kind is not None else None
    act = throw_part(around, part)
    if held is not None:
        return part, held
    return (act.part, act.position) if isinstance(act, Throw) else None


def hold_button(part: PartId, pressed: str) -> Generator[Preview, Pointer, Pointer]:
    """Keep a push button pressed; return the pointer that lets go of it, or leaves it to drag it away."""
    while True:
        pointer = yield Preview(held=(part, pressed), hint=HELD, cursor="point")
        leaves = pointer.phase == "move" and not (pointer.hit.part == part and pointer.hit.lever)
        if leaves or pointer.phase == "release":
            return pointer
