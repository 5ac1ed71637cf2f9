"""Branch arrays of a plan, patched where an edit has left the wiring as it was."""

from collections.abc import Mapping, Sequence
from typing import NamedTuple

import numpy as np

from wiring.catalogue.kind import Kind
from wiring.circuit.branch_arrays import Assembly
from wiring.circuit.building import build
from wiring.circuit.carrying import carry_over
from wiring.circuit.compiled import CompiledPart, mould_of
from wiring.circuit.folding import MOST_OHMS
from wiring.circuit.splicing import Changes, spliced, wires_at
from wiring.circuit.table_changes import table_change
from wiring.circuit.wire_ohms import WireOhms
from wiring.plan.names import PartId
from wiring.plan.part import Part
from wiring.plan.plan import Plan
from wiring.plan.positions import Positions
from wiring.plan.wire import Wire

MOST_RECENT = 8
LARGE = 20_000  # branches: of plans as large as this one, fewer are kept
FEW = 2
MOST_CHANGES = 64  # of parts and wires; more are built anew
MOST_SHARE = 0.5  # of parts and wires; a plan of which less is as it was is another plan

__all__ = ["Assembly", "assemble"]


class _Recent(NamedTuple):
    kinds: Mapping[str, Kind]
    positions: Positions
    assembly: Assembly


_recent: tuple[_Recent, ...] = ()  # replaced whole, so that other threads see the old one or the new one


def assemble(plan: Plan, kinds: Mapping[str, Kind], positions: Positions) -> Assembly:
    """Return the plan's branch arrays; what cannot be calculated is left out and named in `troubles`.

    Arrays of recent plans are kept: one that differs in values only, not in what is joined to what, shares
    all that was worked out from them; one that is wired a little otherwise takes over what it can.
    """
    likeliest: tuple[Assembly, Changes] | None = None
    most = MOST_SHARE * (len(plan.parts) + len(plan.wires))
    for recent in _recent:
        if recent.kinds is not kinds:
            continue
        changes = _changes(recent, plan, positions)
        if changes is None:
            continue
        if not changes.size:
            _keep(recent, recent)
            return recent.assembly
        found = None if changes.thrown else _patched(recent.assembly, plan, kinds, positions, changes)
        if found is not None:
            _keep(recent, _Recent(kinds, recent.positions, found))
            return found
        if changes.size <= most and (likeliest is None or changes.size < likeliest[1].size):
            likeliest = recent.assembly, changes
    made = None
    if likeliest is not None:
        new = spliced(likeliest[0], plan, kinds, positions, likeliest[1])
        if new is not None:
            carry_over(likeliest[0], new)
            made = new.assembly
    made = made or build(plan, kinds, positions)
    _keep(None, _Recent(kinds, dict(positions), made))
    return made


def _keep(old: _Recent | None, new: _Recent) -> None:
    global _recent
    most = FEW if len(new.assembly.laws) > LARGE else MOST_RECENT
    _recent = (new, *(r for r in _recent if r is not old))[:most]


def _changes(recent: _Recent, plan: Plan, positions: Positions) -> Changes | None:
    """Return what a plan in some positions has otherwise than a recent one; None where it is too much."""
    was = recent.assembly.plan
    if was.habits is not plan.habits or was.wireways is not plan.wireways:
        return None
    if was.parts.keys().isdisjoint(plan.parts) and was.parts and plan.parts:
        return None
    if abs(len(was.parts) - len(plan.parts)) + abs(len(was.wires) - len(plan.wires)) > MOST_CHANGES:
        return None
    thrown: list[PartId] = []
    if recent.positions is not positions and recent.positions != positions:
        both = recent.positions.items() ^ positions.items()
        thrown = [part for part in dict.fromkeys(part for part, _ in both) if part in plan.parts]
        if len(thrown) > MOST_CHANGES:
            return None
    parts = table_change(was.parts, plan.parts, MOST_CHANGES)
    wires = table_change(was.wires, plan.wires, MOST_CHANGES) if parts is not None else None
    return None if parts is None or wires is None else Changes(parts, wires, thrown)


def _patched(
    old: Assembly, plan: Plan, kinds: Mapping[str, Kind], positions: Positions, changes: Changes
) -> Assembly | None:
    """Return the arrays of a plan by those of a like one; None where it is joined otherwise."""
    moulds: dict[PartId, CompiledPart] = {}
    parts, wires = changes.parts, changes.wires
    if parts.gone or parts.put_in or wires.gone or wires.put_in:
        return None
    for _, one, other in parts.replaced:
        compiled = _alike(old, one, other, kinds, positions)
        if compiled is None:
            return None
        moulds[other.id] = compiled
    for _, wire, now in wires.replaced:
        if (wire.id, wire.start, wire.end, wire.label) != (now.id, now.start, now.end, now.label):
            return None
        if now.id not in old.wires:
            return None
    values = old.values.copy()
    for part, compiled in moulds.items():
        span = old.spans[part]
        if span:
            values[span.start : span.stop] = compiled.rows
    reached = _wires_to_measure(old, plan, list(moulds), [now for _, _, now in wires.replaced])
    measured = WireOhms(plan, kinds, reached)
    try:
        for now in reached:
            values[old.wires[now.id], 0] = measured.of(now)
    except ValueError:
        return None
    return old._replace(plan=plan, parts={**old.parts, **moulds} if moulds else old.parts, values=values)


def _alike(
    old: Assembly, one: Part, other: Part, kinds: Mapping[str, Kind], positions: Positions
) -> CompiledPart | None:
    """Return a changed part if it is joined as it was."""
    if one.id != other.id or one.designation != other.designation or one.id not in old.parts:
        return None
    kind = kinds.get(other.kind)
    if kind is None:
        return None
    mould = mould_of(other, kind, positions.get(other.id, ""), old.plan.habits.ambient_c)
    was, now = old.parts[one.id], CompiledPart(other, mould)
    same = mould.joins_like(was.mould) and _stiff(was) == _stiff(now)
    return now if same else None


def _stiff(compiled: CompiledPart) -> list[bool]:
    """Return for each branch whether it is so high a resistance that it is never folded."""
    return [row[0] >= MOST_OHMS for row in compiled.rows]


def _wires_to_measure(
    old: Assembly, plan: Plan, moved: Sequence[PartId], changed: Sequence[Wire]
) -> list[Wire]:
    """Return the wires whose length or size may be another: changed themselves, or on a changed part."""
    found = {wire.id: wire for wire in changed}
    count = len(old.wires)
    ends = np.stack((old.a[:count], old.b[:count]), axis=1)
    if old.node_count > int(old.table.nodes.sum()):  # some wires end on nothing, but on a part perhaps
        near = frozenset(moved)
        found |= {w.id: w for w in plan.wires.values() if w.start.part in near or w.end.part in near}
        return [wire for wire in found.values() if wire.id in old.wires]
    for row in wires_at(old.table, old.node_count, ends, moved):
        found[old.owners[row]] = plan.wires[old.owners[row]]
    return list(found.values())
