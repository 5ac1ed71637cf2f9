"""Wires pulled, bent and laid anew at the back of a panel, by the plan's own gestures."""

import math
from collections.abc import Callable

from app.bench.face_pointer import (
    FaceAct,
    FaceAround,
    FaceDo,
    FaceGesture,
    FacePick,
    FacePointer,
    FacePreview,
)
from app.bench.face_sight import FaceSight
from app.canvas.gestures.bend import drag_bend, new_bend
from app.canvas.gestures.pointer import Act, Around, Do, Gesture, Pick, Pointer, Preview
from app.canvas.gestures.pull_wire import pull_from, pull_wire
from app.canvas.gestures.reconnect import drag_end
from app.canvas.gestures.row import place_in_row
from app.canvas.hits.hit import Hit
from wiring.catalogue.kind import Kind
from wiring.edits.panel_spacing import spacing_of
from wiring.plan.panel_places import from_face, to_face
from wiring.plan.places import Point

GRID_MM = 6.5  # bends of wires snap at least this finely


def on_grid_of_face(whole: Around, sight: FaceSight) -> Around:
    """Return what a gesture on the plan looks at with the grid of the face, fine enough for wires."""
    grid = spacing_of(sight.plan, sight.panel)
    while grid > GRID_MM:
        grid /= 2
    corner = sight.panel.x_mm, sight.panel.y_mm
    return whole._replace(scale=sight.camera.scale, grid_mm=grid, grid_from=corner)


def pull_on_face(around: FaceAround) -> FaceGesture:
    """Wait for a click on a terminal, then pull a wire from it."""
    return _as_on_plan(around, pull_wire)


def press_on_wiring(around: FaceAround, begun: FacePointer) -> FaceGesture | None:
    """Return what a press on a terminal, or on an end or bend of a chosen wire, starts; else None."""
    hit, at = begun.hit, from_face(around.panel, begun.at)
    terminal = hit.terminal
    if begun.adds:
        return None
    if terminal is not None:
        return _as_on_plan(around, lambda here: pull_from(here, terminal, at))
    if hit.end:
        return _as_on_plan(around, lambda here: drag_end(here, hit.wire, hit.end))
    if hit.bend >= 0:
        return _as_on_plan(around, lambda here: drag_bend(here, hit.wire, hit.bend))
    return None


def bend_on_face(around: FaceAround, wire_id: str, at: Point) -> FaceAct | None:
    """Return the act that puts a bend into a wire."""
    return _act(new_bend(around.whole, wire_id, from_face(around.panel, at)))


def row_on_face(around: FaceAround, kind: Kind, start: Point, turn_deg: float) -> FaceGesture:
    """Set down a row of parts along the line that is dragged, on the spacing of the face."""
    spacing = spacing_of(around.plan, around.panel)
    apart = max(math.ceil(2 * max(kind.width_mm, kind.height_mm) / spacing), 1) * spacing
    here = around._replace(whole=around.whole._replace(grid_mm=spacing))
    return _as_on_plan(
        here,
        lambda plan: place_in_row(plan, kind, from_face(around.panel, start), turn_deg, apart),
        stays_on_face=True,
    )


def _as_on_plan(
    around: FaceAround, begin: Callable[[Around], Gesture], *, stays_on_face: bool = False
) -> FaceGesture:
    """Run a gesture of the plan in millimetres of the face; the pointer may be kept on it."""
    gesture = begin(around.whole)
    preview = next(gesture)
    while True:
        pointer = yield _shown(around, preview)
        if stays_on_face:
            pointer = pointer._replace(at=_on_face(around, pointer.at))
        try:
            preview = gesture.send(_told(around, pointer))
        except StopIteration as done:
            act: Act | None = done.value
            return _act(act)


def _on_face(around: FaceAround, at: Point) -> Point:
    panel = around.panel
    return min(max(at[0], 0.0), panel.width_mm), min(max(at[1], 0.0), panel.height_mm)


def _told(around: FaceAround, pointer: FacePointer) -> Pointer:
    hit, at = pointer.hit, from_face(around.panel, pointer.at)
    there = Hit(at, part=hit.part, wire=hit.wire, terminal=hit.terminal, bend=hit.bend, end=hit.end)
    return Pointer(
        pointer.phase, at, there, adds=pointer.adds, free=pointer.free, key=pointer.key, text=pointer.text
    )


def _shown(around: FaceAround, preview: Preview) -> FacePreview:
    return FacePreview(
        preview.plan,
        line=tuple(to_face(around.panel, point) for point in preview.line),
        look=preview.look,
        landing=preview.landing,
        lands=preview.lands,
        hint=preview.hint,
        types=preview.types,
        cursor=preview.cursor if preview.cursor in ("grab", "cross", "no") else "",
    )


def _act(act: Act | None) -> FaceAct | None:
    if isinstance(act, Do):
        return FaceDo(act.edit, act.pick_new)
    return FacePick(act.ids) if isinstance(act, Pick) else None
