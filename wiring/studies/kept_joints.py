"""Joints kept from one state of a plan to the next: an edit changes the ways on from a few terminals only."""

from collections.abc import Mapping
from typing import NamedTuple

from wiring.catalogue.kind import Kind
from wiring.circuit.table_changes import TableChange, table_change
from wiring.plan.names import PartId, TerminalRef
from wiring.plan.part import Part
from wiring.plan.plan import Plan
from wiring.plan.positions import Positions
from wiring.plan.wire import Wire
from wiring.studies.joints import Edge, Joints, Link, inside, joints_of

MOST_RECENT = 4
MOST_CHANGES = 64  # of parts, wires and throws; more are looked at anew


class _Recent(NamedTuple):
    plan: Plan
    kinds: Mapping[str, Kind]
    positions: Positions
    joints: Joints


class _Through(NamedTuple):
    """Parts and wires as they were, and as they are."""

    parts: list[tuple[Part | None, Part | None]]
    wires: list[tuple[Wire | None, Wire | None]]


_recent: tuple[_Recent, ...] = ()  # replaced whole, so that other threads see the old one or the new one


def kept_joints(plan: Plan, kinds: Mapping[str, Kind], positions: Positions) -> Joints:
    """Return the joints of a plan with its switches in those positions, by those of plans asked about lately.

    They are the very same object where nothing is wired or stands otherwise.
    """
    global _recent
    for recent in _recent:
        if recent.plan is plan and recent.kinds is kinds and recent.positions == positions:
            return recent.joints
    joints: Joints | None = None
    likely = [(r, found) for r in _recent if (found := _changes(r, plan, kinds, positions)) is not None]
    if likely:
        recent, changes = min(likely, key=lambda each: len(each[1].parts) + len(each[1].wires))
        joints = recent.joints
        if changes.parts or changes.wires:
            joints = joints.with_edges(_edges(recent, kinds, positions, changes))
    if joints is None:
        joints = joints_of(plan, kinds, positions)
    others = (r for r in _recent if r.joints is not joints)
    _recent = (_Recent(plan, kinds, dict(positions), joints), *others)[:MOST_RECENT]
    return joints


def _changes(recent: _Recent, plan: Plan, kinds: Mapping[str, Kind], positions: Positions) -> _Through | None:
    if recent.kinds is not kinds:
        return None
    parts = table_change(recent.plan.parts, plan.parts, MOST_CHANGES)
    wires = table_change(recent.plan.wires, plan.wires, MOST_CHANGES) if parts is not None else None
    if parts is None or wires is None:
        return None
    thrown = {part for part, _ in recent.positions.items() ^ positions.items()}
    if len(thrown) > MOST_CHANGES:
        return None
    return _Through(_parts(recent, plan, parts, thrown), _wires(recent, wires))


def _parts(
    recent: _Recent, plan: Plan, change: TableChange[Part], thrown: set[PartId]
) -> list[tuple[Part | None, Part | None]]:
    was = list(recent.plan.parts.values()) if change.gone else []
    found: list[tuple[Part | None, Part | None]] = [(was[row], None) for row in change.gone]
    found += [(None, part) for _, part in change.put_in]
    found += [
        (p.was, p.now)
        for p in change.replaced
        if (p.was.kind, p.was.position) != (p.now.kind, p.now.position) or p.now.id in thrown
    ]
    done = {part.id for pair in found for part in pair if part is not None}
    for name in thrown - done:
        if name in plan.parts:
            found.append((recent.plan.parts[name], plan.parts[name]))
    return found


def _wires(recent: _Recent, change: TableChange[Wire]) -> list[tuple[Wire | None, Wire | None]]:
    was = list(recent.plan.wires.values()) if change.gone else []
    found: list[tuple[Wire | None, Wire | None]] = [(was[row], None) for row in change.gone]
    found += [(None, wire) for _, wire in change.put_in]
    found += [(w.was, w.now) for w in change.replaced if (w.was.start, w.was.end) != (w.now.start, w.now.end)]
    return found


def _edges(
    recent: _Recent, kinds: Mapping[str, Kind], positions: Positions, changes: _Through
) -> dict[TerminalRef, tuple[Edge, ...]]:
    """Return the ways on from the terminals where they are other now; wires first, as they are built."""
    old = recent.joints.edges
    edges: dict[TerminalRef, list[Edge]] = {}

    def at(ref: TerminalRef) -> list[Edge]:
        if ref not in edges:
            edges[ref] = list(old.get(ref, ()))
        return edges[ref]

    for wire, now in changes.wires:
        for one, other in _ends(wire):
            at(one).remove(Edge(other, Link.WIRE, wire.id if wire else ""))
        for one, other in _ends(now):
            at(one).append(Edge(other, Link.WIRE, now.id if now else ""))
    for part, stands in changes.parts:
        for one, other, link in _inside(part, kinds, recent.positions):
            at(one).remove(Edge(other, link, one.part))
        for one, other, link in _inside(stands, kinds, positions):
            at(one).append(Edge(other, link, one.part))
    return {ref: tuple(found) for ref, found in edges.items()}


def _ends(wire: Wire | None) -> tuple[tuple[TerminalRef, TerminalRef], ...]:
    return () if wire is None else ((wire.start, wire.end), (wire.end, wire.start))


def _inside(
    part: Part | None, kinds: Mapping[str, Kind], positions: Positions
) -> list[tuple[TerminalRef, TerminalRef, int]]:
    kind = kinds.get(part.kind) if part is not None else None
    if part is None or kind is None:
        return []
    found: list[tuple[TerminalRef, TerminalRef, int]] = []
    for a, b, link in inside(part, kind, positions):
        one, other = TerminalRef(part.id, a), TerminalRef(part.id, b)
        found += [(one, other, link), (other, one, link)]
    return found
