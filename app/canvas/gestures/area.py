"""Draw a scene or a panel as a rectangle, move it by its name, resize it by its edges."""

from app.canvas.geometry import Box
from app.canvas.gestures.pointer import Act, Around, Do, Gesture, Pick, Pointer, Preview, travelled
from app.canvas.gestures.snapping import on_grid
from app.canvas.hits.area_hit import area_box, areas_of
from wiring.edits.edit import Edit
from wiring.edits.panels import add_panel, change_panel
from wiring.edits.scenes import add_scene, change_scene
from wiring.plan.places import Point

LEAST_MM = 20.0  # a smaller area is a slip of the hand
DRAW = {
    "scene": "Drag a rectangle round the scene. Esc: leave it.",
    "panel": "Drag a rectangle the size of the panel. Esc: leave it.",
}
TOO_SMALL = "That is too small: drag a rectangle of at least 20 mm each way."
CHANGE = "Release to leave it so. Ctrl: off the grid. Esc: as it was."


def draw_area(around: Around, what: str) -> Gesture:
    """Draw a new "scene" or "panel" from corner to corner."""
    hint, start = DRAW[what], None
    preview = Preview(hint=hint, cursor="cross")
    while True:
        pointer = yield preview
        agrees = pointer.key in ("enter", "flip")  # by keys the first sets a corner, the second the other
        begins = pointer.phase == "press" or (agrees and start is None)
        if begins:
            start, hint = _place(around, pointer), DRAW[what]
        box = _spanned(start, _place(around, pointer)) if start is not None else None
        if (pointer.phase == "release" or (agrees and not begins)) and box is not None:
            if min(box.right - box.left, box.bottom - box.top) >= LEAST_MM:
                return Do(_new(around, what, box), pick_new=True)
            start, box, hint = None, None, TOO_SMALL
        preview = Preview(frame=box, hint=hint, cursor="cross")


def change_area(around: Around, pressed: Pointer) -> Gesture:
    """Move or resize the area that was pressed; a click on its name selects the parts in it."""
    old = area_box(areas_of(around.plan)[pressed.hit.area])
    box = old
    preview = Preview(cursor="grab")
    while True:
        pointer = yield preview
        if pointer.phase == "move" and (box != old or travelled(around, pressed.at, pointer.at)):
            box = _changed(around, old, pressed, pointer)
            preview = Preview(frame=box, hint=CHANGE, cursor="grab")
        elif pointer.phase == "release":
            return _act(around, pressed, old, box)


def _changed(around: Around, old: Box, pressed: Pointer, pointer: Pointer) -> Box:
    dx, dy = pointer.at[0] - pressed.at[0], pointer.at[1] - pressed.at[1]

    def snapped(x: float, y: float) -> Point:
        return (x, y) if pointer.free else on_grid((x, y), around.grid_mm)

    if pressed.hit.grip == "move":
        left, top = snapped(old.left + dx, old.top + dy)
        return Box(left, top, left + old.right - old.left, top + old.bottom - old.top)
    left, top = snapped(old.left + dx, old.top + dy)
    right, bottom = snapped(old.right + dx, old.bottom + dy)
    sides = pressed.hit.grip.split()
    return Box(
        min(left, old.right - LEAST_MM) if "left" in sides else old.left,
        min(top, old.bottom - LEAST_MM) if "top" in sides else old.top,
        max(right, old.left + LEAST_MM) if "right" in sides else old.right,
        max(bottom, old.top + LEAST_MM) if "bottom" in sides else old.bottom,
    )


def _act(around: Around, pressed: Pointer, old: Box, box: Box) -> Act | None:
    area = pressed.hit.area
    if box == old:
        if pressed.hit.grip != "move":
            return None
        return Pick(frozenset(p.id for p in around.plan.parts.values() if area in (p.scene, p.panel)))
    if area in around.plan.scenes:
        return Do(change_scene(area, **_fields(box)))
    return Do(change_panel(area, kinds=around.kinds, **_fields(box)))


def _new(around: Around, what: str, box: Box) -> Edit:
    size = box.right - box.left, box.bottom - box.top
    if what == "scene":
        return add_scene(f"Scene {len(around.plan.scenes) + 1}", box.left, box.top, *size)
    return add_panel(f"Panel {len(around.plan.panels) + 1}", box.left, box.top, *size)


def _fields(box: Box) -> dict[str, float]:
    return {
        "x_mm": box.left,
        "y_mm": box.top,
        "width_mm": box.right - box.left,
        "height_mm": box.bottom - box.top,
    }


def _spanned(a: Point, b: Point) -> Box:
    return Box(min(a[0], b[0]), min(a[1], b[1]), max(a[0], b[0]), max(a[1], b[1]))


def _place(around: Around, pointer: Pointer) -> Point:
    return pointer.at if pointer.free else on_grid(pointer.at, around.grid_mm)
