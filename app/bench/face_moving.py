"""Shift what is chosen on a face: dragged by hand onto the spacing, or nudged by keys."""

from app.bench.bench import FaceItem
from app.bench.face_fit import kept_on_face, misfit_words
from app.bench.face_pointer import FaceAround, FaceDo, FaceGesture, FacePointer, FacePreview
from wiring.edits.edit import Edit
from wiring.edits.face_items import move_items
from wiring.edits.move import move
from wiring.edits.panel_spacing import spacing_of
from wiring.plan.panel_places import on_spacing, to_face
from wiring.plan.places import Point
from wiring.plan.plan import Plan

DRAG = "Release to set down. Ctrl: off the spacing. Esc: leave it where it was."


def drag_on_face(
    around: FaceAround,
    begun: FacePointer,
    pointer: FacePointer,
    ids: frozenset[str],
    items: frozenset[FaceItem],
) -> FaceGesture:
    """Shift parts with the wires between them, lines and legends; the thing held lands on the spacing."""
    origin = _origin(around, begun)
    edit: Edit | None = None
    while True:
        if pointer.phase == "release":
            return FaceDo(edit) if edit is not None else None
        if pointer.phase == "move":
            wanted = origin[0] + pointer.at[0] - begun.at[0], origin[1] + pointer.at[1] - begun.at[1]
            there = wanted if pointer.free else on_spacing(wanted, spacing_of(around.plan, around.panel))
            edit = shifted(around, ids, items, (there[0] - origin[0], there[1] - origin[1]))
        plan = edit.apply(around.plan) if edit is not None else None
        wrong = misfit_words(around.sight._replace(plan=plan), ids) if plan is not None else ""
        pointer = yield FacePreview(plan, hint=wrong or DRAG, cursor="no" if wrong else "grab")


def shifted(around: FaceAround, ids: frozenset[str], items: frozenset[FaceItem], by: Point) -> Edit | None:
    """Return the step that shifts all of these, none of them off the face; None when it shifts nothing."""
    by = kept_on_face(around.sight, ids, items, by)
    if by == (0.0, 0.0) or not (ids or items):
        return None
    lines = [i.number for i in items if i.sort == "line"]
    texts = [i.number for i in items if i.sort == "text"]
    decoration = move_items(around.panel.id, lines, texts, *by)
    if not ids:
        return decoration
    bodies = move(sorted(ids), *by, kinds=around.kinds)
    if not items:
        return bodies

    def apply(plan: Plan) -> Plan:
        return decoration.apply(bodies.apply(plan))

    return Edit(f"Move {len(ids) + len(items)} items on the face", apply)


def _origin(around: FaceAround, begun: FacePointer) -> Point:
    """Return the point of what is held that lands on the spacing."""
    panel, item = around.panel, begun.hit.item
    if begun.hit.part:
        part = around.plan.parts[begun.hit.part]
        return to_face(panel, (part.x_mm, part.y_mm))
    if item is not None and item.sort == "text":
        text = panel.texts[item.number]
        return text.x_mm, text.y_mm
    return panel.lines[item.number].points[0] if item is not None else begun.at
