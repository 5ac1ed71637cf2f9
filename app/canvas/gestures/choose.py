"""What a press with the ordinary arrow means: select, drag, throw, pull a wire, bend it or band."""

from app.canvas.gestures.area import change_area
from app.canvas.gestures.band import band_select
from app.canvas.gestures.bend import drag_bend
from app.canvas.gestures.drag import drag_joists, drag_parts
from app.canvas.gestures.joist import drag_joist
from app.canvas.gestures.leg import pull_leg, wire_to_pull
from app.canvas.gestures.line import drag_line_corner
from app.canvas.gestures.pointer import Around, Gesture, Pick, Pointer, Preview, Throw, travelled
from app.canvas.gestures.pull_wire import pull_from
from app.canvas.gestures.reconnect import drag_end
from app.canvas.gestures.resumed import resumed
from app.canvas.gestures.throw import hold_button, momentary_position, throw_part
from app.canvas.gestures.turn import turn_parts
from app.canvas.gestures.way import drag_corner
from app.canvas.gestures.whole import added, meant
from wiring.plan.places import Point


def press(around: Around, pointer: Pointer, turn_centre: Point | None = None) -> Gesture:
    """Return the gesture that a press at this pointer starts."""
    hit = pointer.hit
    if hit.handle and turn_centre is not None:
        parts = frozenset(i for i in around.selected if i in around.plan.parts)
        return turn_parts(around, pointer.at, turn_centre, parts)
    if hit.terminal is not None and not pointer.adds:
        return pull_from(around, hit.terminal, pointer.at)
    if hit.end and not pointer.adds:
        return drag_end(around, hit.wire, hit.end)
    if hit.bend >= 0 and not pointer.adds:
        return drag_bend(around, hit.wire, hit.bend)
    if hit.part:
        return _press_part(around, pointer)
    if hit.corner >= 0 and not pointer.adds:
        return drag_line_corner(around, pointer) if hit.line else drag_corner(around, pointer)
    if hit.hold and not pointer.adds:
        alone = not around.selected and len(around.grounds) < 2
        return drag_joist(around, pointer) if alone else drag_joists(around, pointer)
    if hit.area and not pointer.adds:
        return change_area(around, pointer)
    return _press_elsewhere(around, pointer)


def _press_part(around: Around, pressed: Pointer) -> Gesture:
    """Click, add, throw, hold or drag: which one shows when the pointer moves or lets go."""
    part, hit = pressed.hit.part, pressed.hit
    kind = around.kinds.get(around.plan.parts[part].kind)
    held = momentary_position(kind) if kind is not None and hit.lever and not pressed.adds else None
    still = Preview(
        cursor="point" if hit.lever else ""
    )  # of a lever as before the press: telling it costs time
    if held is not None and kind is not None:
        pointer = yield from hold_button(part, held)
        if pointer.phase == "release":
            return Throw(part, around.positions.get(part) or kind.positions[0].name)
    else:
        pointer = yield still
    while pointer.phase != "release":
        if pointer.phase == "move" and travelled(around, pressed.at, pointer.at):
            moved = around.selected if part in around.selected else meant(around.plan, around.selected, part)
            parts = frozenset(i for i in moved if i in around.plan.parts)
            return (yield from _drag(around, pressed, pointer, parts))
        pointer = yield still
    if pressed.adds:
        return Pick(added(around.plan, around.selected, part), grounds=around.grounds)
    clicked = Pick(meant(around.plan, around.selected, part))
    return (throw_part(around, part) if hit.lever else None) or clicked


def _drag(around: Around, pressed: Pointer, pointer: Pointer, parts: frozenset[str]) -> Gesture:
    drag = drag_parts(around, pressed.at, pressed.hit.part, parts)
    next(drag)
    return (yield from resumed(drag, pointer))


def _press_elsewhere(around: Around, pressed: Pointer) -> Gesture:
    """Click on a wire, on the ground or on nothing, or draw a band."""
    wire = pressed.hit.wire
    if wire and not pressed.adds and wire == wire_to_pull(around.plan, around.selected):
        return (yield from pull_leg(around, wire, pressed))
    pointer = yield Preview()
    while pointer.phase != "release":
        if pointer.phase == "move" and travelled(around, pressed.at, pointer.at):
            band = band_select(around, pressed.at, adds=pressed.adds)
            next(band)
            return (yield from resumed(band, pointer))
        pointer = yield Preview()
    if not wire:
        ground = pressed.hit.ground
        added = around.grounds ^ ({ground} if ground and not pressed.hit.area else set())
        return Pick(around.selected, grounds=added) if pressed.adds else Pick(frozenset(), ground)
    return (
        Pick(around.selected ^ {wire}, grounds=around.grounds) if pressed.adds else Pick(frozenset((wire,)))
    )
