"""A way with square corners from one terminal to another that keeps off bodies and off other wires."""

from collections.abc import Iterable, Iterator, Sequence
from itertools import pairwise, product
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from wiring.plan.places import Point

Floats = NDArray[np.float64]
Box = tuple[float, float, float, float]  # left, top, right, bottom

LANE_MM = 4.0  # ways run on lines this far apart, so that wires laid one after the other lie side by side
REACH_MM = 48.0  # how far beside its ends a way may run
JOG_MM = 3.0  # a second wire on a terminal comes in this far beside the first
CLOSE_MM = 2.9  # nearer than this, two wires side by side look like one
TERMINAL_MM, BODY_MM = 2.0, 4.0  # room kept round terminals and bodies
# What a way costs besides its length, in millimetres it would rather go round.
ON_WIRE, ON_TERMINAL, ON_BODY, CROSSING, CORNER = 900.0, 700.0, 400.0, 14.0, 6.0


class Ground:
    """What a way has to keep off: wires side by side, bodies, and terminals of others."""

    def __init__(self, bodies: Iterable[Box], terminals: Iterable[Point]) -> None:
        self.bodies = _rows(list(bodies), 4)
        self.terminals = _rows(list(terminals), 2)
        self._level = _Stretches()  # y, from x, to x
        self._upright = _Stretches()  # x, from y, to y

    def lay(self, path: Sequence[Point]) -> None:
        """Take in a wire that lies there."""
        for (ax, ay), (bx, by) in pairwise(path):
            if abs(ay - by) < 0.01:
                self._level.add((ay, min(ax, bx), max(ax, bx)))
            elif abs(ax - bx) < 0.01:
                self._upright.add((ax, min(ay, by), max(ay, by)))

    def stand(self, body: Box, terminals: Sequence[Point]) -> None:
        """Take in a part that was set down."""
        self.bodies = np.vstack((self.bodies, _rows([body], 4)))
        self.terminals = np.vstack((self.terminals, _rows(terminals, 2)))

    def has_wire_in(self, box: Box) -> bool:
        """Whether a square stretch of a wire runs through a rectangle."""
        left, top, right, bottom = box
        y, x = self._level.rows(), self._upright.rows()
        level = (y[:, 0] > top) & (y[:, 0] < bottom) & (y[:, 1] < right) & (y[:, 2] > left)
        upright = (x[:, 0] > left) & (x[:, 0] < right) & (x[:, 1] < bottom) & (x[:, 2] > top)
        return bool(level.any() or upright.any())

    def between(self, a: Point, b: Point) -> "Near":
        """Return what lies where a way from a to b may run."""
        left, right = min(a[0], b[0]) - REACH_MM - LANE_MM, max(a[0], b[0]) + REACH_MM + LANE_MM
        top, bottom = min(a[1], b[1]) - REACH_MM - LANE_MM, max(a[1], b[1]) + REACH_MM + LANE_MM

        def inside(x0: Floats, x1: Floats, y0: Floats, y1: Floats) -> NDArray[np.bool_]:
            found: NDArray[np.bool_] = (x1 >= left) & (x0 <= right) & (y1 >= top) & (y0 <= bottom)
            return found

        rows, columns = self._level.rows(), self._upright.rows()
        bodies, points = self.bodies, self.terminals
        return Near(
            rows[inside(rows[:, 1], rows[:, 2], rows[:, 0], rows[:, 0])],
            columns[inside(columns[:, 0], columns[:, 0], columns[:, 1], columns[:, 2])],
            bodies[inside(bodies[:, 0], bodies[:, 2], bodies[:, 1], bodies[:, 3])],
            points[inside(points[:, 0], points[:, 0], points[:, 1], points[:, 1])],
        )


class _Stretches:
    """Rows of three numbers; what was added is put to the others when they are asked for."""

    def __init__(self) -> None:
        self._rows, self._new = _rows([], 3), list[tuple[float, float, float]]()

    def add(self, row: tuple[float, float, float]) -> None:
        self._new.append(row)

    def rows(self) -> Floats:
        if self._new:
            self._rows = np.vstack((self._rows, _rows(self._new, 3)))
            self._new.clear()
        return self._rows


class Near(NamedTuple):
    """Obstacles as rows: stretches across (y, from x, to x) and down (x, from y, to y), bodies, terminals."""

    level: Floats
    upright: Floats
    bodies: Floats
    terminals: Floats


def square_way(a: Point, b: Point, ground: Ground) -> tuple[Point, ...]:
    """Return the bends of the cheapest square way from a to b."""
    near = ground.between(a, b)
    best, cost = _cheapest(list(_plain_ways(a, b)), a, b, near)
    shortest = abs(a[0] - b[0]) + abs(a[1] - b[1])
    if cost - shortest >= ON_BODY:
        other, other_cost = _cheapest(list(_jogged_ways(a, b)), a, b, near)
        best = other if other_cost < cost else best
    return tuple(_tidy(best))[1:-1]


def _lanes(a: float, b: float) -> list[float]:
    steps = int(REACH_MM / LANE_MM)
    lanes = {(round(end / LANE_MM) + step) * LANE_MM for end in (a, b) for step in range(-steps, steps + 1)}
    return sorted(lanes)


def _plain_ways(a: Point, b: Point) -> Iterator[tuple[Point, ...]]:
    (ax, ay), (bx, by) = a, b
    yield a, (ax, by), (ax, by), (ax, by), (ax, by), b
    yield a, (bx, ay), (bx, ay), (bx, ay), (bx, ay), b
    for y in _lanes(ay, by):
        yield a, (ax, y), (ax, y), (bx, y), (bx, y), b
    for x in _lanes(ax, bx):
        yield a, (x, ay), (x, ay), (x, by), (x, by), b


def _jogged_ways(a: Point, b: Point) -> Iterator[tuple[Point, ...]]:
    (ax, ay), (bx, by) = a, b
    jogs = (0.0, JOG_MM, -JOG_MM)
    for (ja, jb), y in product(product(jogs, jogs), _lanes(ay, by)):
        yield a, (ax + ja, ay), (ax + ja, y), (bx + jb, y), (bx + jb, by), b
    for (ja, jb), x in product(product(jogs, jogs), _lanes(ax, bx)):
        yield a, (ax, ay + ja), (x, ay + ja), (x, by + jb), (bx, by + jb), b


def _cheapest(
    ways: list[tuple[Point, ...]], a: Point, b: Point, ground: Near
) -> tuple[tuple[Point, ...], float]:
    points: Floats = np.array(ways, dtype=float)
    start, end = points[:, :-1], points[:, 1:]
    low, high = np.minimum(start, end), np.maximum(start, end)
    span = high - low
    cost = span.sum(axis=(1, 2)) + CORNER * ((span.sum(axis=2) > 0.01).sum(axis=1) - 1)
    runs_level = (span[:, :, 0] > 0.01) & (span[:, :, 1] <= 0.01)
    runs_upright = (span[:, :, 1] > 0.01) & (span[:, :, 0] <= 0.01)
    cost = cost + _meeting(low, high, runs_level, runs_upright, ground)
    cost = cost + ON_BODY * _touching(low, high, _apart_from(ground.bodies, a, b))
    others = ground.terminals
    if len(others):
        away = np.minimum(np.abs(others - a).max(axis=1), np.abs(others - b).max(axis=1))
        others = others[away > 0.05]
    boxes = np.hstack((others - TERMINAL_MM, others + TERMINAL_MM)) if len(others) else _rows([], 4)
    cost = cost + ON_TERMINAL * _touching(low, high, boxes)
    best = int(np.argmin(cost.round(6)))
    return ways[best], float(cost[best])


def _apart_from(bodies: Floats, a: Point, b: Point) -> Floats:
    """Return the bodies with room round them, without those that one of the ends lies in."""
    if not len(bodies):
        return bodies
    grown = bodies + np.array([-BODY_MM, -BODY_MM, BODY_MM, BODY_MM])
    holds = np.zeros(len(grown), dtype=bool)
    for x, y in (a, b):
        holds |= (grown[:, 0] < x) & (x < grown[:, 2]) & (grown[:, 1] < y) & (y < grown[:, 3])
    kept: Floats = grown[~holds]
    return kept


def _meeting(
    low: Floats, high: Floats, runs_level: NDArray[np.bool_], runs_upright: NDArray[np.bool_], ground: Near
) -> Floats:
    """Return what lying on other wires and crossing them costs each way."""
    total: Floats = np.zeros(len(low))
    for own, along, across, same, other in (
        (runs_level, 0, 1, ground.level, ground.upright),
        (runs_upright, 1, 0, ground.upright, ground.level),
    ):
        lo, hi, at = low[:, :, along, None], high[:, :, along, None], low[:, :, across, None]
        if len(same):
            shared = np.minimum(hi, same[:, 2]) - np.maximum(lo, same[:, 1])
            lies = own[:, :, None] & (np.abs(at - same[:, 0]) < CLOSE_MM) & (shared > 0.6)
            total = total + (np.where(lies, ON_WIRE + shared, 0.0)).sum(axis=(1, 2))
        if len(other):
            meets = (
                own[:, :, None]
                & (other[:, 0] > lo + 0.01)
                & (other[:, 0] < hi - 0.01)
                & (at > other[:, 1] + 0.01)
                & (at < other[:, 2] - 0.01)
            )
            total = total + CROSSING * meets.sum(axis=(1, 2))
    return total


def _touching(low: Floats, high: Floats, boxes: Floats) -> Floats:
    """Return how many boxes each way runs into."""
    if not len(boxes):
        return np.zeros(len(low))
    inside = (
        (low[:, :, 0, None] < boxes[:, 2] - 0.01)
        & (high[:, :, 0, None] > boxes[:, 0] + 0.01)
        & (low[:, :, 1, None] < boxes[:, 3] - 0.01)
        & (high[:, :, 1, None] > boxes[:, 1] + 0.01)
    )
    hits: Floats = inside.any(axis=1).sum(axis=1).astype(float)
    return hits


def _tidy(way: Sequence[Point]) -> list[Point]:
    """Return the way without points twice in a row or in the middle of a straight stretch."""
    kept: list[Point] = []
    for point in way:
        if kept and abs(point[0] - kept[-1][0]) < 0.01 and abs(point[1] - kept[-1][1]) < 0.01:
            continue
        while len(kept) > 1 and _in_line(kept[-2], kept[-1], point):
            kept.pop()
        kept.append(point)
    return kept if len(kept) > 1 else list(way[:1]) + list(way[-1:])


def _in_line(a: Point, b: Point, c: Point) -> bool:
    same_x = abs(a[0] - b[0]) < 0.01 and abs(b[0] - c[0]) < 0.01
    same_y = abs(a[1] - b[1]) < 0.01 and abs(b[1] - c[1]) < 0.01
    return same_x or same_y


def _rows(rows: Sequence[Sequence[float]], columns: int) -> Floats:
    return np.array(rows, dtype=float).reshape(-1, columns)
