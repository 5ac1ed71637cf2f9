"""Branch arrays of a plan, patched where an edit has left the wiring as it was."""

from collections.abc import Mapping, Sequence
from typing import Any, NamedTuple

from wiring.catalogue.kind import Kind
from wiring.circuit.branch_arrays import Assembly
from wiring.circuit.building import build
from wiring.circuit.compiled import CompiledPart, mould_of
from wiring.circuit.folding import MOST_OHMS
from wiring.circuit.wire_ohms import WireOhms
from wiring.plan.names import PartId
from wiring.plan.part import Part
from wiring.plan.plan import Plan
from wiring.plan.positions import Positions
from wiring.plan.wire import Wire

MOST_RECENT = 8
LARGE = 20_000  # branches: of plans as large as this one is kept
MOST_CHANGES = 64  # of parts and wires; more are built anew
STRETCH = 256  # records compared at once, which is quick where they are the same objects

__all__ = ["Assembly", "assemble"]


class _Recent(NamedTuple):
    kinds: Mapping[str, Kind]
    positions: Positions
    assembly: Assembly


_recent: tuple[_Recent, ...] = ()  # replaced whole, so that other threads see the old one or the new one


def assemble(plan: Plan, kinds: Mapping[str, Kind], positions: Positions) -> Assembly:
    """Return the plan's branch arrays; what cannot be calculated is left out and named in `troubles`.

    Arrays of recent plans are kept: one that differs in values only, not in what is joined to what, shares
    all that was worked out from them.
    """
    global _recent
    for recent in _recent:
        if recent.kinds is kinds and recent.positions == positions:
            found = _patched(recent.assembly, plan, kinds, positions)
            if found is not None:
                _keep(recent, _Recent(kinds, recent.positions, found))
                return found
    made = build(plan, kinds, positions)
    _keep(None, _Recent(kinds, dict(positions), made))
    return made


def _keep(old: _Recent | None, new: _Recent) -> None:
    global _recent
    most = 1 if len(new.assembly.laws) > LARGE else MOST_RECENT
    _recent = (new, *(r for r in _recent if r is not old))[:most]


def _patched(old: Assembly, plan: Plan, kinds: Mapping[str, Kind], positions: Positions) -> Assembly | None:
    """Return the arrays of a plan by those of a like one; None where it is joined otherwise."""
    was = old.plan
    if was is plan:
        return old
    if not _comparable(was, plan):
        return None
    parts, wires = _changed(was.parts, plan.parts), _changed(was.wires, plan.wires)
    if len(parts) + len(wires) > MOST_CHANGES:
        return None
    moulds: dict[PartId, CompiledPart] = {}
    if any(now is None or was is now for was, now in (*parts, *wires)):
        return None
    for one, other in parts:
        compiled = _alike(old, one, other, kinds, positions)
        if compiled is None:
            return None
        moulds[other.id] = compiled
    for wire, now in wires:
        if (wire.id, wire.start, wire.end, wire.label) != (now.id, now.start, now.end, now.label):
            return None
        if now.id not in old.wires:
            return None
    values = old.values.copy()
    for part, compiled in moulds.items():
        span = old.spans[part]
        if span:
            values[span.start : span.stop] = compiled.rows
    reached = _wires_to_measure(old, plan, moulds, [now for _, now in wires])
    measured = WireOhms(plan, kinds, reached)
    try:
        for now in reached:
            values[old.wires[now.id], 0] = measured.of(now)
    except ValueError:
        return None
    return old._replace(plan=plan, parts={**old.parts, **moulds} if moulds else old.parts, values=values)


def _comparable(was: Plan, plan: Plan) -> bool:
    """Whether two plans have as much of everything, and the same habits and wireways."""
    if was.habits is not plan.habits or was.wireways is not plan.wireways:
        return False
    return len(was.parts) == len(plan.parts) and len(was.wires) == len(plan.wires)


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
    old: Assembly, plan: Plan, moved: Mapping[PartId, CompiledPart], changed: Sequence[Wire]
) -> list[Wire]:
    """Return the wires whose length or size may be another: changed themselves, or on a changed part."""
    found = {wire.id: wire for wire in changed}
    if moved:
        at = old.kept.of(("wires at parts", old.wires), lambda: _wires_at(old))
        for part in moved:
            for wire_id in at.get(part, ()):
                found[wire_id] = plan.wires[wire_id]
    return list(found.values())


def _wires_at(assembly: Assembly) -> dict[PartId, list[str]]:
    found: dict[PartId, list[str]] = {}
    for wire_id in assembly.wires:
        wire = assembly.plan.wires[wire_id]
        for part in {wire.start.part, wire.end.part}:
            found.setdefault(part, []).append(wire_id)
    return found


def _changed(old: Mapping[str, Any], new: Mapping[str, Any]) -> list[tuple[Any, Any]]:
    """Return old and new of what is another object now, both tables having the same length.

    Where the order is another, or a name is gone, there is None for what is now.
    """
    if old is new:
        return []
    was, now = list(old.values()), list(new.values())
    found: list[tuple[Any, Any]] = []
    for begin in range(0, len(was), STRETCH):
        here, there = was[begin : begin + STRETCH], now[begin : begin + STRETCH]
        if here != there:
            found += [
                (one, new.get(one.id)) for one, other in zip(here, there, strict=True) if one is not other
            ]
    return found
