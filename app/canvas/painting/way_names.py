"""Finds places for the names of wireways: beside the way, where no part, label or other word stands."""

import math
from collections.abc import Iterable, Sequence
from itertools import pairwise
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray
from PySide6.QtGui import QColor

from app.canvas.geometry import Box
from app.canvas.painting.area_names import WAY_FONT, WAY_HIGH_PX, AreaName, width_px
from app.canvas.painting.label_painter import FEW, LABELS_FROM, PLATE
from app.canvas.painting.label_room import GAP_PX
from app.canvas.painting.near_boxes import NearBoxes
from app.canvas.painting.part_painter import shown_boxes
from app.canvas.painting.wireway_painter import LEAST_PX
from app.canvas.sight import Sight
from app.canvas.table import Floats
from app.canvas.wireway_lanes import IN_WAY_MM, WIDEST_MM
from app.theme.surfaces import surfaces
from app.theme.words import factor, lined
from wiring.plan.names import WirewayId
from wiring.plan.places import Point
from wiring.plan.wireway import Wireway

OFF_PX = 2.0  # off the band
STEP_PX = 8.0  # from one place that is tried to the next, and from dot to dot of a wire
PART_RIM_PX = 6.0  # kept free about a part, where its flag may come to stand
CROSSED_DOTS = 6  # of wires under a name, where there is no other room: two or three that cross it
WIRES_MOST = 400  # more wires beside the ways are run across rather than looked at one by one
FAR_MM = 30.0  # what lies so far from all ways is not looked at, and what is a name's height away


class _Spot(NamedTuple):
    """Where a name has room: its middle in pixels from the plan's origin, and its slope."""

    middle: Point
    angle_deg: float
    box: Box


class WayNames:
    """Keeps names where they stand while the plan and its scale are the same, so that none jumps."""

    def __init__(self) -> None:
        self._key: tuple[object, ...] = ()
        self._spots: dict[WirewayId, _Spot] = {}

    def place(self, sight: Sight, areas: Sequence[AreaName]) -> list[AreaName]:
        """Return the names that have room; `areas` are the names of scenes and panels."""
        plan, scale = sight.plan, sight.camera.scale
        key = plan.wireways, plan.parts, plan.wires, plan.panels, plan.scenes, scale, factor()
        if not _is_same(self._key, key):
            self._key, self._spots = key, _spots(sight, [name.box for name in areas])
        x, y = sight.camera.left_mm * scale, sight.camera.top_mm * scale
        quiet = QColor(surfaces(sight.shades.theme).quiet)
        return [
            AreaName(
                plan.wireways[way].name,
                Box(spot.box.left - x, spot.box.top - y, spot.box.right - x, spot.box.bottom - y),
                quiet,
                WAY_FONT,
                spot.angle_deg,
            )
            for way, spot in self._spots.items()
        ]


def _is_same(one: tuple[object, ...], other: tuple[object, ...]) -> bool:
    """Return whether it is the same plan, by identity, at the same scale and with words as large."""
    return bool(one) and all(a is b for a, b in zip(one[:5], other[:5], strict=True)) and one[5:] == other[5:]


def _spots(sight: Sight, areas: Iterable[Box]) -> dict[WirewayId, _Spot]:
    ways = [
        way for way in sight.plan.wireways.values() if _longest_px(sight, way) >= width_px(way.name, WAY_FONT)
    ]
    if not ways:
        return {}
    hard, soft = _obstacles(sight, ways, areas)
    wires = NearBoxes(soft)
    found: dict[WirewayId, _Spot] = {}
    for way in ways:
        taken = NearBoxes(hard)
        spot = _best(sight, way, taken, wires)
        if spot is not None:
            found[way.id] = spot
            hard = np.vstack((hard, np.array(spot.box)))
    return found


def _best(sight: Sight, way: Wireway, taken: NearBoxes, wires: NearBoxes) -> _Spot | None:
    """Return the middle of the longest free room beside any stretch of a way, on either side of it.

    Where there is none, a few wires may cross under the name.
    """
    scale, wide = sight.camera.scale, width_px(way.name, WAY_FONT)
    off = _half_px(sight, way) + OFF_PX + lined(WAY_HIGH_PX) / 2
    best: dict[int, tuple[float, _Spot]] = {}  # by the dots of wires that were let under the name
    for (ax, ay), (bx, by) in sorted(pairwise(way.points), key=lambda ends: -math.dist(*ends)):
        length = math.dist((ax, ay), (bx, by)) * scale
        if length < wide or (0 in best and length - wide <= best[0][0]):
            break
        ux, uy = (bx - ax) * scale / length, (by - ay) * scale / length
        if ux < -1e-9 or (abs(ux) < 1e-9 and uy > 0):  # read from the left, or upwards
            ax, ay, ux, uy = bx, by, -ux, -uy
        at = np.arange(wide / 2, length - wide / 2 + STEP_PX / 2, STEP_PX)
        for side in (1.0, -1.0):
            x, y = ax * scale - uy * off * side, ay * scale + ux * off * side
            middles = np.column_stack((x + ux * at, y + uy * at))
            pieces = _pieces(middles, (ux, uy), wide)
            free = ~taken.overlapped(pieces).reshape(len(at), -1).any(axis=1)
            under = np.bincount(wires.overlaps(pieces)[0], minlength=len(pieces))
            crossed = under.reshape(len(at), -1).sum(axis=1)
            for most in (0, CROSSED_DOTS):
                first, last = _longest_run((free & (crossed <= most)).tolist())
                room = (last - first) * STEP_PX
                if last >= first and (most not in best or room > best[most][0]):
                    middle = middles[(first + last) // 2].tolist()
                    best[most] = room, _spot((middle[0], middle[1]), (ux, uy), wide)
    return best[min(best)][1] if best else None


def _spot(middle: Point, way: Point, wide: float) -> _Spot:
    (x, y), (ux, uy), high = middle, way, lined(WAY_HIGH_PX)
    across, down = (abs(ux) * wide + abs(uy) * high) / 2, (abs(uy) * wide + abs(ux) * high) / 2
    return _Spot(middle, math.degrees(math.atan2(uy, ux)), Box(x - across, y - down, x + across, y + down))


def _pieces(middles: Floats, way: Point, wide: float) -> Floats:
    """Return boxes that together cover a name at each of its places, however it slopes; place by place."""
    (ux, uy), high = way, lined(WAY_HIGH_PX)
    count = 1 if min(abs(ux), abs(uy)) < 0.02 else math.ceil(wide / high)
    along = (np.arange(count) + 0.5) * (wide / count) - wide / 2
    x = (middles[:, 0][:, None] + ux * along).ravel()
    y = (middles[:, 1][:, None] + uy * along).ravel()
    across = (abs(ux) * wide / count + abs(uy) * high) / 2
    down = (abs(uy) * wide / count + abs(ux) * high) / 2
    return np.column_stack((x - across, y - down, x + across, y + down))


def _longest_run(free: Sequence[bool]) -> tuple[int, int]:
    """Return first and last of the longest row of free places; last before first when there is none."""
    best, start = (0, -1), 0
    for n, is_free in enumerate(free):
        if not is_free:
            start = n + 1
        elif n - start > best[1] - best[0]:
            best = start, n
    return best


def _obstacles(sight: Sight, ways: Sequence[Wireway], areas: Iterable[Box]) -> tuple[Floats, Floats]:
    """Return boxes no name may lie over, and those of wires, which it had better not; from the origin."""
    scale, geometry = sight.camera.scale, sight.geometry
    points = np.array([point for way in ways for point in way.points])
    reach = FAR_MM + lined(WAY_HIGH_PX) * 2 / scale
    near = Box(*(points.min(axis=0) - reach).tolist(), *(points.max(axis=0) + reach).tolist())
    origin = np.array([sight.camera.left_mm, sight.camera.top_mm] * 2) * scale
    rows = [np.array([box], dtype=float) + origin for box in areas]
    parts = geometry.parts_in(near)
    if parts:
        boxes = shown_boxes(sight, parts) + origin
        rows.append(boxes + np.array([-PART_RIM_PX, -PART_RIM_PX, PART_RIM_PX, PART_RIM_PX]))
    if parts and (scale >= LABELS_FROM or len(sight.plan.parts) <= FEW):  # where most labels stand
        wide = np.array([PLATE.width(f"-{sight.plan.parts[i].designation}") for i in parts])
        x, bottom = (boxes[:, 0] + boxes[:, 2]) / 2, boxes[:, 3]
        rows.append(np.column_stack((x - wide / 2, bottom, x + wide / 2, bottom + GAP_PX + PLATE.high_px)))
    hard = np.vstack(rows) if rows else np.empty((0, 4))
    wires = geometry.wires_in(near)
    lines = [way.points for way in ways]
    if len(wires) <= WIRES_MOST:
        lines += [geometry.paths[i] for i in wires]
    stretches = np.array([(*a, *b) for line in lines for a, b in pairwise(line)])
    return hard, _dotted(stretches[_reach_into(stretches, near)] * scale)


def _reach_into(stretches: Floats, box: Box) -> NDArray[np.bool_]:
    """Return which straight stretches may reach into a box."""
    x, y = stretches[:, 0::2], stretches[:, 1::2]
    across = (x.min(axis=1) <= box.right) & (x.max(axis=1) >= box.left)
    return np.asarray(across & (y.min(axis=1) <= box.bottom) & (y.max(axis=1) >= box.top))


def _dotted(lines: Floats) -> Floats:
    """Return small boxes all along straight lines."""
    start, way = lines[:, :2], lines[:, 2:] - lines[:, :2]
    count = np.ceil(np.hypot(way[:, 0], way[:, 1]) / STEP_PX).astype(np.int64) + 1
    line = np.repeat(np.arange(len(lines)), count)
    step = (np.arange(len(line)) - np.repeat(np.cumsum(count) - count, count)) / np.maximum(
        count[line] - 1, 1
    )
    at = start[line] + way[line] * step[:, None]
    return np.hstack((at - 1.0, at + 1.0))


def _half_px(sight: Sight, way: Wireway) -> float:
    """Return half of what a way and the wires in it are wide."""
    inside = sum([1 for wire in sight.plan.wires.values() if wire.along and way.id in wire.along])
    fanned = min(IN_WAY_MM * max(inside - 1, 0), WIDEST_MM) + IN_WAY_MM
    return max(max(way.hole_mm, fanned) * sight.camera.scale, LEAST_PX) / 2


def _longest_px(sight: Sight, way: Wireway) -> float:
    return max((math.dist(a, b) for a, b in pairwise(way.points)), default=0.0) * sight.camera.scale
