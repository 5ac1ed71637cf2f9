"""What lies under the wiring on a plan view: board, tracks, scenes and panels."""

from wiring.drawings.plan_fit import Fit, around
from wiring.drawings.plan_labels import Room
from wiring.pictures.metrics import cap_mm, fitted, words_box
from wiring.pictures.picture import NO_PEN, Item, Path, Pen, Point, Words
from wiring.plan.plan import Plan

_BOARD = Pen("quiet", 0.5)
_TIES = Pen("faint", 1.5)
_BED = Pen("paper", 0.9)
_SCENE = Pen("faint", 0.3, (2.0, 1.2))
_PANEL = Pen("quiet", 0.35)
NAME_MM = 2.8


def ground(plan: Plan, fit: Fit) -> tuple[Item, ...]:
    """Return the items that parts and wires are drawn over."""
    items: list[Item] = []
    if len(plan.board) > 1:
        items.append(Path(tuple(fit.at(p) for p in plan.board), _BOARD, closed=True))
    for scene in plan.scenes.values():
        corners = _corners(fit, scene.x_mm, scene.y_mm, scene.width_mm, scene.height_mm)
        items.append(Path(corners, NO_PEN, "raised", closed=True))
        items.append(Path(corners, _SCENE, closed=True))
    for track in plan.tracks:
        points = tuple(fit.at(p) for p in track)
        items += [Path(points, _TIES), Path(points, _BED)]
    for panel in plan.panels.values():
        corners = _corners(fit, panel.x_mm, panel.y_mm, panel.width_mm, panel.height_mm)
        items.append(Path(corners, _PANEL, "raised", closed=True))
    return tuple(items)


def place_names(plan: Plan, fit: Fit, room: Room) -> tuple[Words, ...]:
    """Return the names of scenes and panels, each in a free corner of its rectangle; none without room."""
    names: list[Words] = []
    for place in (*plan.scenes.values(), *plan.panels.values()):
        corners = _corners(fit, place.x_mm, place.y_mm, place.width_mm, place.height_mm)
        left, top, right, bottom = around(corners)
        text = fitted(place.name, right - left - 2.0, NAME_MM, "italic")
        if len(text) < min(3, len(place.name)):
            continue
        high = top + 1.2 + cap_mm(NAME_MM, "italic")
        low = bottom - 1.4
        spots = (
            Words(text, (left + 1.0, high), NAME_MM, "quiet", "italic"),
            Words(text, (right - 1.0, high), NAME_MM, "quiet", "italic", "right"),
            Words(text, (left + 1.0, low), NAME_MM, "quiet", "italic"),
            Words(text, (right - 1.0, low), NAME_MM, "quiet", "italic", "right"),
            Words(text, ((left + right) / 2, high), NAME_MM, "quiet", "italic", "centre"),
            Words(text, ((left + right) / 2, low), NAME_MM, "quiet", "italic", "centre"),
        )
        free = [w for w in spots if room.free(words_box(w))]
        if free:
            words = min(free, key=lambda w: room.crossed(words_box(w)))
            room.take(words_box(words))
            names.append(words)
    return tuple(names)


def _corners(fit: Fit, x: float, y: float, width: float, height: float) -> tuple[Point, ...]:
    return tuple(fit.at(p) for p in ((x, y), (x + width, y), (x + width, y + height), (x, y + height)))
