"""Whether switches can turn plus and minus round at a part: where they can, a reversed LED may be meant."""

from collections import defaultdict
from collections.abc import Callable, Iterable, Iterator, Mapping
from functools import cache, cached_property
from typing import NamedTuple

import numpy as np

from wiring.catalogue.kind import Kind
from wiring.circuit.branch_arrays import Assembly
from wiring.circuit.inner_joints import ALWAYS, InnerJoints, Joint, inner_joints
from wiring.circuit.linear import Ints
from wiring.circuit.sets import joined
from wiring.circuit.table_changes import table_change
from wiring.plan.names import PartId
from wiring.plan.plan import Plan

MOST_CHANGES = 64  # of parts and wires; with more it is asked anew
MOST_STEPS = 400  # of a search that minds which contacts move together; with more each counts by itself
_Needs = frozenset[tuple[PartId, str]]  # how parts must stand
_NOTHING: _Needs = frozenset()
_last: tuple[Plan, tuple[Kind, ...], Callable[[PartId, str, str], bool]] | None = None  # replaced whole


class _Step(NamedTuple):
    """From a set of terminals into another, through a part in a position."""

    to: int
    part: PartId
    position: str


class _Height(NamedTuple):
    """How high something can be brought: so many supplies above a set of terminals."""

    base: int
    supplies: int
    needs: _Needs

    def above(self, other: "_Height") -> bool:
        """Whether it is above the other and both can be had at once."""
        if self.base != other.base or self.supplies <= other.supplies:
            return False
        both = self.needs | other.needs
        return len({part for part, _ in both}) == len(both)


_Steps = Mapping[int, list[_Step]]


def turning(assembly: Assembly) -> Callable[[PartId, str, str], bool]:
    """Return what tells of a part whether its first terminal can be brought to more volts than its second.

    Every position of every switch and relay counts as one that can be met, all contacts of one together.
    Resistors are passed; loads only where nothing else leads to a supply.
    """
    global _last
    last = _last
    rows = _rows_by_kind(assembly)
    kinds = tuple(kind for kind, _ in rows)
    if last is not None and last[1] == kinds and _joined_alike(last[0], assembly.plan):
        return last[2]
    found = _turning(_Ways(assembly, rows))
    _last = assembly.plan, kinds, found
    return found


def _turning(ways: "_Ways") -> Callable[[PartId, str, str], bool]:
    @cache
    def can_be_forward(part: PartId, first: str, second: str) -> bool:
        high, low = ways.heights(part, first), ways.heights(part, second)
        return any(one.above(other) for one in high for other in low)

    return can_be_forward


def _joined_alike(was: Plan, now: Plan) -> bool:
    """Whether two plans have parts of the same kinds, joined the same; how switches stand does not matter."""
    parts = table_change(was.parts, now.parts, MOST_CHANGES)
    wires = table_change(was.wires, now.wires, MOST_CHANGES) if parts is not None else None
    if parts is None or wires is None or parts.gone or parts.put_in or wires.gone or wires.put_in:
        return False
    return all(each.was.kind == each.now.kind for each in parts.replaced) and all(
        (each.was.start, each.was.end) == (each.now.start, each.now.end) for each in wires.replaced
    )


def _rows_by_kind(assembly: Assembly) -> list[tuple[Kind, list[int]]]:
    """Return the kinds of a plan's parts with the rows of their parts."""
    rows: dict[int, tuple[Kind, list[int]]] = {}
    for row, (_, mould) in enumerate(assembly.parts.values()):
        rows.setdefault(id(mould.kind), (mould.kind, []))[1].append(row)
    return list(rows.values())


class _Ways:
    """What leads where: terminals joined for good are one set, with steps from set to set."""

    def __init__(self, assembly: Assembly, rows: list[tuple[Kind, list[int]]]) -> None:
        wires = len(assembly.wires)
        self._parts, self._table, self._node_of = assembly.parts, assembly.table, assembly.node_of
        self._inside = [(mine, inner_joints(kind)) for kind, mine in rows]
        firm = [np.stack((assembly.a[:wires], assembly.b[:wires]), axis=1)]
        firm += [self._ends(mine, i.firm).reshape(-1, 2) for mine, i in self._inside if i.firm]
        self._set_of: Ints = joined(np.concatenate(firm), assembly.node_count)
        sources = self._steps(lambda joints: (joints.source,) if joints.source is not None else ())
        self._level = _levels((minus, plus.to) for minus, plus in sources)

    def heights(self, part: PartId, terminal: str) -> set[_Height]:
        """Return the heights a terminal can be brought to."""
        names = [t.name for t in self._parts[part].kind.terminals]
        first = self._table.first_terminal[self._table.rows[part]]
        start = int(self._set_of[self._node_of[first + names.index(terminal)]])
        return self._reached(start, part, self._loose) or self._reached(start, part, self._with_loads)

    @cached_property
    def _loose(self) -> _Steps:
        return self._both_ways(lambda joints: joints.loose)

    @cached_property
    def _with_loads(self) -> _Steps:
        return self._both_ways(lambda joints: (*joints.loose, *joints.loads))

    def _both_ways(self, of: Callable[[InnerJoints], tuple[Joint, ...]]) -> _Steps:
        steps: dict[int, list[_Step]] = defaultdict(list)
        for here, step in self._steps(of):
            if here != step.to:
                steps[here].append(step)
                steps[step.to].append(step._replace(to=here))
        return steps

    def _steps(self, of: Callable[[InnerJoints], tuple[Joint, ...]]) -> Iterator[tuple[int, _Step]]:
        """Return all joints of that sort in the plan, from set to set."""
        for rows, inside in self._inside:
            joints = of(inside)
            if not joints:
                continue
            ends = self._set_of[self._ends(rows, joints)].tolist()
            for row, pairs in zip(rows, ends, strict=True):
                part = self._table.ids[row]
                for (one, other), joint in zip(pairs, joints, strict=True):
                    yield one, _Step(other, part, joint.position)

    def _ends(self, rows: list[int], joints: tuple[Joint, ...]) -> Ints:
        """Return the nodes of joints of parts of a kind: by part, joint and end."""
        places = np.array([joint[:2] for joint in joints], dtype=np.intp)
        return np.asarray(self._node_of[self._table.first_terminal[rows][:, None, None] + places])

    def _reached(self, start: int, itself: PartId, steps: _Steps) -> set[_Height]:
        """Return the heights a set can be brought to, not through itself, nor past what a supply holds."""
        found = self._reached_together(start, itself, steps)
        return found if found is not None else self._reached_singly(start, itself, steps)

    def _reached_together(self, start: int, itself: PartId, steps: _Steps) -> set[_Height] | None:
        """Return them with how parts must stand for each; None where there are too many ways."""
        found: set[_Height] = set()
        waiting = [(start, _NOTHING)]
        ways: dict[int, list[_Needs]] = {start: [_NOTHING]}
        for here, needs in waiting:  # grows while it is walked
            if here in self._level:
                found.add(_Height(*self._level[here], needs))
                continue
            for to, part, position in steps.get(here, ()):
                if part == itself:
                    continue
                wanted = needs if position == ALWAYS else needs | {(part, position)}
                if len(wanted) > len(needs) and any(p == part for p, _ in needs):
                    continue  # it cannot stand both ways
                known = ways.setdefault(to, [])
                if not any(enough <= wanted for enough in known):
                    known.append(wanted)
                    waiting.append((to, wanted))
            if len(waiting) > MOST_STEPS:
                return None
        return found

    def _reached_singly(self, start: int, itself: PartId, steps: _Steps) -> set[_Height]:
        """Return them as if every contact moved by itself."""
        found: set[_Height] = set()
        reached, waiting = {start}, [start]
        for here in waiting:  # grows while it is walked
            if here in self._level:
                found.add(_Height(*self._level[here], _NOTHING))
                continue
            for to, part, _ in steps.get(here, ()):
                if part != itself and to not in reached:
                    reached.add(to)
                    waiting.append(to)
        return found


def _levels(sources: Iterable[tuple[int, int]]) -> Mapping[int, tuple[int, int]]:
    """Return how high each set stands that supplies hold for good: above which, in supplies."""
    across: dict[int, list[tuple[int, int]]] = defaultdict(list)
    for low, high in sources:
        across[low].append((high, 1))
        across[high].append((low, -1))
    level: dict[int, tuple[int, int]] = {}
    for bottom in across:
        if bottom in level:
            continue
        level[bottom] = bottom, 0
        waiting = [bottom]
        for here in waiting:  # grows while it is walked
            base, height = level[here]
            for there, rise in across[here]:
                if there not in level:
                    level[there] = base, height + rise
                    waiting.append(there)
    return level
