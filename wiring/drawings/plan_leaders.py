"""Labels that find no place beside their wire: set where there is room, a thin line leads to the wire."""

import math
from collections.abc import Iterator, Sequence
from itertools import pairwise
from typing import NamedTuple

from wiring.drawings.plan_fit import Box
from wiring.drawings.plan_labels import MOST_CROSSED, Room
from wiring.pictures.metrics import ascent_mm, descent_mm, width_mm
from wiring.pictures.picture import NO_PEN, Disc, Item, Path, Pen, Point, Words

_LEADER = Pen("quiet", 0.15)
_DOT_MM = 0.35
_NEAREST_MM, _FARTHEST_MM, _STEP_MM = 4.0, 90.0, 2.5
_TURNS = 24
_EVERY_MM, _DEEPEST_MM = 1.6, 45.0  # points of the wire that are tried, and how far in from its end
_ALONG_WEIGHT = 0.7
_COVERED_MM = 6.0  # how far a leader may run over a sign where its wire lies wholly under signs and words


class _Spot(NamedTuple):
    """A place for a label: what it costs, its box, and the two ends of its leader."""

    cost: float
    box: Box
    near: Point
    at: Point


def led_label(
    room: Room, text: str, wire: Sequence[Point], size_mm: float, colour: str = "quiet"
) -> tuple[Item, ...]:
    """Return words at the nearest free place and a line from there to a wire, given from its end inward.

    The line runs over no sign and no words, and nothing placed later lies on it; nothing is returned when
    there is no such place. It meets the wire near its end, where nothing covers the wire if that can be had.
    """
    wide = width_mm(text, size_mm) + 0.3
    up, down = ascent_mm(size_mm) * 0.92, descent_mm(size_mm)
    points = list(_points(wire))
    bare = [(along, at) for along, at in points if room.clear(at, at)]
    best = _best(room, bare, wide, up + down, 0.0) or _best(room, points, wide, up + down, _COVERED_MM)
    if best is None:
        return ()
    room.take(best.box)
    room.take_line(best.at, best.near)
    ground = "paper" if room.crossed(best.box) else ""
    middle = ((best.box[0] + best.box[2]) / 2, best.box[1] + up)
    words = Words(text, middle, size_mm, colour, align="centre", ground=ground)
    return Path((best.near, best.at), _LEADER), Disc(best.at, _DOT_MM, _DOT_MM, NO_PEN, "quiet"), words


def _best(
    room: Room, points: Sequence[tuple[float, Point]], wide: float, high: float, covered_mm: float
) -> _Spot | None:
    """Return the cheapest place; a leader may run over what is taken for so far from the wire."""
    best: _Spot | None = None
    for along, at in points:
        for reach, (x, y) in _spots(at, wide, high):
            cost = along * _ALONG_WEIGHT + reach
            if best is not None and cost > best.cost:
                break
            box = (x - wide / 2, y - high / 2, x + wide / 2, y + high / 2)
            if not room.free(box) or (crossed := room.crossed(box)) > MOST_CROSSED:
                continue
            cost += 0.8 * crossed
            if best is not None and cost >= best.cost:
                continue
            near = min(max(at[0], box[0]), box[2]), min(max(at[1], box[1]), box[3])
            long = max(math.dist(at, near), 1e-9)
            share = min(covered_mm / long, 1.0)
            start = (at[0] + (near[0] - at[0]) * share, at[1] + (near[1] - at[1]) * share)
            if room.clear(start, near):
                best = _Spot(cost, box, near, at)
    return best


def _points(wire: Sequence[Point]) -> Iterator[tuple[float, Point]]:
    """Walk along a wire from its end to its middle, with the way gone."""
    whole = sum(math.dist(a, b) for a, b in pairwise(wire))
    gone = 0.0
    for a, b in pairwise(wire):
        long = math.dist(a, b)
        steps = max(1, math.ceil(long / _EVERY_MM))
        for step in range(steps):
            along = gone + long * (step + 0.5) / steps
            if along > min(whole / 2, _DEEPEST_MM):
                return
            share = (step + 0.5) / steps
            yield along, (a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share)
        gone += long


def _spots(at: Point, wide: float, high: float) -> Iterator[tuple[float, Point]]:
    """Walk outward over where the middle of a label could be, with how long its leader would be."""
    reach = _NEAREST_MM
    while reach <= _FARTHEST_MM:
        for turn in range(_TURNS):
            angle = 2 * math.pi * turn / _TURNS
            cos, sin = math.cos(angle), math.sin(angle)
            yield reach, (at[0] + cos * (reach + wide / 2), at[1] + sin * (reach + high / 2))
        reach += _STEP_MM
