"""Which terminals hang together, and through what: wires, contacts, fuses, resistors or loads."""

from collections import deque
from collections.abc import Iterable, Mapping
from typing import NamedTuple

from wiring.catalogue.kind import Kind
from wiring.plan.names import PartId, TerminalRef
from wiring.plan.part import Part
from wiring.plan.plan import Plan
from wiring.plan.positions import Positions
from wiring.studies.nets import JointTable, Net, joint_table, patched
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


class Joints:
    """The whole plan as terminals and the ways between them; sources join nothing. Never written to."""

    def __init__(self, edges: Mapping[TerminalRef, tuple[Edge, ...]]) -> None:
        """Take the ways on from each terminal."""
        self.edges = edges
        self._reached: dict[tuple[frozenset[TerminalRef], int], Reach] = {}
        self._table: JointTable | None = None
        self._nets: dict[int, Net] = {}

    def with_edges(self, changed: Mapping[TerminalRef, tuple[Edge, ...]]) -> "Joints":
        """Return joints with other ways on from some terminals; what they do not reach is taken over."""
        edges = {**self.edges, **changed}
        for ref, found in changed.items():
            if not found:
                del edges[ref]
        made = Joints(edges)
        for (starts, through), reach in tuple(self._reached.items()):  # another thread may add to them
            near = changed.keys() & reach.terminals
            if all(_through(self.edges.get(r, ()), through) == _through(changed[r], through) for r in near):
                made._reached[starts, through] = reach
        if self._table is not None:
            made._table = patched(self._table, changed, Link.WIRE)
        if made._table is not None:
            for through, net in tuple(self._nets.items()):
                if all(
                    _through(self.edges.get(ref, ()), through) == _through(found, through)
                    for ref, found in changed.items()
                ):
                    made._nets[through] = net
        return made

    def net(self, through: int, start: TerminalRef | None = None) -> Net:
        """Return the ways on through links of those kinds as arrays, `start` among the terminals."""
        found = self._nets.get(through)
        if found is None:
            if self._table is None:
                self._table = joint_table(self.edges, Link.WIRE)
            found = self._nets[through] = Net(self._table, through, Link.LOAD)
        if start is None or start in found.number:
            return found
        return Net(joint_table({start: ()}, Link.WIRE), through, Link.LOAD)

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


def _through(edges: tuple[Edge, ...], through: int) -> set[tuple[TerminalRef, int, str]]:
    """Return the ways on of those kinds, as much of them as `reach` and `net` tell."""
    return {(to, link & (Link.WIRE | Link.LOAD), via) for to, link, via in edges if link & through}


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
