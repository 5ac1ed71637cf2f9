"""What lies under the wiring on a plan view: board, joists, tracks, wireways, scenes and panels."""

from collections.abc import Sequence
from itertools import pairwise

from wiring.drawings.panel_on_plan import painted
from wiring.drawings.plan_areas import Area, areas, panel_areas, scene_areas
from wiring.drawings.plan_clip import overlap_of, pieces
from wiring.drawings.plan_fit import Box, Fit, around
from wiring.drawings.plan_joists import joist_items
from wiring.drawings.plan_room import Room
from wiring.pictures.metrics import cap_mm, fitted, words_box
from wiring.pictures.picture import NO_PEN, Item, Path, Pen, Point, Words
from wiring.plan.plan import Plan
from wiring.plan.wireway import Wireway

_BOARD = Pen("quiet", 0.5)
_TIES = Pen("faint", 1.5)
_BED = Pen("paper", 0.9)
_SCENE = Pen("faint", 0.3, (2.0, 1.2))
_WIREWAY = Pen("quiet", 0.3, (3.0, 1.0, 0.6, 1.0))
_PANEL = Pen("quiet", 0.35)
NAME_MM = 3.0


def ground(plan: Plan, fit: Fit, clip: Box) -> tuple[Item, ...]:
    """Return the items that parts and wires are drawn over, cut at the edge of the view."""
    items: list[Item] = []
    for area in scene_areas(plan):
        box = overlap_of(around(_corners(fit, area)), clip)
        if box is not None:
            items += [
                Path(_rectangle(box), NO_PEN, "raised", closed=True),
                Path(_rectangle(box), _SCENE, closed=True),
            ]
    if len(plan.board) > 1:
        items += _lines(tuple(fit.at(p) for p in (*plan.board, plan.board[0])), clip, _BOARD)
    items += joist_items(plan, fit, clip)
    for track in plan.tracks:
        points = tuple(fit.at(p) for p in track)
        items += _lines(points, clip, _TIES)
        items += _lines(points, clip, _BED)
    for way in plan.wireways.values():
        items += _lines(tuple(fit.at(p) for p in way.points), clip, _WIREWAY)
    for panel, area in zip(plan.panels.values(), panel_areas(plan), strict=True):
        box = overlap_of(around(_corners(fit, area)), clip)
        if box is not None:
            items.append(Path(_rectangle(box), _PANEL, "raised", closed=True))
            items += painted(panel, fit, clip)
    return tuple(items)


def place_names(plan: Plan, fit: Fit, room: Room, clip: Box) -> tuple[Words, ...]:
    """Return the names of scenes and panels, each in a free corner of its rectangle; none without room."""
    names: list[Words] = []
    for area in areas(plan):
        box = overlap_of(around(_corners(fit, area)), clip)
        if box is None:
            continue
        left, top, right, bottom = box
        text = fitted(area.name, right - left - 2.0, NAME_MM, "italic")
        if len(text) < min(3, len(area.name)):
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
        names += _freest(spots, room)
    for way in plan.wireways.values():
        names += _freest(_beside(way, fit, clip), room)
    return tuple(names)


def _freest(spots: Sequence[Words], room: Room) -> list[Words]:
    """Return the words at the free spot that fewest lines run through, and take that room; [] for no spot."""
    free = [w for w in spots if room.free(words_box(w))]
    if not free:
        return []
    words = min(free, key=lambda w: room.crossed(words_box(w)))
    room.take(words_box(words))
    return [words]


def _beside(way: Wireway, fit: Fit, clip: Box) -> list[Words]:
    """Return where the name of a wireway could stand: beside the quarters and the middle of its stretches."""
    spots = []
    for a, b in pairwise(fit.at(p) for p in way.points):
        for share in (0.5, 0.25, 0.75):
            x, y = a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share
            if clip[0] < x < clip[2] and clip[1] < y < clip[3]:
                high = cap_mm(NAME_MM, "italic")
                for off in (1.3, 4.5, 8.0):  # farther out where a bundle lies in the wireway
                    spots += [
                        Words(way.name, (x, y - off), NAME_MM, "quiet", "italic", "centre"),
                        Words(way.name, (x, y + off + high), NAME_MM, "quiet", "italic", "centre"),
                        Words(way.name, (x + off, y + high / 2), NAME_MM, "quiet", "italic"),
                        Words(way.name, (x - off, y + high / 2), NAME_MM, "quiet", "italic", "right"),
                    ]
    return spots


def outlines(plan: Plan, fit: Fit) -> list[tuple[Point, ...]]:
    """Return the strong lines of the ground, which words had better not lie on."""
    board = tuple(fit.at(p) for p in (*plan.board, *plan.board[:1]))
    panels = [_rectangle(around(_corners(fit, area))) for area in panel_areas(plan)]
    return [board, *((*corners, corners[0]) for corners in panels)]


def _lines(points: tuple[Point, ...], clip: Box, pen: Pen) -> list[Path]:
    return [Path(piece.points, pen) for piece in pieces(points, clip)]


def _corners(fit: Fit, area: Area) -> tuple[Point, Point]:
    return fit.at((area.left, area.top)), fit.at((area.right, area.bottom))


def _rectangle(box: Box) -> tuple[Point, ...]:
    return (box[0], box[1]), (box[2], box[1]), (box[2], box[3]), (box[0], box[3])
