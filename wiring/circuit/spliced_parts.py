"""The table of parts after an edit, spliced from the one before it."""

from collections.abc import Mapping, Sequence
from typing import NamedTuple

import numpy as np

from wiring.catalogue.kind import Kind
from wiring.circuit.branch_arrays import Assembly
from wiring.circuit.compiled import CompiledPart, mould_of
from wiring.circuit.linear import Ints
from wiring.circuit.part_table import PartBranches, PartTable, part_table
from wiring.circuit.stretches import Stretches, stretches
from wiring.circuit.table_changes import TableChange
from wiring.plan.names import PartId
from wiring.plan.part import Part
from wiring.plan.positions import Positions


class SplicedParts(NamedTuple):
    """All parts after an edit; parts that only have other branches now keep their terminals and nodes."""

    parts: Mapping[PartId, CompiledPart]
    table: PartTable
    node_of: Ints
    fresh: PartTable  # of the fresh rows only
    made: PartBranches
    branches: Stretches  # of the parts' branches
    nodes: Stretches


def spliced_parts(
    old: Assembly,
    kinds: Mapping[str, Kind],
    positions: Positions,
    change: TableChange[Part],
    thrown: Sequence[PartId],
    wires: int,
) -> SplicedParts | None:
    """Return the parts after a change, so many wires before them; None where one cannot be calculated."""
    was = old.table
    replaced = {r.row: r.now for r in change.replaced}
    gone = set(change.gone)
    for name in thrown:
        row = was.rows.get(name, -1)
        if row >= 0 and row not in replaced and row not in gone:
            replaced[row] = old.parts[name].part
    put_in = [
        *((at, part, False) for at, part in change.put_in),
        *((at, p, True) for at, p in replaced.items()),
    ]
    put_in.sort(key=lambda one: one[0])
    compiled: dict[PartId, CompiledPart] = {}
    for _, part, _ in put_in:
        kind = kinds.get(part.kind)
        mould = kind and mould_of(part, kind, positions.get(part.id, ""), old.plan.habits.ambient_c)
        if not mould or mould.trouble:
            return None
        compiled[part.id] = CompiledPart(part, mould)
    fresh, made = part_table(compiled, 0)
    rows = stretches(len(was.ids), sorted({*gone, *replaced}), [at for at, _, _ in put_in])
    stays = [there and _same_terminals(old.parts[part.id], compiled[part.id]) for _, part, there in put_in]
    keeping = {at for (at, _, _), stay in zip(put_in, stays, strict=True) if stay}
    new = np.flatnonzero(~np.array(stays, dtype=np.bool_))
    places = [put_in[n][0] for n in new.tolist()]
    ends = stretches(len(was.ids), sorted({*gone, *replaced} - keeping), places)
    ids = rows.joined(was.ids, tuple(compiled)) if gone or change.put_in else was.ids
    parts: Mapping[PartId, CompiledPart] = {**old.parts, **compiled}
    if gone or any(at < len(was.ids) for at, _ in change.put_in):  # else new ones stand behind all others
        values = rows.joined(list(old.parts.values()), list(compiled.values()))
        parts = dict(zip(ids, values, strict=True))
    table = _table(was, fresh, rows, ids, wires)
    nodes = ends.within(was.nodes, fresh.nodes[new])
    return SplicedParts(
        parts, table, _node_of(old, fresh, made, ends, new, table), fresh, made,
        rows.within(was.branches, fresh.branches), nodes,
    )  # fmt: skip


def _same_terminals(was: CompiledPart, now: CompiledPart) -> bool:
    return was.kind is now.kind and was.ties == now.ties


def _table(
    was: PartTable, fresh: PartTable, rows: Stretches, ids: tuple[PartId, ...], wires: int
) -> PartTable:
    terminals = rows.spliced(was.terminals, fresh.terminals)
    branches = rows.spliced(was.branches, fresh.branches)
    counts = rows.spliced(was.link_counts, fresh.link_counts)
    first_terminal = np.cumsum(terminals) - terminals
    links = rows.within(was.link_counts, fresh.link_counts).spliced(_inner_links(was), _inner_links(fresh))
    return PartTable(
        ids, was.rows if ids is was.ids else dict(zip(ids, range(len(ids)), strict=True)),
        first_terminal, terminals, np.cumsum(branches) - branches + wires, branches,
        rows.spliced(was.nodes, fresh.nodes), rows.spliced(was.polarised, fresh.polarised),
        rows.spliced(was.feeds, fresh.feeds), rows.spliced(was.relays, fresh.relays),
        rows.spliced(was.left_out, fresh.left_out),
        links + np.repeat(first_terminal, counts)[:, None], counts,
    )  # fmt: skip


def _inner_links(table: PartTable) -> Ints:
    """Return the links with their terminals counted from the first of their part."""
    return np.asarray(table.links - np.repeat(table.first_terminal, table.link_counts)[:, None])


def _node_of(
    old: Assembly, fresh: PartTable, made: PartBranches, ends: Stretches, new: Ints, table: PartTable
) -> Ints:
    """Return the node of each terminal; never the old array itself, by which readings know like wiring."""
    if len(ends.rows) == 1 and ends.rows[0] == (True, 0, len(old.table.ids)):
        return old.node_of.copy()
    inner = np.repeat(np.isin(np.arange(len(fresh.ids)), new), fresh.terminals)
    spliced = ends.within(old.table.terminals, fresh.terminals[new]).spliced(
        old.node_of - _shift(old.table), (made.node_of - _shift(fresh))[inner]
    )
    return np.asarray(spliced + _shift(table))


def _shift(table: PartTable) -> Ints:
    """Return for each terminal the first node of its part."""
    return np.repeat(np.cumsum(table.nodes) - table.nodes, table.terminals)
