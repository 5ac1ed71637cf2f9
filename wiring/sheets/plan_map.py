"""On the view of a whole crowded plan: which piece of it each detail sheet shows, with the sheet's number."""

from collections.abc import Sequence

from wiring.drawings.plan_fit import Box, Fit, around
from wiring.drawings.plan_room import Room
from wiring.drawings.plan_windows import Window
from wiring.pictures.metrics import words_box
from wiring.pictures.picture import Item, Path, Pen, Words
from wiring.sheets.pending import sheet_number

_EDGE = Pen("copper", 0.35)
_INSET_MM = 30.0  # of the plan: windows overlap by the air round what they hold
_LARGEST_MM, _LEAST_MM = 4.6, 3.0
_SHARES = (0.5, 0.25, 0.75, 0.1, 0.9)


def window_mark(window: Window) -> str:
    """Return the name of the mark on the sheet that shows a window."""
    return f"window {window.area.name}"


def plan_map(
    windows: Sequence[Window], fit: Fit, limits: Box, drawn: Sequence[Item] = ()
) -> tuple[Item, ...]:
    """Return the outline of every window, and in it the number of its sheet on no other number or word."""
    room, items = Room(limits), list[Item]()
    for item in drawn:
        if isinstance(item, Words):
            room.take(words_box(item))
    boxes = [_box(window, fit) for window in windows]
    for left, top, right, bottom in boxes:
        items.append(Path(((left, top), (right, top), (right, bottom), (left, bottom)), _EDGE, closed=True))
    smallest_first = sorted(zip(boxes, windows, strict=True), key=lambda b: _size(b[0]))
    for box, window in smallest_first:
        items.append(_number(window, box, room))
    return tuple(items)


def _box(window: Window, fit: Fit) -> Box:
    area = window.area
    inset = min(_INSET_MM, (area.right - area.left) / 4, (area.bottom - area.top) / 4)
    inner = area.widened(-inset)
    return around((fit.at((inner.left, inner.top)), fit.at((inner.right, inner.bottom))))


def _size(box: Box) -> float:
    return (box[2] - box[0]) * (box[3] - box[1])


def _number(window: Window, box: Box, room: Room) -> Words:
    """Return the number of a window's sheet where no other stands, in its middle if no place is free."""
    left, top, right, bottom = box
    size = min(max((bottom - top) * 0.4, _LEAST_MM), _LARGEST_MM)
    across, down = [left + (right - left) * s for s in _SHARES], [top + (bottom - top) * s for s in _SHARES]
    spots = [(x, y) for y in down for x in across]
    for at in spots:
        taken = words_box(Words("000", at, size, weight="bold", align="centre", stand="middle"))
        if room.free(taken):
            room.take(taken)
            return sheet_number(window_mark(window), at, size)
    return sheet_number(window_mark(window), spots[0], size)
