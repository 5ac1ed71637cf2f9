"""Stretches of wires that run over each other, and how far each steps aside to be told apart."""

import math
from collections import defaultdict
from collections.abc import Iterable, Iterator, Sequence
from itertools import pairwise
from typing import NamedTuple

from app.canvas.wire_paths import LANE_MM, LEAD_MM
from app.canvas.wireway_lanes import fanned_legs
from wiring.plan.names import WireId
from wiring.plan.places import Point

LEAST_MM = 4.0  # stretches that share less than this are not taken for one
CLOSE_MM = 1.5  # and those farther apart than this show beside each other as they are
WIDEST_MM = 24.0  # all stretches over each other together
STEP_DEG = 0.25

Line = tuple[int, int]  # direction and distance from the origin, in steps


class Stretch(NamedTuple):
    """A straight piece of a wire on its line: from, to, and +1 when it runs as the line does."""

    low: float
    high: float
    wire: WireId
    leg: int
    side: int


class Run(NamedTuple):
    """Where a wire was last taken in, which of its stretches have their place already, and their lines."""

    path: tuple[Point, ...]
    held: frozenset[int]
    lines: tuple[Line | None, ...]


class Overlaps:
    """Follows where wires run; lanes are only ever reckoned for the lines that changed."""

    def __init__(self) -> None:
        self._lines: dict[Line, dict[tuple[WireId, int], Stretch]] = defaultdict(dict)
        self._runs: dict[WireId, Run] = {}
        self._aside: dict[WireId, dict[int, float]] = {}
        self._unsettled: set[Line] = set()

    def put(self, wire_id: WireId, path: Sequence[Point], held: Iterable[int] = ()) -> bool:
        """Take in where a wire runs; its stretches in `held` have their place already.

        Only stretches that lie elsewhere now are looked at; False when there is none.
        """
        new, fixed = tuple(path), frozenset(held)
        run = self._runs.get(wire_id)
        if run is None or len(run.path) != len(new) or run.held != fixed:
            self.drop(wire_id)
            run = Run((), fixed, (None,) * (len(new) - 1))
        elif run.path == new:
            return False
        lines, old = list(run.lines), run.path
        for leg, (a, b) in enumerate(pairwise(new)):
            if old and a == old[leg] and b == old[leg + 1]:
                continue
            self._take_off(wire_id, leg, lines[leg])
            on = _line(a, b) if leg not in fixed else None
            lines[leg] = on[0] if on is not None else None
            if on is not None:
                line, low, high, side = on
                self._lines[line][wire_id, leg] = Stretch(low, high, wire_id, leg, side)
                self._unsettled.add(line)
        self._runs[wire_id] = Run(new, fixed, tuple(lines))
        return True

    def drop(self, wire_id: WireId) -> None:
        """Forget a wire."""
        run = self._runs.pop(wire_id, None)
        if run is not None:
            for leg, line in enumerate(run.lines):
                self._take_off(wire_id, leg, line)
        self._aside.pop(wire_id, None)

    def _take_off(self, wire_id: WireId, leg: int, line: Line | None) -> None:
        if line is None:
            return
        if wire_id in self._aside:
            self._aside[wire_id].pop(leg, None)
        there = self._lines[line]
        there.pop((wire_id, leg), None)
        if there:
            self._unsettled.add(line)
        else:
            del self._lines[line]
            self._unsettled.discard(line)

    def settle(self) -> frozenset[WireId]:
        """Reckon the lanes of the lines that changed; the answer is every wire whose way is another one."""
        changed = set()
        for line in self._unsettled:
            there = self._lines[line]
            lanes = dict(_lanes(there.values())) if len(there) > 1 else {}
            if not lanes and not any(wire in self._aside for wire, _ in there):
                continue
            for (wire_id, leg), stretch in there.items():
                by = lanes.get((wire_id, leg), 0.0) * stretch.side
                known = self._aside.get(wire_id, {}).get(leg, 0.0)
                if by != known:
                    self._aside.setdefault(wire_id, {})[leg] = by
                    changed.add(wire_id)
        self._unsettled.clear()
        return frozenset(changed)

    def path(self, wire_id: WireId, path: tuple[Point, ...]) -> tuple[Point, ...]:
        """Return the way of a wire with its stretches stepped aside."""
        aside = self._aside.get(wire_id)
        if not aside or not any(aside.values()):
            return path
        return stepped_aside(path, [aside.get(leg, 0.0) for leg in range(len(path) - 1)])


def stepped_aside(path: Sequence[Point], by_mm: Sequence[float]) -> tuple[Point, ...]:
    """Return a path with each straight piece shifted to its right; its ends stay on their terminals."""
    moved = fanned_legs(path, by_mm)
    first = (_lead(path[0], path[1], by_mm[0]),) if by_mm[0] else ()
    last = (_lead(path[-1], path[-2], -by_mm[-1]),) if by_mm[-1] else ()
    return (moved[0], *first, *moved[1:-1], *last, moved[-1])


def _lead(at: Point, toward: Point, by_mm: float) -> Point:
    """Return where a wire has reached its lane, a little way from its terminal."""
    length = math.dist(at, toward)
    ux, uy = (toward[0] - at[0]) / length, (toward[1] - at[1]) / length
    lead = min(LEAD_MM, length / 4)
    return at[0] + ux * lead - uy * by_mm, at[1] + uy * lead + ux * by_mm


def _line(a: Point, b: Point) -> tuple[Line, float, float, int] | None:
    """Return the line a stretch lies on, from where to where, and which way it runs; None for a short one."""
    dx, dy = b[0] - a[0], b[1] - a[1]
    if abs(dx) + abs(dy) < LEAST_MM:
        return None
    if abs(dy) < 1e-6:
        return (0, _step(a[1])), min(a[0], b[0]), max(a[0], b[0]), 1 if dx > 0 else -1
    if abs(dx) < 1e-6:
        return (round(90 / STEP_DEG), _step(-a[0])), min(a[1], b[1]), max(a[1], b[1]), 1 if dy > 0 else -1
    side = 1 if dx > 0 else -1
    direction = round(math.degrees(math.atan2(dy * side, dx * side)) / STEP_DEG)
    length = math.hypot(dx, dy)
    ux, uy = dx * side / length, dy * side / length
    low, high = sorted((a[0] * ux + a[1] * uy, b[0] * ux + b[1] * uy))
    return (direction, _step(a[1] * ux - a[0] * uy)), low, high, side


def _step(away_mm: float) -> int:
    # The odd share keeps rounding noise of places on a grid away from the borders between two steps.
    return math.floor(away_mm / CLOSE_MM + 0.3719)


def _lanes(stretches: Iterable[Stretch]) -> Iterator[tuple[tuple[WireId, int], float]]:
    """Walk the stretches that share some of their line, each with how far to the right of it it runs."""
    for bunch in _bunches(sorted(stretches)):
        if len(bunch) < 2:
            continue
        lane: dict[Stretch, int] = {}
        for one in sorted(bunch, key=lambda s: (len(s.wire), s.wire, s.leg)):
            taken = {lane[other] for other in lane if _shared(one, other) >= LEAST_MM}
            lane[one] = next(i for i in range(len(bunch)) if i not in taken)
        count = max(lane.values()) + 1
        apart = min(LANE_MM, WIDEST_MM / count)
        for one, index in lane.items():
            yield (one.wire, one.leg), (index - (count - 1) / 2) * apart


def _bunches(ordered: Sequence[Stretch]) -> Iterator[list[Stretch]]:
    bunch: list[Stretch] = []
    reach = -math.inf
    for one in ordered:
        if bunch and reach - one.low < LEAST_MM:
            yield bunch
            bunch, reach = [], -math.inf
        bunch.append(one)
        reach = max(reach, one.high)
    yield bunch


def _shared(one: Stretch, other: Stretch) -> float:
    return min(one.high, other.high) - max(one.low, other.low)
