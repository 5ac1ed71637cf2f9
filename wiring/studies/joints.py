"""Which terminals hang together, and through what: wires, contacts, fuses, resistors or loads."""

from collections import deque
from collections.abc import Iterable, Mapping, Sequence
from typing import NamedTuple

from wiring.catalogue.kind import Kind
from wiring.plan.names import PartId, TerminalRef
from wiring.plan.part import Part
from wiring.plan.plan import Plan
from wiring.plan.positions import Positions
from wiring.studies.roles import FUSES, THROUGH


class Link:
    """How two terminals hang together, as bits: plain integers, since enum flags take ten times as long."""

    WIRE = 1
    CLOSED = 2  # a contact closed as things stand
    OPEN = 4  # a contact that another lasting position would close
    MOMENTARY = 8  # a contact closed only while a button is held
    FUSE = 16
    RESISTOR = 32
    DIODE = 64
    LOAD = 128


STIFF = Link.WIRE | Link.CLOSED | Link.FUSE  # next to no resistance, as things stand
LASTING = STIFF | Link.OPEN  # whatever the switches can be left in


class Edge(NamedTuple):
    """One way on from a terminal; `via` is the id of the wire or part it goes through."""

    to: TerminalRef
    link: int
    via: str


class Reach(NamedTuple):
    """Everything reached from a terminal."""

    terminals: frozenset[TerminalRef]
    wires: frozenset[str]


class Numbered(NamedTuple):
    """Terminals numbered in their order, and the steps on from each: to where, by which wire, past a load."""

    refs: Sequence[TerminalRef]
    number: Mapping[TerminalRef, int]
    steps: Sequence[Sequence[tuple[int, str, bool]]]


class Joints:
    """The whole plan as terminals and the ways between them; sources join nothing. Never written to."""

    def __init__(self, edges: Mapping[TerminalRef, tuple[Edge, ...]]) -> None:
        """Take the ways on from each terminal."""
        self.edges = edges
        self._reached: dict[tuple[frozenset[TerminalRef], int], Reach] = {}
        self._numbered: dict[int, Numbered] = {}

    def with_edges(self, changed: Mapping[TerminalRef, tuple[Edge, ...]]) -> "Joints":
        """Return joints with other ways on from some terminals; what they do not reach is taken over."""
        edges = {**self.edges, **changed}
        for ref, found in changed.items():
            if not found:
                del edges[ref]
        made = Joints(edges)
        for (starts, through), reach in self._reached.items():
            near = changed.keys() & reach.terminals
            if all(_through(self.edges.get(r, ()), through) == _through(changed[r], through) for r in near):
                made._reached[starts, through] = reach
        if edges.keys() == self.edges.keys():
            for through, numbered in self._numbered.items():
                steps = list(numbered.steps)
                for ref in changed:
                    steps[numbered.number[ref]] = _steps(edges[ref], numbered.number, through)
                made._numbered[through] = numbered._replace(steps=steps)
        return made

    def numbered(self, through: int, start: TerminalRef) -> Numbered:
        """Return the terminals, `start` among them, and the steps through links of those kinds."""
        found = self._numbered.get(through)
        if found is None:
            refs = sorted(self.edges)
            number = {ref: place for place, ref in enumerate(refs)}
            steps = [_steps(self.edges[ref], number, through) for ref in refs]
            found = self._numbered[through] = Numbered(refs, number, steps)
        return found if start in found.number else Numbered([start], {start: 0}, [()])

    def reach(self, starts: Iterable[TerminalRef], through: int) -> Reach:
        """Return what is reached from the terminals through links of those kinds only."""
        asked = frozenset(starts), through
        found = self._reached.get(asked)
        if found is None:
            found = self._reached[asked] = self._reach(*asked)
        return found

    def _reach(self, starts: frozenset[TerminalRef], through: int) -> Reach:
        seen = set(starts)
        wires: set[str] = set()
        waiting = deque(seen)
        while waiting:
            for to, link, via in self.edges.get(waiting.popleft(), ()):
                if link & through:
                    if link == Link.WIRE:
                        wires.add(via)
                    if to not in seen:
                        seen.add(to)
                        waiting.append(to)
        return Reach(frozenset(seen), frozenset(wires))


def _through(edges: tuple[Edge, ...], through: int) -> set[tuple[TerminalRef, bool, str]]:
    return {(to, link == Link.WIRE, via) for to, link, via in edges if link & through}


def _steps(
    edges: tuple[Edge, ...], number: Mapping[TerminalRef, int], through: int
) -> list[tuple[int, str, bool]]:
    return [
        (number[to], via if link == Link.WIRE else "", link == Link.LOAD)
        for to, link, via in edges
        if link & through
    ]


def joints_of(plan: Plan, kinds: Mapping[str, Kind], positions: Positions) -> Joints:
    """Return the joints of a plan with its switches in those positions."""
    edges: dict[TerminalRef, list[Edge]] = {}

    def join(a: TerminalRef, b: TerminalRef, link: int, via: str) -> None:
        edges.setdefault(a, []).append(Edge(b, link, via))
        edges.setdefault(b, []).append(Edge(a, link, via))

    for wire in plan.wires.values():
        join(wire.start, wire.end, Link.WIRE, wire.id)
    for part in plan.parts.values():
        kind = kinds.get(part.kind)
        if kind is not None:
            for a, b, link in inside(part, kind, positions):
                join(TerminalRef(part.id, a), TerminalRef(part.id, b), link, part.id)
    return Joints({ref: tuple(found) for ref, found in edges.items()})


def inside(part: Part, kind: Kind, positions: Positions) -> Iterable[tuple[str, str, int]]:
    """Return the ways through a part: between which two terminals, and how they hang together."""
    stands = _stands(part, kind, positions.get(part.id, ""))
    if kind.behaviour in FUSES:
        if stands in ("", "whole"):
            yield "1", "2", Link.FUSE
        return
    for a, b in THROUGH.get(kind.behaviour, ()):
        yield a, b, _THROUGH_LINK.get(kind.behaviour, Link.LOAD)
    if kind.behaviour == "bus":
        first = kind.terminals[0].name
        for terminal in kind.terminals[1:]:
            yield first, terminal.name, Link.CLOSED
    if kind.behaviour == "pairs" and stands in ("", "joined"):
        names = {terminal.name for terminal in kind.terminals}
        for name in names:
            if name.endswith("a") and f"{name[:-1]}b" in names:
                yield name, f"{name[:-1]}b", Link.CLOSED
    for position in kind.positions:
        link = Link.MOMENTARY if position.momentary else Link.OPEN
        for a, b in position.closes:
            yield a, b, Link.CLOSED if position.name == stands else link


def _stands(part: Part, kind: Kind, wanted: str) -> str:
    names = [position.name for position in kind.positions]
    usual = names[0] if names else ""
    return next((name for name in (wanted, part.position, kind.in_use) if name in names), usual)


_THROUGH_LINK = {"resistor": Link.RESISTOR, "diode": Link.DIODE, "rectifier": Link.DIODE}


def ends(part_id: PartId, pair: tuple[str, str]) -> tuple[TerminalRef, TerminalRef]:
    """Return both terminals of a part."""
    return TerminalRef(part_id, pair[0]), TerminalRef(part_id, pair[1])
