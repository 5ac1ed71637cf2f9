"""All parts of a plan as arrays, put together from their moulds without a loop over branches."""

from collections.abc import Iterator, Mapping, Sequence
from functools import cached_property
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from wiring.circuit.branches.laws import WIDTH
from wiring.circuit.compiled import CompiledPart, Mould
from wiring.circuit.linear import Floats, Ints
from wiring.circuit.sets import joined_without_scipy
from wiring.plan.names import PartId

CONDUCTORS = frozenset({"contact", "fuse"})
Flags = NDArray[np.bool_]


class PartTable(NamedTuple):
    """One row a part, in the plan's order; branches and terminals are counted from nought."""

    ids: tuple[PartId, ...]
    rows: Mapping[PartId, int]
    first_terminal: Ints
    terminals: Ints  # how many
    first_branch: Ints  # wires come before all parts' branches
    branches: Ints  # how many
    nodes: Ints  # how many; terminals that are tied are one
    polarised: Flags
    feeds: Flags
    relays: Flags
    left_out: Flags  # for a reason told in its mould
    links: Ints  # pairs of terminals that parts can join, in any position
    link_counts: Ints  # of each part


class PartBranches(NamedTuple):
    """The branches of all parts, in a row, and the node of each terminal."""

    laws: Ints
    ends: Ints  # pairs of terminals
    values: Floats
    roles: list[str]
    owners: list[str]
    conducting: Flags  # closed contacts and whole fuses
    node_of: Ints


class Spans(Mapping[PartId, range]):
    """The branches of each part; written out when one is asked for."""

    def __init__(self, table: PartTable) -> None:
        self._table = table

    @cached_property
    def _made(self) -> list[tuple[int, int]]:
        begin = self._table.first_branch
        return list(zip(begin.tolist(), (begin + self._table.branches).tolist(), strict=True))

    def __getitem__(self, part: PartId) -> range:
        return range(*self._made[self._table.rows[part]])

    def __iter__(self) -> Iterator[PartId]:
        return iter(self._table.rows)

    def __len__(self) -> int:
        return len(self._table.rows)


class FirstTerminals(Mapping[PartId, int]):
    """Where the terminals of each part begin."""

    def __init__(self, table: PartTable) -> None:
        self._table = table

    def __getitem__(self, part: PartId) -> int:
        return int(self._table.first_terminal[self._table.rows[part]])

    def __iter__(self) -> Iterator[PartId]:
        return iter(self._table.rows)

    def __len__(self) -> int:
        return len(self._table.rows)


def part_table(parts: Mapping[PartId, CompiledPart], wires: int) -> tuple[PartTable, PartBranches]:
    """Return the table of parts and their branches, which come after so many wires."""
    ids = tuple(parts)
    moulds: dict[int, Mould] = {}
    keys = [id(compiled.mould) for compiled in parts.values()]
    for compiled in parts.values():
        moulds.setdefault(id(compiled.mould), compiled.mould)
    known = list(moulds.values())
    number = {key: n for n, key in enumerate(moulds)}
    of = np.array([number[key] for key in keys], dtype=np.intp)
    terminals = _counts([m.kind.terminals for m in known])[of]
    first_terminal = np.cumsum(terminals) - terminals
    branches = _counts([m.laws for m in known])
    begins = np.cumsum(branches) - branches
    size = branches[of]
    first_branch = np.cumsum(size) - size
    part, inner = _rows(size)
    source = begins[of][part] + inner
    roles = [role for m in known for role in m.roles]
    role_of = source.tolist()
    conducts = np.array([role in CONDUCTORS for role in roles], dtype=np.bool_)
    nodes, node_of = _nodes(known, of)
    made = PartBranches(
        np.array([law for m in known for law in m.laws], dtype=np.intp)[source],
        _pairs([m.ends for m in known])[source] + first_terminal[part][:, None],
        np.array([row for m in known for row in m.rows], dtype=np.float64).reshape(-1, WIDTH)[source],
        [roles[n] for n in role_of],
        [ids[n] for n in part.tolist()],
        conducts[source],
        node_of,
    )
    links, link_counts = _spread([m.links for m in known], of, first_terminal)
    table = PartTable(
        ids, dict(zip(ids, range(len(ids)), strict=True)), first_terminal, terminals, first_branch + wires,
        size, nodes,
        np.array([m.behaviour.polarised for m in known], dtype=np.bool_)[of],
        np.array([m.behaviour.feeds for m in known], dtype=np.bool_)[of],
        np.array([m.kind.behaviour == "relay" for m in known], dtype=np.bool_)[of],
        np.array([bool(m.trouble) for m in known], dtype=np.bool_)[of],
        links, link_counts,
    )  # fmt: skip
    return table, made


def _nodes(known: Sequence[Mould], of: Ints) -> tuple[Ints, Ints]:
    """Return how many nodes each part has, and the node of each terminal, counted through all parts."""
    inside = [
        joined_without_scipy(np.array(m.ties, dtype=np.intp).reshape(-1, 2), len(m.kind.terminals))
        for m in known
    ]
    counts = np.array([int(label.max(initial=-1)) + 1 for label in inside], dtype=np.intp)
    nodes = counts[of]
    size = _counts(inside)
    part, inner = _rows(size[of])
    label = np.concatenate((np.zeros(0, dtype=np.intp), *inside))
    begins = np.cumsum(size) - size
    return nodes, label[begins[of][part] + inner] + (np.cumsum(nodes) - nodes)[part]


def _spread(pairs: Sequence[Sequence[tuple[int, int]]], of: Ints, first_terminal: Ints) -> tuple[Ints, Ints]:
    """Return each part's pairs of terminals, from those of its mould, and how many each part has."""
    count = _counts(pairs)
    part, inner = _rows(count[of])
    begins = np.cumsum(count) - count
    return _pairs(pairs)[begins[of][part] + inner] + first_terminal[part][:, None], count[of]


def _rows(sizes: Ints) -> tuple[Ints, Ints]:
    """Return for each of so many rows a part which part it is of, and its number within the part."""
    part = np.repeat(np.arange(len(sizes)), sizes)
    return part, np.arange(len(part)) - (np.cumsum(sizes) - sizes)[part]


def _counts(rows: Sequence[Sequence[object] | Ints]) -> Ints:
    return np.array([len(row) for row in rows], dtype=np.intp)


def _pairs(rows: Sequence[Sequence[tuple[int, int]]]) -> Ints:
    return np.array([pair for row in rows for pair in row], dtype=np.intp).reshape(-1, 2)
