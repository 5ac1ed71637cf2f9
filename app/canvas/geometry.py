"""Where everything of a plan lies, as arrays that follow the plan change by change."""

import math
from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from app.canvas.overlaps import Overlaps
from app.canvas.painting.stirred import Stirred
from app.canvas.shared_ways import SharedWays
from app.canvas.table import Floats, Table
from app.canvas.wire_paths import raw_path
from app.canvas.wireway_lanes import legs_in_wireways
from wiring.catalogue.kind import Kind
from wiring.drawings.signs.extent import extent
from wiring.pictures.many_records import collector_paused
from wiring.plan.changes import Changes
from wiring.plan.names import PartId, TerminalRef, WireId
from wiring.plan.part import Part
from wiring.plan.places import Point
from wiring.plan.plan import Plan

UNKNOWN_MM = 10.0  # half the edge of the square that stands for a part whose kind the catalogue does not have


class Box(NamedTuple):
    """A rectangle in plan millimetres."""

    left: float
    top: float
    right: float
    bottom: float

    def grown(self, by_mm: float) -> "Box":
        """Return the box with that much more on every side."""
        return Box(self.left - by_mm, self.top - by_mm, self.right + by_mm, self.bottom + by_mm)


def own_box(part: Part, kind: Kind | None) -> Box:
    """Return the rectangle a part fills about its centre, unturned."""
    if kind is None:
        return Box(-UNKNOWN_MM, -UNKNOWN_MM, UNKNOWN_MM, UNKNOWN_MM)
    return Box(*extent(kind, part))


def turned_box(part: Part, own: Box) -> Box:
    """Return the upright box around a part as it lies on the plan."""
    angle = math.radians(part.turn_deg)
    return _turned(part, own, math.cos(angle), math.sin(angle))


def _turned(part: Part, own: Box, cos: float, sin: float) -> Box:
    left, right = sorted((own.left * cos, own.right * cos))
    back, front = sorted((-own.top * sin, -own.bottom * sin))
    over, under = sorted((own.left * sin, own.right * sin))
    top, bottom = sorted((own.top * cos, own.bottom * cos))
    return Box(
        part.x_mm + left + back, part.y_mm + over + top, part.x_mm + right + front, part.y_mm + under + bottom
    )


class Geometry:
    """Places of parts, terminals and wires of the plan it was last told of.

    `parts` has the columns left, top, right, bottom, x, y, cos, sin, and the own box of the part: left, top,
    right, bottom about its centre, unturned; `terminals` has x, y; `wires` the box left, top, right, bottom.
    """

    def __init__(self, plan: Plan, kinds: Mapping[str, Kind]) -> None:
        self.kinds = kinds
        self._clear()
        self._put_all(plan)

    def _clear(self) -> None:
        self.parts: Table[PartId] = Table(12)
        self.terminals: Table[TerminalRef] = Table(2)
        self.wires: Table[WireId] = Table(4)
        self.paths: dict[WireId, tuple[Point, ...]] = {}
        self._places: dict[TerminalRef, Point] = {}  # what `terminals` has, for single looks
        self._terminals_of: dict[PartId, tuple[TerminalRef, ...]] = {}
        self._wires_of: dict[PartId, set[WireId]] = defaultdict(set)
        self._ends: dict[WireId, tuple[PartId, PartId]] = {}
        self._ways, self._overlaps, self._stirred = SharedWays(), Overlaps(), Stirred()
        self._laid: dict[WireId, tuple[Point, ...]] = {}  # in their lanes, before they step aside

    def _put_all(self, plan: Plan) -> None:
        with collector_paused():
            self._put_parts(plan.parts.values())
            self._put_wires(plan, plan.wires)
        self._stirred.watches = True

    def open(self, plan: Plan) -> None:
        """Start anew with another plan."""
        self._clear()
        self._put_all(plan)

    def follow(self, new: Plan, changes: Changes) -> Box | None:
        """Bring the arrays up to a plan that differs by these changes; the answer is the box round them."""
        for wire_id in changes.wires.removed:
            self._drop_wire(wire_id)
        for part_id in changes.parts.removed:
            self._drop_part(part_id)
        touched = set(changes.wires.added | changes.wires.altered)
        moved = _news_in_order(new.parts, changes.parts.added | changes.parts.altered, self.parts)
        self._put_parts(new.parts[i] for i in moved)
        touched |= self.wires_of(moved)
        self._put_wires(new, _news_in_order(new.wires, touched, self.wires))
        return _around(self._stirred.taken())

    def wires_of(self, parts: Iterable[PartId]) -> frozenset[WireId]:
        """Return the wires that end on any of the parts."""
        return frozenset(w for p in parts for w in self._wires_of.get(p, ()))

    def raw_path(self, wire_id: WireId) -> tuple[Point, ...]:
        """Return terminal, bends and terminal of a wire before it is fanned out; empty when not known."""
        return self._ways.raw(wire_id)

    def everything(self) -> Box | None:
        """Return the box around all parts and wires; None when there is nothing."""
        return _around(np.vstack((self.parts.values[:, :4], self.wires.values)))

    def around(self, ids: Iterable[str]) -> Box | None:
        """Return the box around parts and wires; None when none of them is there."""
        return _around(self._rows(ids))

    def boxes_of(self, ids: Iterable[str]) -> list[Box]:
        """Return the boxes of parts and of wires, of those that are there."""
        return [Box(*row) for row in self._rows(ids).tolist()]

    def _rows(self, ids: Iterable[str]) -> Floats:
        names = tuple(ids)
        return np.vstack([t.rows(i for i in names if i in t)[:, :4] for t in (self.parts, self.wires)])

    def parts_in(self, box: Box) -> list[PartId]:
        """Return the parts that reach into a box."""
        return self.parts.keys_where(_reaching(self.parts.values, box))

    def wires_in(self, box: Box) -> list[WireId]:
        """Return the wires whose surrounding box reaches into a box."""
        return self.wires.keys_where(_reaching(self.wires.values, box))

    def _put_parts(self, parts: Iterable[Part]) -> None:
        rows: dict[PartId, Sequence[float]] = {}
        places: dict[TerminalRef, Point] = {}
        for part in parts:
            kind = self.kinds.get(part.kind)
            angle, own = math.radians(part.turn_deg), own_box(part, kind)
            x, y, cos, sin = part.x_mm, part.y_mm, math.cos(angle), math.sin(angle)
            self._stir(self.parts, part.id)
            rows[part.id] = (*_turned(part, own, cos, sin), x, y, cos, sin, *own)
            specs = kind.terminals if kind is not None else ()
            refs = tuple([TerminalRef(part.id, s.name) for s in specs])
            for gone in frozenset(self._terminals_of.get(part.id, ())).difference(refs):
                self._drop_terminal(gone)
            self._terminals_of[part.id] = refs
            for ref, s in zip(refs, specs, strict=True):
                places[ref] = x + s.x_mm * cos - s.y_mm * sin, y + s.x_mm * sin + s.y_mm * cos
        self.parts.put_all(rows)
        self._stir(self.parts, *rows)
        self.terminals.put_all(places)
        self._places.update(places)

    def _stir(self, table: Table[str], *ids: str) -> None:
        if self._stirred.watches:
            self._stirred.add(tuple(table.get(one)[:4]) for one in ids if one in table)

    def _drop_terminal(self, ref: TerminalRef) -> None:
        self.terminals.drop(ref)
        self._places.pop(ref, None)

    def _drop_part(self, part_id: PartId) -> None:
        self._stir(self.parts, part_id)
        self.parts.drop(part_id)
        for ref in self._terminals_of.pop(part_id, ()):
            self._drop_terminal(ref)
        self._wires_of.pop(part_id, None)

    def _drop_wire(self, wire_id: WireId) -> None:
        for part_id in self._ends.pop(wire_id, ()):
            self._wires_of.get(part_id, set()).discard(wire_id)
        neighbours = self._ways.leave(wire_id)
        self._unlay(wire_id)
        self._lay(neighbours)

    def _put_wires(self, plan: Plan, ids: Iterable[WireId]) -> None:
        to_lay: dict[WireId, None] = {}
        for wire_id in ids:
            wire = plan.wires[wire_id]
            ends = wire.start.part, wire.end.part
            if self._ends.get(wire_id) != ends:
                for part_id in self._ends.get(wire_id, ()):
                    self._wires_of[part_id].discard(wire_id)
                self._ends[wire_id] = ends
                for part_id in ends:
                    self._wires_of[part_id].add(wire_id)
            a, b = self._places.get(wire.start), self._places.get(wire.end)
            raw = (a, *wire.bends, b) if a and b else raw_path(plan, self.kinds, wire)
            legs = legs_in_wireways(plan, wire, raw) if wire.along else ()
            to_lay.update(dict.fromkeys(sorted(self._ways.put(wire_id, raw, legs))))
            to_lay[wire_id] = None
        self._lay(to_lay)

    def _lay(self, ids: Iterable[WireId]) -> None:
        touched: dict[WireId, None] = {}
        for wire_id in ids:
            path = self._ways.path(wire_id)
            if len(path) < 2:
                self._unlay(wire_id)
            elif self._overlaps.put(wire_id, path, self._ways.held(wire_id)):
                self._laid[wire_id] = path
                touched[wire_id] = None
        touched.update(dict.fromkeys(sorted(self._overlaps.settle())))
        boxes: dict[WireId, Sequence[float]] = {}
        for wire_id in touched:
            self._stir(self.wires, wire_id)
            path = self._overlaps.path(wire_id, self._laid[wire_id])
            xs, ys = [p[0] for p in path], [p[1] for p in path]
            self.paths[wire_id] = path
            boxes[wire_id] = (min(xs), min(ys), max(xs), max(ys))
        self.wires.put_all(boxes)
        self._stir(self.wires, *boxes)

    def _unlay(self, wire_id: WireId) -> None:
        self._stir(self.wires, wire_id)
        self._overlaps.drop(wire_id)
        self._laid.pop(wire_id, None)
        self.paths.pop(wire_id, None)
        self.wires.drop(wire_id)


def _news_in_order(table: Mapping[str, object], ids: Iterable[str], known: Table[str]) -> list[str]:
    """Return ids of a table, those that are not known yet in the order of the table."""
    old = sorted(i for i in ids if i in known)
    news = frozenset(ids).difference(old)
    return old + [i for i in table if i in news] if news else old


def _reaching(rows: Floats, box: Box) -> NDArray[np.bool_]:
    across = (rows[:, 0] <= box.right) & (rows[:, 2] >= box.left)
    return np.asarray(across & (rows[:, 1] <= box.bottom) & (rows[:, 3] >= box.top))


def _around(rows: Floats) -> Box | None:
    rows = rows[~np.isnan(rows[:, 0])]
    if not len(rows):
        return None
    return Box(*rows[:, :2].min(axis=0).tolist(), *rows[:, 2:4].max(axis=0).tolist())
