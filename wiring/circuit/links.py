"""What hangs together whatever the switches do, and what is one conductor in the positions of the moment."""

from collections.abc import Mapping
from itertools import pairwise
from typing import NamedTuple

import numpy as np

from wiring.circuit.assembly import Assembly
from wiring.circuit.linear import Ints
from wiring.circuit.sets import joined
from wiring.plan.names import PartId, WireId

CONDUCTORS = frozenset({"wire", "contact", "fuse"})


class Circuit(NamedTuple):
    """Parts that wires and parts join, in any positions."""

    parts: tuple[PartId, ...]
    wires: tuple[WireId, ...]


def circuits(assembly: Assembly) -> tuple[Circuit, ...]:
    """Return the circuits of a plan, in the order of their first wire; a part without wires is in none."""
    if not assembly.wires:
        return ()
    place: list[tuple[int, int]] = []
    for part_id, compiled in assembly.parts.items():
        begin = assembly.first_terminal[part_id]
        place += [(begin + one, begin + other) for one, other in compiled.links]
    links = assembly.node_of[np.array(place, dtype=np.intp).reshape(-1, 2)]
    count = len(assembly.wires)
    ends = np.stack((assembly.a[:count], assembly.b[:count]), axis=1)
    label = joined(np.concatenate((ends, links)), assembly.node_count)
    wires: dict[int, list[WireId]] = {}
    for wire_id, circuit in zip(assembly.wires, label[ends[:, 0]].tolist(), strict=True):
        wires.setdefault(circuit, []).append(wire_id)
    parts: dict[int, dict[PartId, None]] = {circuit: {} for circuit in wires}
    of_terminal = label[assembly.node_of].tolist()
    for part_id, compiled in assembly.parts.items():
        begin = assembly.first_terminal[part_id]
        for circuit in of_terminal[begin : begin + len(compiled.refs)]:
            if circuit in parts:
                parts[circuit][part_id] = None
    return tuple(Circuit(tuple(parts[circuit]), tuple(found)) for circuit, found in wires.items())


def conductors(assembly: Assembly) -> Ints:
    """Return for each node the number of its conductor: wires, closed contacts and whole fuses join."""
    joining = np.array([role in CONDUCTORS for role in assembly.roles], dtype=np.bool_)
    pairs = np.stack((assembly.a[joining], assembly.b[joining]), axis=1)
    return joined(pairs, assembly.node_count)


def short_path(assembly: Assembly, start: int, end: int, through: Mapping[int, float]) -> list[int]:
    """Return the branches of the least resistance from node to node; empty where there is no way.

    Only conductors are walked, and the branches in `through` at the ohms given there.
    """
    import networkx as nx

    if start == end:
        return []
    graph = nx.MultiGraph()
    for branch, role in enumerate(assembly.roles):
        if role in CONDUCTORS or branch in through:
            ohms = through.get(branch, float(assembly.values[branch, 0]))
            graph.add_edge(int(assembly.a[branch]), int(assembly.b[branch]), key=branch, ohms=ohms)
    try:
        nodes = nx.dijkstra_path(graph, start, end, weight="ohms")
    except (nx.NodeNotFound, nx.NetworkXNoPath):
        return []
    return [min(graph[u][v], key=lambda key: graph[u][v][key]["ohms"]) for u, v in pairwise(nodes)]
