"""Terminals as numbers and the ways on from each as arrays: the joints of a plan, or those of some kinds."""

from bisect import bisect_left
from collections.abc import Mapping, Sequence
from functools import cached_property
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from wiring.circuit.linear import Ints
from wiring.circuit.sets import joined_without_scipy
from wiring.plan.names import TerminalRef, WireId

NO_WIRE = -1
Edge = tuple[TerminalRef, int, str]  # to where, how, and through which wire or part


class JointTable(NamedTuple):
    """One row for each way on, terminal after terminal in their order; each way is in it both ways round."""

    refs: Sequence[TerminalRef]  # in their order
    number: Mapping[TerminalRef, int]
    wire_names: Sequence[str]
    first: Ints  # of each terminal the first row, and the end
    tail: Ints
    head: Ints
    link: Ints
    wire: Ints  # a place among the names; NO_WIRE where it is none


class Net:
    """The ways on through links of some kinds. Never written to: the same object means the same ways."""

    def __init__(self, table: JointTable, through: int, load: int) -> None:
        """Take the rows of those kinds; `load` is the kind that counts as a load passed."""
        rows = np.flatnonzero(table.link & through)
        self.refs, self.number, self.wire_names = table.refs, table.number, table.wire_names
        self.tail, self.head, self.wire = table.tail[rows], table.head[rows], table.wire[rows]
        self.load = (table.link[rows] == load).astype(np.intp)

    @cached_property
    def first(self) -> Ints:
        """Of each terminal the first row, and the end."""
        return np.searchsorted(self.tail, np.arange(len(self.refs) + 1))

    @cached_property
    def lists(self) -> tuple[list[int], list[int]]:
        """Heads and firsts as plain lists, which are quicker to walk along."""
        return self.head.tolist(), self.first.tolist()

    @cached_property
    def group(self) -> Ints:
        """Of each terminal the number of what hangs together."""
        once = self.tail < self.head  # all rows are there both ways
        return joined_without_scipy(np.stack((self.tail[once], self.head[once]), axis=1), len(self.refs))

    @cached_property
    def _groups(self) -> list[int]:
        return [*self.group.tolist(), -1]

    @cached_property
    def _wires(self) -> dict[int, frozenset[WireId]]:
        return {}

    def group_of(self, ref: TerminalRef) -> int:
        """Return the number of what a terminal hangs together with; -1 where nothing is joined to it."""
        return self._groups[self.number.get(ref, -1)]

    def wires_of(self, group: int) -> frozenset[WireId]:
        """Return the wires of what hangs together by that number; none for -1."""
        known = self._wires.get(group)
        if known is None:
            mine = self.wire[self.group[self.tail] == group]
            known = frozenset(self.wire_names[wire] for wire in mine[mine != NO_WIRE].tolist())
            self._wires[group] = known
        return known

    def joins(self, one: TerminalRef, other: TerminalRef) -> bool:
        """Whether two terminals hang together."""
        return one == other or ((found := self.group_of(one)) >= 0 and found == self.group_of(other))

    def places(self, refs: Sequence[TerminalRef]) -> Ints:
        """Return the numbers of terminals; -1 for one that nothing is joined to."""
        return np.fromiter((self.number.get(ref, -1) for ref in refs), dtype=np.intp, count=len(refs))


def joint_table(edges: Mapping[TerminalRef, Sequence[Edge]], wire_link: int) -> JointTable:
    """Return the table of all ways on; `wire_link` is the kind of link that is a wire."""
    refs = sorted(edges)
    number = {ref: place for place, ref in enumerate(refs)}
    names = sorted({via for found in edges.values() for _, link, via in found if link == wire_link})
    wire_number = {name: place for place, name in enumerate(names)}
    rows = [_rows(edges[ref], number, wire_number, wire_link) for ref in refs]
    counts = [len(found) for found in rows]
    columns = np.array([row for found in rows for row in found], dtype=np.intp).reshape(-1, 3)
    first = np.append(0, np.cumsum(counts, dtype=np.intp))
    tail = np.repeat(np.arange(len(refs)), counts)
    return JointTable(refs, number, names, first, tail, columns[:, 0], columns[:, 1], columns[:, 2])


def patched(
    table: JointTable, changed: Mapping[TerminalRef, Sequence[Edge]], wire_link: int
) -> JointTable | None:
    """Return the table with other ways on from some terminals; None where there is one more, or a wire."""
    wire_number: dict[str, int] = {}
    number = table.number
    for found in changed.values():
        for to, kind, via in found:
            if to not in number:
                return None
            if kind == wire_link:
                place = bisect_left(table.wire_names, via)
                if place >= len(table.wire_names) or table.wire_names[place] != via:
                    return None
                wire_number[via] = place
    places = sorted((number[ref], ref) for ref in changed if ref in number)
    if len(places) != len(changed):
        return None
    counts = np.diff(table.first)
    pieces: list[tuple[NDArray[np.intp], ...]] = []
    old, at = (table.head, table.link, table.wire), 0
    for place, ref in places:
        begin, end = table.first[place : place + 2].tolist()
        rows = np.array(_rows(changed[ref], number, wire_number, wire_link), dtype=np.intp).reshape(-1, 3)
        pieces += [tuple(column[at:begin] for column in old), tuple(rows.T)]
        counts[place], at = len(rows), end
    pieces.append(tuple(column[at:] for column in old))
    head, link, wire = (np.concatenate(column) for column in zip(*pieces, strict=True))
    first = np.append(0, np.cumsum(counts))
    tail = np.repeat(np.arange(len(table.refs)), counts)
    return JointTable(table.refs, number, table.wire_names, first, tail, head, link, wire)


def _rows(
    edges: Sequence[Edge], number: Mapping[TerminalRef, int], wires: Mapping[str, int], wire_link: int
) -> list[tuple[int, int, int]]:
    """Return the rows of a terminal in an order of their own, whatever was drawn first."""
    return sorted((number[to], link, wires[via] if link == wire_link else NO_WIRE) for to, link, via in edges)
