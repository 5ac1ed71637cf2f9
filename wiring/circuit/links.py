"""What hangs together whatever the switches do, and what is one conductor in the positions of the moment."""

from collections.abc import Mapping
from itertools import pairwise
from typing import NamedTuple

import numpy as np

from wiring.circuit.assembly import Assembly
from wiring.circuit.linear import Ints
from wiring.circuit.sets import joined
from wiring.plan.names import PartId, WireId


class Circuit(NamedTuple):
    """Parts that wires and parts join, in any positions."""

    parts: tuple[PartId, ...]
    wires: tuple[WireId, ...]


def hanging(assembly: Assembly) -> Ints:
    """Return for each node the number of what hangs together through branches, as the switches stand."""
    a, b = assembly.a, assembly.b
    return assembly.kept.of(("hanging", a, b), lambda: joined(np.stack((a, b), axis=1), assembly.node_count))


def circuits(assembly: Assembly) -> tuple[Circuit, ...]:
    """Return the circuits of a plan, in the order of their first wire; a part without wires is in none."""
    return assembly.kept.of(("circuits", assembly.a, assembly.b, assembly.table), lambda: _circuits(assembly))


def _circuits(assembly: Assembly) -> tuple[Circuit, ...]:
    table, count = assembly.table, len(assembly.wires)
    if not count:
        return ()
    label = hanging(assembly)
    links = label[assembly.node_of[table.links]]
    open_now = links[links[:, 0] != links[:, 1]]
    if len(open_now):
        label = joined(open_now, int(label.max()) + 1)[label]
    of_wire = label[assembly.a[:count]]
    names, first = np.unique(of_wire, return_index=True)
    number = np.full(int(label.max()) + 1, -1, dtype=np.intp)
    number[names[np.argsort(first)]] = np.arange(len(names))
    part = np.repeat(np.arange(len(table.ids)), table.terminals)
    circuit = number[label[assembly.node_of[: len(part)]]]
    key = circuit * len(table.ids) + part
    key = key[circuit >= 0]
    key = np.unique(key[np.append(True, key[1:] != key[:-1])]) if len(key) else key
    parts = _split([table.ids[n] for n in (key % len(table.ids)).tolist()], key // len(table.ids), len(names))
    wire_ids, circuit_of = list(assembly.wires), number[of_wire]
    order = np.argsort(circuit_of * count + np.arange(count))
    wires = _split([wire_ids[n] for n in order.tolist()], circuit_of[order], len(names))
    return tuple(Circuit(*both) for both in zip(parts, wires, strict=True))


def _split(ids: list[str], numbers: Ints, count: int) -> list[tuple[str, ...]]:
    """Return ids in so many rows, by rising row numbers."""
    ends = np.searchsorted(numbers, np.arange(count + 1)).tolist()
    return [tuple(ids[begin:end]) for begin, end in pairwise(ends)]


def conductors(assembly: Assembly) -> Ints:
    """Return for each node the number of its conductor: wires, closed contacts and whole fuses join."""
    a, b, joining = assembly.a, assembly.b, assembly.conducting
    return assembly.kept.of(
        ("conductors", a, b, joining),
        lambda: joined(np.stack((a[joining], b[joining]), axis=1), assembly.node_count),
    )


def short_path(assembly: Assembly, start: int, end: int, through: Mapping[int, float]) -> list[int]:
    """Return the branches of the least resistance from node to node; empty where there is no way.

    Only conductors are walked, and the branches in `through` at the ohms given there.
    """
    import networkx as nx

    if start == end:
        return []
    graph = nx.MultiGraph()
    walked = np.union1d(np.flatnonzero(assembly.conducting), np.fromiter(through, dtype=np.intp)).tolist()
    for branch in walked:
        ohms = through.get(branch, float(assembly.values[branch, 0]))
        graph.add_edge(int(assembly.a[branch]), int(assembly.b[branch]), key=branch, ohms=ohms)
    try:
        nodes = nx.dijkstra_path(graph, start, end, weight="ohms")
    except (nx.NodeNotFound, nx.NetworkXNoPath):
        return []
    return [min(graph[u][v], key=lambda key: graph[u][v][key]["ohms"]) for u, v in pairwise(nodes)]
