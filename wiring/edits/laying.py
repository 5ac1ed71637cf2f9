"""A plan while many wires are laid on it at once: fresh names, ways that keep clear of each other."""

import math
from collections import Counter
from collections.abc import Collection, Iterable, Mapping, Sequence
from functools import cached_property

from wiring.catalogue.kind import Kind
from wiring.edits.copies import FreeNames
from wiring.edits.edit import EditRefused
from wiring.edits.square_way import Box, Ground, square_way
from wiring.edits.tables import frozen, known_kinds, rounded_mm, with_records
from wiring.plan.lengths import wire_path
from wiring.plan.names import TerminalRef
from wiring.plan.part import Part
from wiring.plan.places import Point, on_plan, terminal_at
from wiring.plan.plan import Plan
from wiring.plan.wire import Wire

NEAR_MM = 140.0  # what lies farther from all that is joined is no obstacle
MOST_ON_TERMINAL = 2  # common practice, no source: a third wire under a screw works loose


class Laying:
    """Collects new parts and wires; `plan` is what it started from, `done()` the plan with all of them."""

    def __init__(
        self,
        plan: Plan,
        kinds: Mapping[str, Kind] | None,
        near: Iterable[str],
        lifted: Collection[str] = (),
    ) -> None:
        """Begin on a plan; wires that are `lifted` will lie elsewhere and are in nobody's way."""
        self.plan, self.kinds = plan, known_kinds(kinds)
        self._lifted = lifted
        self.parts: list[Part] = []
        self.wires: list[Wire] = []
        self.count: Counter[TerminalRef] = Counter(
            ref for wire in plan.wires.values() for ref in (wire.start, wire.end)
        )
        self._number = plan.next_number
        self._labels = FreeNames(w.label for w in plan.wires.values())
        self._designations = FreeNames(p.designation for p in plan.parts.values())
        self._by_id = dict(plan.parts)
        self._reaches: dict[str, float] = {}  # by the key of a kind
        self._near = [plan.parts[i] for i in near]

    def at(self, ref: TerminalRef) -> Point:
        """Return where a terminal lies; EditRefused when its part has no such terminal."""
        part = self._by_id[ref.part]
        try:
            return terminal_at(part, self.kinds[part.kind], ref.terminal)
        except KeyError:
            raise EditRefused(f"-{part.designation} has no terminal {ref.terminal}.") from None

    def way(self, a: Point, b: Point) -> tuple[Point, ...]:
        """Return the bends of a clear way between two places, and keep it clear from now on."""
        bends = square_way(a, b, self._ground)
        self.lay((a, *bends, b))
        return bends

    def lay(self, path: Sequence[Point]) -> None:
        """Keep a way clear from now on."""
        self._ground.lay(path)

    def wire(self, start: TerminalRef, end: TerminalRef, colour: str) -> None:
        """Lay one wire of the plan's usual size, unless these two are joined by one already."""
        if self.count[start] and self.count[end] and self._joined(start, end):
            return
        bends = self.way(self.at(start), self.at(end))
        self.wires.append(
            Wire(
                id=f"w{self._take_number()}",
                label=self._labels.take("W"),
                start=start,
                end=end,
                size=self.plan.habits.wire_size,
                colour=colour,
                bends=tuple((rounded_mm(x), rounded_mm(y)) for x, y in bends),
            )
        )
        self.count.update((start, end))

    def _joined(self, start: TerminalRef, end: TerminalRef) -> bool:
        both = {start, end}
        return any({w.start, w.end} == both for w in (*self.wires, *self.plan.wires.values()))

    def part(self, kind: Kind, at: Point, turn_deg: float, like: Part, settings: dict[str, float]) -> Part:
        """Set down a part beside another one, in its scene."""
        made = Part(
            id=f"p{self._take_number()}",
            kind=kind.key,
            designation=self._designations.take(kind.designation),
            x_mm=rounded_mm(at[0]),
            y_mm=rounded_mm(at[1]),
            turn_deg=rounded_mm(turn_deg % 360.0),
            settings=frozen(settings),
            scene=like.scene,
            panel=like.panel,
        )
        self.parts.append(made)
        self._by_id[made.id] = made
        terminals = [terminal_at(made, kind, t.name) for t in kind.terminals]
        self._ground.stand(body_box(made, kind), terminals)
        return made

    def is_free(self, box: Box) -> bool:
        """Whether nothing stands in a rectangle."""
        left, top, right, bottom = box
        bodies, points = self._ground.bodies, self._ground.terminals
        on_body = (
            (bodies[:, 0] < right) & (bodies[:, 2] > left) & (bodies[:, 1] < bottom) & (bodies[:, 3] > top)
        )
        on_point = (
            (points[:, 0] < right) & (points[:, 0] > left) & (points[:, 1] < bottom) & (points[:, 1] > top)
        )
        return not (on_body.any() or on_point.any())

    def is_clear(self, box: Box) -> bool:
        """Whether no square stretch of a wire runs through a rectangle."""
        return not self._ground.has_wire_in(box)

    def done(self) -> Plan:
        """Return the plan with all that was laid; EditRefused when a record is not sound."""
        return with_records(self.plan, self.parts, self.wires, self.kinds, self._number)

    def _take_number(self) -> int:
        self._number += 1
        return self._number - 1

    @cached_property
    def _ground(self) -> Ground:
        """Obstacles around the parts it is near, wires too; not looked for before a way is asked."""
        xs, ys = [p.x_mm for p in self._near] or [0.0], [p.y_mm for p in self._near] or [0.0]
        box = min(xs) - NEAR_MM, min(ys) - NEAR_MM, max(xs) + NEAR_MM, max(ys) + NEAR_MM
        standing = [
            p
            for p in self.plan.parts.values()
            if p.kind in self.kinds and box[0] <= p.x_mm <= box[2] and box[1] <= p.y_mm <= box[3]
        ]
        ground = Ground(
            [body_box(p, self.kinds[p.kind]) for p in standing],
            [
                terminal_at(p, self.kinds[p.kind], t.name)
                for p in standing
                for t in self.kinds[p.kind].terminals
            ],
        )
        for wire in self.plan.wires.values():
            if wire.id not in self._lifted and self._comes_near(wire, box):
                ground.lay(wire_path(self.plan, self.kinds, wire))
        return ground

    def _comes_near(self, wire: Wire, box: Box) -> bool:
        """Whether a wire may lie in a rectangle, by its bends and by where its parts stand."""
        xs, ys, reach = [x for x, _ in wire.bends], [y for _, y in wire.bends], 0.0
        for ref in (wire.start, wire.end):
            part = self.plan.parts.get(ref.part)
            kind = self.kinds.get(part.kind) if part is not None else None
            if part is None or kind is None:
                continue
            xs.append(part.x_mm)
            ys.append(part.y_mm)
            reach = max(reach, self._reach_mm(kind))
        return bool(xs) and (
            min(xs) - reach <= box[2]
            and max(xs) + reach >= box[0]
            and min(ys) - reach <= box[3]
            and max(ys) + reach >= box[1]
        )

    def _reach_mm(self, kind: Kind) -> float:
        """Return how far the outermost terminal of a kind lies from its middle."""
        if kind.key not in self._reaches:
            self._reaches[kind.key] = max((math.hypot(t.x_mm, t.y_mm) for t in kind.terminals), default=0.0)
        return self._reaches[kind.key]


def body_box(part: Part, kind: Kind) -> Box:
    """Return the upright rectangle round a part's body, without its terminals."""
    half_w, half_h = kind.width_mm / 2, kind.height_mm / 2
    corners = [on_plan(part, x, y) for x in (-half_w, half_w) for y in (-half_h, half_h)]
    xs, ys = [c[0] for c in corners], [c[1] for c in corners]
    return min(xs), min(ys), max(xs), max(ys)
