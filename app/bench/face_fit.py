"""Why parts cannot be mounted where they stand, in one plain sentence; how far things may go on a face."""

from collections.abc import Collection, Iterable

from app.bench.bench import FaceItem
from app.bench.face_sight import FaceSight
from wiring.plan.designations import part_label
from wiring.plan.panel_bodies import APART_MM, Body, bodies_on, clashes, is_mounted, reaches_over, too_deep
from wiring.plan.panel_places import to_face
from wiring.plan.part import Part
from wiring.plan.places import Point
from wiring.quantities.face_lengths import length_words


def misfit_words(sight: FaceSight, ids: Collection[str], called: str = "") -> str:
    """Return what is wrong with the first of those parts that does not fit; "" when all do.

    `called` names a part that is still in hand.
    """
    bodies = bodies_on(sight.plan, sight.kinds, sight.panel)
    for one, other in clashes(bodies):
        if one.part.id in ids or other.part.id in ids:
            mine, near = (one, other) if one.part.id in ids else (other, one)
            names, least = (_name(sight, mine, called), _name(sight, near)), _length(sight, APART_MM)
            return f"{names[0]} needs {least} between its body and that of {names[1]}."
    for body in (b for b in bodies if b.part.id in ids):
        if reaches_over(body, sight.panel):
            return f"{_name(sight, body, called)} reaches over the edge of the face."
        if too_deep(body, sight.panel):
            deep, room = _length(sight, body.kind.behind_mm), _length(sight, sight.panel.room_mm)
            return f"{_name(sight, body, called)} reaches {deep} behind the face, where there are {room}."
    return ""


def kept_on_face(sight: FaceSight, ids: Iterable[str], items: Iterable[FaceItem], by: Point) -> Point:
    """Return the shift, shortened so that nothing that belongs on the face leaves it with its middle.

    What stands off the face already, or beside it as a plug does, may go anywhere.
    """
    panel, places = sight.panel, []
    for part in (sight.plan.parts[i] for i in ids if i in sight.plan.parts):
        if _belongs_on_face(sight, part):
            places.append(to_face(panel, (part.x_mm, part.y_mm)))
    for item in items:
        points = panel.lines[item.number].points if item.sort == "line" else ()
        text = panel.texts[item.number] if item.sort == "text" else None
        places += [*points, *([(text.x_mm, text.y_mm)] if text is not None else [])]
    inside = [(x, y) for x, y in places if 0 <= x <= panel.width_mm and 0 <= y <= panel.height_mm]
    if not inside:
        return by
    xs, ys = zip(*inside, strict=True)
    return (
        min(max(by[0], -min(xs)), panel.width_mm - max(xs)),
        min(max(by[1], -min(ys)), panel.height_mm - max(ys)),
    )


def _belongs_on_face(sight: FaceSight, part: Part) -> bool:
    kind = sight.kinds.get(part.kind)
    return kind is not None and is_mounted(kind)


def _name(sight: FaceSight, body: Body, called: str = "") -> str:
    return called or part_label(sight.plan, body.part.id)


def _length(sight: FaceSight, mm: float) -> str:
    return length_words(mm, us=sight.plan.habits.units == "us")
