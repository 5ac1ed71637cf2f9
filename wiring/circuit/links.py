"""What hangs together whatever the switches do, and what is one conductor in the positions of the moment."""

from collections.abc import Mapping, Sequence
from itertools import pairwise
from typing import Any, NamedTuple, overload

import numpy as np
from numpy.typing import NDArray

from wiring.circuit.branch_arrays import Assembly
from wiring.circuit.linear import Ints
from wiring.circuit.sets import joined
from wiring.plan.names import PartId, WireId


class Circuit(NamedTuple):
    """Parts that wires and parts join, in any positions."""

    parts: tuple[PartId, ...]
    wires: tuple[WireId, ...]


class CircuitParts(Sequence[tuple[PartId, ...]]):
    """The parts of each circuit, each row made when it is asked for: a large plan has hundreds."""

    def __init__(self, ids: Sequence[PartId], rows: Ints, ends: Ints) -> None:
        """Take all ids, the rows of the circuits one after the other, and where each row ends."""
        self._ids, self._rows, self._ends = ids, rows, ends

    def __len__(self) -> int:
        return len(self._ends) - 1

    @overload
    def __getitem__(self, place: int) -> tuple[PartId, ...]: ...
    @overload
    def __getitem__(self, place: slice) -> tuple[tuple[PartId, ...], ...]: ...
    def __getitem__(self, place: int | slice) -> tuple[PartId, ...] | tuple[tuple[PartId, ...], ...]:
        if isinstance(place, slice):
            return tuple(self[n] for n in range(*place.indices(len(self))))
        place = range(len(self))[place]
        ids = self._ids
        return tuple(ids[n] for n in self._rows[self._ends[place] : self._ends[place + 1]].tolist())

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Sequence) and tuple(self) == tuple(other)

    def __hash__(self) -> int:
        return hash(tuple(self))

    def __repr__(self) -> str:
        return repr(tuple(self))


class Circuits(NamedTuple):
    """The circuits of a plan, in the order of their first wire."""

    parts: CircuitParts
    of_wire: Ints
    part_rows: Ints  # of the part table, circuit after circuit
    part_ends: Ints  # where each circuit's end, from nought

    def circuit(self, assembly: Assembly, place: int) -> Circuit:
        """Return one of them."""
        wires = list(assembly.wires)
        mine = np.flatnonzero(self.of_wire == place).tolist()
        return Circuit(self.parts[place], tuple(wires[n] for n in mine))


def hanging(assembly: Assembly) -> Ints:
    """Return for each node the number of what hangs together through branches, as the switches stand."""
    a, b, count = assembly.a, assembly.b, assembly.node_count
    return assembly.kept.of(hanging_question(assembly), lambda: joined(np.stack((a, b), axis=1), count))


def hanging_question(assembly: Assembly) -> tuple[str, Ints, Ints]:
    """Return by what that is known."""
    return "hanging", assembly.a, assembly.b


def circuits(assembly: Assembly) -> Circuits:
    """Return the circuits of a plan; a part without wires is in none."""
    return assembly.kept.of(("circuits", assembly.a, assembly.b, assembly.table), lambda: _circuits(assembly))


def _circuits(assembly: Assembly) -> Circuits:
    table, count = assembly.table, len(assembly.wires)
    label = hanging(assembly)
    links = label[assembly.node_of[table.links]]
    open_now = links[links[:, 0] != links[:, 1]]
    if len(open_now):
        label = joined(open_now, int(label.max()) + 1)[label]
    of_wire = label[assembly.a[:count]]
    first = np.full(int(label.max(initial=0)) + 1, -1, dtype=np.intp)
    first[of_wire[::-1]] = np.arange(count)[::-1]
    names = np.flatnonzero(first >= 0)
    number = np.full(len(first), -1, dtype=np.intp)
    number[names[np.argsort(first[names])]] = np.arange(len(names))
    part = np.repeat(np.arange(len(table.ids)), table.terminals)
    circuit = number[label[assembly.node_of[: len(part)]]]
    key = (circuit * len(table.ids) + part)[circuit >= 0]
    key = np.sort(key[_new(key)])
    key = key[_new(key)]
    rows = key % max(len(table.ids), 1)
    ends = np.searchsorted(key // max(len(table.ids), 1), np.arange(len(names) + 1))
    return Circuits(CircuitParts(table.ids, rows, ends), number[of_wire], rows, ends)


def _new(values: Ints) -> NDArray[np.bool_]:
    """Return which values are not the same as the one before."""
    new = np.ones(len(values), dtype=np.bool_)
    np.not_equal(values[1:], values[:-1], out=new[1:])
    return new


def conductors(assembly: Assembly) -> Ints:
    """Return for each node the number of its conductor: wires, closed contacts and whole fuses join."""
    a, b, joining = assembly.a, assembly.b, assembly.conducting
    return assembly.kept.of(
        conductors_question(assembly),
        lambda: joined(np.stack((a[joining], b[joining]), axis=1), assembly.node_count),
    )


def conductors_question(assembly: Assembly) -> tuple[Any, ...]:
    """Return by what that is known."""
    return "conductors", assembly.a, assembly.b, assembly.conducting


def short_path(assembly: Assembly, start: int, end: int, through: Mapping[int, float]) -> list[int]:
    """Return the branches of the least resistance from node to node; empty where there is no way.

    Only conductors are walked, and the branches in `through` at the ohms given there.
    """
    import networkx as nx

    if start == end:
        return []
    graph = nx.MultiGraph()
    near = hanging(assembly)
    walked = np.union1d(np.flatnonzero(assembly.conducting), np.fromiter(through, dtype=np.intp))
    for branch in walked[near[assembly.a[walked]] == near[start]].tolist():
        ohms = through.get(branch, float(assembly.values[branch, 0]))
        graph.add_edge(int(assembly.a[branch]), int(assembly.b[branch]), key=branch, ohms=ohms)
    try:
        nodes = nx.dijkstra_path(graph, start, end, weight="ohms")
    except (nx.NodeNotFound, nx.NetworkXNoPath):
        return []
    return [min(graph[u][v], key=lambda key: graph[u][v][key]["ohms"]) for u, v in pairwise(nodes)]
