"""Puts words beside what they name so that none covers another: greedy, nearest free place first."""

import math
from collections.abc import Iterable, Iterator
from functools import lru_cache
from typing import Literal

from wiring.drawings.plan_fit import Box
from wiring.drawings.plan_room import Room
from wiring.pictures.metrics import GROUND_PAD_EM, ascent_mm, descent_mm, width_mm
from wiring.pictures.picture import Item, Path, Pen, Point, Words

_LED_MM = 3.0  # farther off, a leader tells what the words belong to
MOST_CROSSED = 13  # cells of lines under a label: about two wires across; more would be hidden
_LEADER = Pen("quiet", 0.15)
_WAYS = tuple(
    (math.cos(math.radians(a)), math.sin(math.radians(a)))
    for a in (-90, 0, 180, 90, -45, -135, 45, 135, -22, -158, 22, 158, -67, -113, 67, 113)
)


def labelled(
    room: Room,
    text: str,
    about: Box,
    size_mm: float,
    *,
    reaches_mm: tuple[float, ...] = (0.5, 2.5, 5.0, 9.0),
    colour: str = "ink",
    semibold: bool = False,
    over_all: bool = False,
) -> tuple[Item, ...]:
    """Return the words, and a leader when they stand off, beside a box; nothing when no place is free.

    The leader runs over no sign and no other words, unless it may run `over_all`.
    """
    weight: Literal["semibold", "regular"] = "semibold" if semibold else "regular"
    wide = width_mm(text, size_mm, weight) + 0.3
    up, down = ascent_mm(size_mm, weight) * 0.92, descent_mm(size_mm, weight)
    candidates = _candidates(about, wide, up + down, reaches_mm)
    found = _best(room, candidates, about, size_mm, over_all=over_all)
    if found is None:
        return ()
    reach, box = found
    room.take(box)
    at = (box[0] + box[2]) / 2, box[1] + up
    ground = "paper" if room.crossed(box) else ""
    words = Words(text, at, size_mm, colour, weight, "centre", ground=ground)
    if reach < _LED_MM:
        return (words,)
    leader = _whole_leader(about, box)
    room.draw(leader)
    room.take_line(*leader)
    return Path(leader, _LEADER), words


def _best(
    room: Room, candidates: Iterable[tuple[float, Box]], about: Box, size_mm: float, *, over_all: bool
) -> tuple[float, Box] | None:
    """Return the box for words that stands near and covers few lines, and how far off it stands."""
    best: tuple[float, Box] | None = None
    least = math.inf
    for reach, box in candidates:
        if reach * 0.35 >= least:
            break
        if not room.free(box):
            continue
        crossed = room.crossed(box)
        cost = reach * 0.35 + crossed * 0.8
        if crossed > MOST_CROSSED or cost >= least:
            continue
        if crossed and not room.free(_padded(box, size_mm)):
            continue  # the ground under these words would hide others
        if reach < _LED_MM or over_all or room.clear(*_leader(about, box)):
            best, least = (reach, box), cost
            if not crossed:
                break  # whatever comes now stands as far off or farther
    return best


def _padded(box: Box, size_mm: float) -> Box:
    pad = GROUND_PAD_EM * size_mm
    return box[0] - pad, box[1] - pad, box[2] + pad, box[3] + pad


def _whole_leader(about: Box, box: Box) -> tuple[Point, Point]:
    near = _nearest(box, ((about[0] + about[2]) / 2, (about[1] + about[3]) / 2))
    return near, _nearest(about, near)


def _leader(about: Box, box: Box) -> tuple[Point, Point]:
    """Return the stretch of a leader that must be clear: all but its ends."""
    near, end = _whole_leader(about, box)
    long = max(math.dist(near, end), 1e-9)
    share = max(0.0, 1.0 - 1.0 / long)
    return near, (near[0] + (end[0] - near[0]) * share, near[1] + (end[1] - near[1]) * share)


def _candidates(
    about: Box, wide: float, high: float, reaches: tuple[float, ...]
) -> Iterator[tuple[float, Box]]:
    x, y = (about[0] + about[2]) / 2, (about[1] + about[3]) / 2
    size = round(about[2] - about[0], 3), round(about[3] - about[1], 3)
    for reach, left, top in _offsets(*size, wide, high, reaches):
        yield reach, (x + left, y + top, x + left + wide, y + top + high)


@lru_cache(maxsize=4096)
def _offsets(
    about_w: float, about_h: float, wide: float, high: float, reaches: tuple[float, ...]
) -> tuple[tuple[float, float, float], ...]:
    """Return reach and upper left corner of every place round a box's middle; many labels share them."""
    return tuple(
        (
            reach,
            _push(cos, about_w / 2 + wide / 2 + reach) - wide / 2,
            _push(sin, about_h / 2 + high / 2 + reach) - high / 2,
        )
        for reach in reaches
        for cos, sin in _WAYS
    )


def _push(part: float, far: float) -> float:
    # a slanted way stands off as far as a straight one on its leading side, so corners touch nothing
    return part * far if abs(part) < 0.5 else math.copysign(far, part)


def _nearest(box: Box, to: Point) -> Point:
    return min(max(to[0], box[0]), box[2]), min(max(to[1], box[1]), box[3])
