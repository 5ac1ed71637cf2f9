"""Branch arrays of a plan cut and joined where an edit has changed its wiring, instead of built anew.

Parts put in, taken out, thrown or exchanged and wires put in, taken out or moved are fresh rows; all other
rows are moved as they are, stretch by stretch.
"""

from collections.abc import Mapping, Sequence
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from wiring.catalogue.kind import Kind
from wiring.circuit.branch_arrays import Assembly, Refs
from wiring.circuit.branches.laws import LAW_NUMBER
from wiring.circuit.kept import Kept
from wiring.circuit.linear import Floats, Ints
from wiring.circuit.part_table import FirstTerminals, PartTable, Spans
from wiring.circuit.spliced_parts import SplicedParts, spliced_parts
from wiring.circuit.stretches import Stretches, stretches
from wiring.circuit.table_changes import TableChange
from wiring.circuit.wire_ohms import WireOhms
from wiring.plan.names import PartId, TerminalRef, WireId
from wiring.plan.part import Part
from wiring.plan.plan import Plan
from wiring.plan.positions import Positions
from wiring.plan.wire import Wire

RESISTOR, SOURCE = LAW_NUMBER["resistor"], LAW_NUMBER["source"]


class Spliced(NamedTuple):
    """New arrays, and which of their rows are old ones."""

    assembly: Assembly
    branches: Stretches
    nodes: Stretches
    touched: NDArray[np.bool_]  # per node: something that is or was joined to it has changed


class Changes(NamedTuple):
    """What an edit or a throw has changed."""

    parts: TableChange[Part]
    wires: TableChange[Wire]
    thrown: Sequence[PartId]  # parts that stand in another position now

    @property
    def size(self) -> int:
        """How many records it touches."""
        return self.parts.size + self.wires.size + len(self.thrown)


class _Wires(NamedTuple):
    rows: Stretches
    fresh: Sequence[Wire]
    ids: Mapping[WireId, int]


def spliced(
    old: Assembly, plan: Plan, kinds: Mapping[str, Kind], positions: Positions, changes: Changes
) -> Spliced | None:
    """Return the arrays of a plan by those of another; None where it takes more than this knows."""
    if old.troubles or len(old.node_of) != int(old.table.terminals.sum()):
        return None  # something is left out, or a wire ends on nothing
    wires = _wires(old, changes.wires)
    parts = spliced_parts(old, kinds, positions, changes.parts, changes.thrown, len(wires.ids))
    if parts is None:
        return None
    branches = wires.rows.before(parts.branches)
    found = _ends(old, plan, parts, wires, branches)
    if found is None:
        return None
    ends, changed = found
    values = branches.filled(old.values, 0.0)
    values[len(wires.ids) :][branches.is_fresh()[len(wires.ids) :]] = parts.made.values
    if not _measure(plan, kinds, parts, wires, ends, changes, values):
        return None
    count, made = len(wires.fresh), parts.made
    laws = branches.spliced(old.laws, np.concatenate((np.full(count, RESISTOR, dtype=np.intp), made.laws)))
    swings = np.array([role == "alternating" for role in made.roles], dtype=np.bool_) & (made.laws == SOURCE)
    wired = np.ones(count, dtype=np.bool_)
    assembly = Assembly(
        plan, parts.parts, parts.table, FirstTerminals(parts.table), Spans(parts.table), wires.ids,
        Refs(parts.parts, ()), parts.node_of, laws, ends[:, 0].copy(), ends[:, 1].copy(), values,
        branches.joined(old.roles, (*("wire",) * count, *made.roles)),
        branches.joined(old.owners, (*(wire.id for wire in wires.fresh), *made.owners)),
        np.flatnonzero(laws == SOURCE), branches.spliced(old.alternating, np.concatenate((~wired, swings))),
        branches.spliced(old.conducting, np.concatenate((wired, made.conducting))), (), Kept(),
    )  # fmt: skip
    return Spliced(assembly, branches, parts.nodes, _touched(old, parts, branches, ends[changed]))


def _wires(old: Assembly, change: TableChange[Wire]) -> _Wires:
    moved = [r for r in change.replaced if (r.was.start, r.was.end) != (r.now.start, r.now.end)]
    put_in = sorted((*change.put_in, *((r.row, r.now) for r in moved)), key=lambda one: one[0])
    fresh = [wire for _, wire in put_in]
    gone = sorted((*change.gone, *(r.row for r in moved)))
    rows = stretches(len(old.wires), gone, [at for at, _ in put_in])
    if not change.gone and not change.put_in:
        return _Wires(rows, fresh, old.wires)
    ids = rows.joined(old.owners[: rows.old], [wire.id for wire in fresh])
    return _Wires(rows, fresh, dict(zip(ids, range(len(ids)), strict=True)))


def _ends(
    old: Assembly, plan: Plan, parts: SplicedParts, wires: _Wires, branches: Stretches
) -> tuple[Ints, Ints] | None:
    """Return the nodes of all branches, in pairs, and the rows where they are others.

    None where a wire ends on nothing.
    """
    places = parts.nodes.places()
    made = parts.made
    fresh_rows = branches.is_fresh()[len(wires.ids) :]
    moved = np.stack((places[old.a], places[old.b]), axis=1)
    ends = branches.filled(moved, -1)
    begins = np.repeat(parts.table.first_terminal, parts.table.branches)[fresh_rows]
    inner = made.ends - np.repeat(parts.fresh.first_terminal, parts.fresh.branches)[:, None]
    ends[len(wires.ids) :][fresh_rows] = parts.node_of[inner + begins[:, None]]
    lost = np.flatnonzero((ends[: len(wires.ids)] < 0).any(axis=1)).tolist()
    names = list(wires.ids) if lost else []
    for row in lost:
        wire = plan.wires[names[row]]
        for column, ref in enumerate((wire.start, wire.end)):
            terminal = _terminal(parts, ref)
            if terminal < 0:
                return None
            ends[row, column] = parts.node_of[terminal]
    return ends, np.append(np.flatnonzero(branches.is_fresh()), lost).astype(np.intp)


def _terminal(parts: SplicedParts, ref: TerminalRef) -> int:
    compiled = parts.parts.get(ref.part)
    names = [t.name for t in compiled.kind.terminals] if compiled is not None else []
    if ref.terminal not in names:
        return -1
    return int(parts.table.first_terminal[parts.table.rows[ref.part]]) + names.index(ref.terminal)


def _measure(
    plan: Plan,
    kinds: Mapping[str, Kind],
    parts: SplicedParts,
    wires: _Wires,
    ends: Ints,
    changes: Changes,
    values: Floats,
) -> bool:
    """Write the ohms of the wires that are other now, or end on a part that is; False if one has none."""
    changed = {wire.id for wire in wires.fresh}
    changed.update(r.now.id for r in changes.wires.replaced)
    rows = {wires.ids[wire] for wire in changed}
    rows.update(
        wires_at(
            parts.table,
            len(parts.node_of),
            ends[: len(wires.ids)],
            [r.now.id for r in changes.parts.replaced],
        )
    )
    names = list(wires.ids) if rows else []
    reached = {row: plan.wires[names[row]] for row in rows}
    measured = WireOhms(plan, kinds, list(reached.values()))
    try:
        for row, wire in reached.items():
            values[row, 0] = measured.of(wire)
    except ValueError:
        return False
    return True


def wires_at(table: PartTable, count: int, ends: Ints, parts: Sequence[PartId]) -> list[int]:
    """Return the rows of the wires that end on some parts; `ends` are the nodes of all wires.

    `count` is one more than the highest node.
    """
    if not parts:
        return []
    begins = np.cumsum(table.nodes) - table.nodes
    near = np.zeros(count, dtype=np.bool_)
    for part in parts:
        row = table.rows[part]
        near[begins[row] : begins[row] + table.nodes[row]] = True
    found: list[int] = np.flatnonzero(near[ends].any(axis=1)).tolist()
    return found


def _touched(old: Assembly, parts: SplicedParts, branches: Stretches, changed: Ints) -> NDArray[np.bool_]:
    """Return which nodes something has come to, gone from or changed at; `changed` are those of new rows."""
    before = np.zeros(len(parts.nodes.places()), dtype=np.bool_)
    gone = branches.places() < 0
    before[old.a[gone]] = before[old.b[gone]] = True
    touched = parts.nodes.filled(before, True)
    touched[changed] = True
    return np.asarray(touched)
