"""The face of a panel as it will look: track diagram, levers, buttons, lenses, and the words to engrave."""

from collections.abc import Sequence

from wiring.drawings.panel_face import decoration
from wiring.drawings.plan_fit import fitting_scale
from wiring.drawings.signs.lens_colours import lens_colour
from wiring.pictures.metrics import wrapped
from wiring.pictures.picture import Disc, Item, Path, Pen, Picture, Words
from wiring.sheets.panel_template import Face, Hole

_EDGE = Pen("ink", 0.5)
_PART = Pen("ink", 0.3)
_TEXT_MM, _SMALL_MM = 2.8, 2.5
_LEAST_MM = 1.6  # radius a part is drawn with at least
_MOST_LINES = 3
LEAST_EM_MM = 2.1  # smaller letters of a reduced face cannot be read


def front_mark(panel_id: str) -> str:
    """Return the name of the mark where a panel is shown as it will look from the front."""
    return f"panel front {panel_id}"


def back_mark(name: str) -> str:
    """Return the name of the mark on the sheet that shows the back of the panel of a name."""
    return f"panel back {name}"


def front_scale(faces: Sequence[Face], width_mm: float, height_mm: float) -> float:
    """Return the round scale, at most full size, at which faces one above the other fit into a box."""
    sizes = [(f.area.right - f.area.left, f.area.bottom - f.area.top) for f in faces]
    return fitting_scale(max(w for w, _ in sizes), sum(h for _, h in sizes), width_mm, height_mm)


def front_view(
    face: Face, width_mm: float, height_mm: float, scale: float | None = None
) -> tuple[Picture, float]:
    """Return the face fitted into a box at a round scale, at most at full size, or at one told; the scale."""
    wide, high = face.area.right - face.area.left, face.area.bottom - face.area.top
    scale = front_scale((face,), width_mm, height_mm) if scale is None else scale
    corners = ((0.0, 0.0), (wide * scale, 0.0), (wide * scale, high * scale), (0.0, high * scale))
    items: list[Item] = [Path(corners, _EDGE, "raised", closed=True)]
    items += decoration(face.panel, scale, LEAST_EM_MM)
    said = bool(face.panel.texts)
    for hole in face.holes:
        items += _part(hole, scale, _room_mm(hole, face.holes, wide) * scale, said=said)
    return Picture(tuple(items), wide * scale, high * scale), scale


def _room_mm(hole: Hole, holes: Sequence[Hole], wide: float) -> float:
    """Return how wide the words under a part may be: to half way to its neighbours in the row."""
    row = [h.x_mm for h in holes if h is not hole and abs(h.y_mm - hole.y_mm) < 12.0]
    near = min((abs(x - hole.x_mm) for x in row), default=wide)
    return min(near, 2 * hole.x_mm, 2 * (wide - hole.x_mm)) * 0.94


def _part(hole: Hole, scale: float, room: float, *, said: bool) -> list[Item]:
    """Return a part; its label below it unless the face has legends of its own."""
    x, y = hole.x_mm * scale, hole.y_mm * scale
    radius = max((hole.across_mm or min(hole.kind.width_mm, hole.kind.height_mm)) / 2 * scale, _LEAST_MM)
    lens = lens_colour(hole.kind) if hole.kind.sign in ("indicator", "led") else "paper"
    items: list[Item] = [Disc((x, y), radius, radius, _PART, lens)]
    above = y - radius - 1.0
    below = y + radius + 1.2
    names = [p.name for p in hole.kind.positions if not p.momentary] if hole.kind.sign == "toggle" else []
    if names:
        items.append(Path(((x, y), (x, y - radius * 1.5)), Pen("ink", max(radius * 0.5, 0.6))))
        above -= radius * 0.6
    says = bool(hole.part.label.strip()) and not said
    lines = wrapped(hole.part.label, max(room, 8.0), _TEXT_MM, "semibold") if says else ()
    for number, text in enumerate(lines[:_MOST_LINES]):
        at = (x, below + number * _TEXT_MM * 1.2)
        items.append(Words(text, at, _TEXT_MM, weight="semibold", align="centre", stand="top"))
    name = f"-{hole.part.designation}"
    items.append(Words(name[:10], (x, above), _SMALL_MM, "quiet", align="centre"))
    return items
