"""What the hand does on a face: choose, drag, band, draw a track line, put a legend, place a part."""

from collections.abc import Callable, Iterable

from app.bench.face_fit import misfit_words
from app.bench.face_moving import drag_on_face
from app.bench.face_pointer import (
    FaceAct,
    FaceAround,
    FaceDo,
    FaceGesture,
    FacePick,
    FacePointer,
    FacePreview,
    FaceWrite,
)
from app.bench.face_sight import item_box, part_box
from app.bench.face_things import caught_on_face, taken, with_taken
from app.bench.face_throwing import hold_on_face, is_held, let_go_on_face, throw_on_face
from app.bench.face_wires import courses
from app.bench.face_wiring import bend_on_face, press_on_wiring, row_on_face
from wiring.catalogue.kind import Kind
from wiring.edits.edit import Edit
from wiring.edits.face_items import add_line, move_line_corner
from wiring.edits.place_part import place
from wiring.plan.panel_bodies import is_mounted
from wiring.plan.panel_places import from_face, holds
from wiring.plan.part import Part
from wiring.plan.places import Point

LINE = "Click along the track, twice or Enter at its end. Backspace: one point back. Esc: leave it."
TEXT = "Click where the legend's middle shall be, then type it. Esc: done."
PLACE = "Shift and drag: a row. R: turn. Ctrl: off the spacing. Esc: done."
CORNER = "Release to leave the corner here. Esc: as it was."
BESIDE = "This is beside the face: click on it to place the part there."


def pressed(around: FaceAround, pointer: FacePointer) -> FaceGesture:
    """Return the gesture that a press with the arrow starts."""
    hit = pointer.hit
    if hit.item is not None and hit.corner >= 0 and not pointer.adds:
        return _drag_corner(around, hit.item.number, hit.corner, pointer.at)
    wiring = press_on_wiring(around, pointer)
    if wiring is not None:
        return wiring
    if hit.part or hit.item is not None or hit.wire:
        return _press_thing(around, pointer)
    return _band(around, pointer)


def _press_thing(around: FaceAround, begun: FacePointer) -> FaceGesture:
    """Click, add, throw, hold, drag or, begun on a wire, band: what the pointer then does shows which."""
    ids, items = around.sight.selected, around.sight.items
    hit = begun.hit
    throws = hit.lever and not begun.adds
    if throws and is_held(around, hit.part):
        pointer = yield from hold_on_face(around, hit.part)
        if pointer.phase == "release":
            return let_go_on_face(around, hit.part)
    else:
        pointer = yield FacePreview()
    while pointer.phase != "release":
        if pointer.phase == "move" and around.travelled(begun.at, pointer.at):
            if hit.wire:
                return (yield from _band(around, begun))
            held = (hit.part or hit.wire) in ids or hit.item in items
            chosen = FacePick(ids, items) if held else taken(around, hit)
            return (yield from drag_on_face(around, begun, pointer, chosen.ids, chosen.items))
        pointer = yield FacePreview()
    if begun.adds:
        return with_taken(around, hit)
    return throw_on_face(around, hit.part) if throws else taken(around, hit)


def _drag_corner(around: FaceAround, index: int, corner: int, start: Point) -> FaceGesture:
    edit: Edit | None = None
    pointer = yield FacePreview(hint=CORNER, cursor="grab")
    while pointer.phase != "release":
        if pointer.phase == "move" and (edit is not None or around.travelled(start, pointer.at)):
            edit = move_line_corner(around.panel.id, index, corner, *around.place(pointer))
        plan = edit.apply(around.plan) if edit is not None else None
        pointer = yield FacePreview(plan, hint=CORNER, cursor="grab")
    return FaceDo(edit) if edit is not None else None


def _band(around: FaceAround, begun: FacePointer) -> FaceGesture:
    """Choose what lies wholly in a band; a click on the bare face chooses nothing."""
    pointer = yield FacePreview()
    drawn = False
    while pointer.phase != "release":
        drawn = drawn or (pointer.phase == "move" and around.travelled(begun.at, pointer.at))
        pointer = yield FacePreview(
            band=(begun.at, pointer.at) if drawn else None, cursor="cross" if drawn else ""
        )
    sight = around.sight
    kept = FacePick(sight.selected, sight.items) if begun.adds else FacePick()
    if not drawn:
        return kept
    xs, ys = sorted((begun.at[0], pointer.at[0])), sorted((begun.at[1], pointer.at[1]))

    def inside(box: tuple[float, float, float, float]) -> bool:
        return xs[0] <= box[0] and ys[0] <= box[1] and box[2] <= xs[1] and box[3] <= ys[1]

    seen = sight.at_back if sight.camera.behind else sight.parts
    ids = frozenset(p.id for p in seen if inside(part_box(sight, p)))
    if sight.camera.behind:
        ids |= {i for i, course in courses(sight).items() if inside(_around(course))}
    items = frozenset(i for i in around.items if inside(item_box(sight.panel, i)))
    ids = caught_on_face(sight, seen, ids)
    return FacePick(kept.ids | ids, kept.items | items)


def _around(points: Iterable[Point]) -> tuple[float, float, float, float]:
    xs, ys = zip(*points, strict=True)
    return min(xs), min(ys), max(xs), max(ys)


def draw_line(around: FaceAround) -> FaceGesture:
    """Draw a track line until a double click or Enter."""
    points: list[Point] = []
    pointer: FacePointer | None = None
    while True:
        here = around.place(pointer) if pointer is not None else None
        shown = (*points, here) if here is not None and here not in points[-1:] else tuple(points)
        pointer = yield FacePreview(outline=shown, hint=LINE, cursor="cross")
        at = around.place(pointer)
        if pointer.key == "back" and points:
            points.pop()
        ends = pointer.phase == "double" or pointer.key == "enter"
        ends = ends or (pointer.phase == "press" and at in points[-1:])  # a double click, but slow
        if pointer.key == "enter" and at not in points[-1:]:
            points.append(at)  # by keyboard each Enter sets a point, a second one at the same place ends
            ends = False
        if ends and len(points) >= 2:
            pencil = around.pencil
            return FaceDo(
                add_line(around.panel.id, points, pencil.line_mm, pencil.line_colour), pick_new=True
            )
        if pointer.phase == "press" and at not in points[-1:]:
            points.append(at)


def put_text(around: FaceAround) -> FaceGesture:
    """Take the place of a legend from a click or Enter."""
    while True:
        pointer = yield FacePreview(hint=TEXT, cursor="cross")
        if pointer.phase in ("press", "double") or pointer.key == "enter":
            return FaceWrite(around.place(pointer))


def place_on_face(
    around: FaceAround, kind: Kind, title: Callable[[str], str], turn_deg: float = 0.0
) -> FaceGesture:
    """Set down one part of a kind where the pointer clicks; R turns it while it is in the hand."""
    said = f"Click to place {title(kind.title)}. {PLACE}"
    hint = said
    ghost: Part | None = None
    while True:
        pointer = yield FacePreview(ghost=ghost, hint=hint, cursor="cross" if hint == said else "no")
        turn_deg = (turn_deg + {"turn": 90.0, "turn back": -90.0}.get(pointer.key, 0.0)) % 360.0
        at = from_face(around.panel, around.place(pointer))
        edit = place(kind, *at, turn_deg, panel=around.panel.id)
        beside = is_mounted(kind) and not holds(around.panel, *at)
        if pointer.phase == "press" and pointer.adds and not beside:
            return (yield from row_on_face(around, kind, around.place(pointer), turn_deg))
        if (pointer.phase in ("press", "double") or pointer.key == "enter") and not beside:
            return FaceDo(edit, pick_new=True)
        plan = edit.apply(around.plan)
        new = tuple(plan.parts)[-1]
        wrong = misfit_words(around.sight._replace(plan=plan), {new}, "It")
        hint = BESIDE if beside else wrong or said
        ghost = plan.parts[new]


def turn_of(last: FacePreview) -> float:
    """Return how the part that was last in hand is turned."""
    return last.ghost.turn_deg if last.ghost is not None else 0.0


def double(around: FaceAround, pointer: FacePointer) -> FaceAct | None:
    """Return what a double click does: a legend is typed anew, a wire gets a bend."""
    hit, item = pointer.hit, pointer.hit.item
    if hit.wire and hit.bend < 0 and not hit.end:
        return bend_on_face(around, hit.wire, pointer.at)
    if item is None or item.sort != "text":
        return None
    text = around.panel.texts[item.number]
    return FaceWrite((text.x_mm, text.y_mm), item.number)
