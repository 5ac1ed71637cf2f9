"""What hangs together whatever the switches do, and what is one conductor in the positions of the moment."""

from collections.abc import Mapping
from itertools import pairwise
from typing import NamedTuple

from wiring.circuit.assembly import Assembly
from wiring.circuit.compiled import CompiledPart, compiled_part
from wiring.circuit.joints import Joints
from wiring.plan.names import PartId, TerminalRef

CONDUCTORS = frozenset({"wire", "contact", "fuse"})


class Circuit(NamedTuple):
    """Parts that wires and parts join, in any positions."""

    parts: tuple[PartId, ...]
    wires: tuple[str, ...]


def circuits(assembly: Assembly) -> tuple[Circuit, ...]:
    """Return the circuits of a plan, in the order of their first wire; a part without wires is in none."""
    joints: Joints[tuple[str, str]] = Joints()
    for wire_id in assembly.wires:
        wire = assembly.plan.wires[wire_id]
        joints.join(wire.start, wire.end)
    for part_id, compiled in assembly.parts.items():
        for one, other in _links(compiled):
            joints.join(TerminalRef(part_id, one), TerminalRef(part_id, other))
    wires: dict[tuple[str, str], list[str]] = {}
    parts: dict[tuple[str, str], dict[PartId, None]] = {}
    for wire_id in assembly.wires:
        wires.setdefault(joints.root(assembly.plan.wires[wire_id].start), []).append(wire_id)
    for part_id, compiled in assembly.parts.items():
        for terminal in compiled.kind.terminals:
            root = joints.root(TerminalRef(part_id, terminal.name))
            if root in wires:
                parts.setdefault(root, {})[part_id] = None
    return tuple(Circuit(tuple(parts.get(root, ())), tuple(found)) for root, found in wires.items())


def _links(compiled: CompiledPart) -> set[tuple[str, str]]:
    """Return the terminal pairs a part can ever join."""
    names = [p.name for p in compiled.kind.positions] or [compiled.position]
    found: set[tuple[str, str]] = set()
    for name in names:
        piece = compiled_part(compiled.part, compiled.kind, name).piece
        found.update((branch.a, branch.b) for branch in piece.branches)
        found.update(piece.ties)
    return found


def conductors(assembly: Assembly) -> Joints[int]:
    """Return the nodes joined by wires, closed contacts and whole fuses."""
    joints: Joints[int] = Joints()
    for branch, role in enumerate(assembly.roles):
        if role in CONDUCTORS:
            joints.join(int(assembly.a[branch]), int(assembly.b[branch]))
    return joints


def short_path(assembly: Assembly, start: int, end: int, through: Mapping[int, float]) -> list[int]:
    """Return the branches of the least resistance from node to node; empty where there is no way.

    Only conductors are walked, and the branches in `through` at the ohms given there.
    """
    import networkx as nx

    graph = nx.MultiGraph()
    for branch, role in enumerate(assembly.roles):
        if role in CONDUCTORS or branch in through:
            ohms = through.get(branch, float(assembly.values[branch, 0]))
            graph.add_edge(int(assembly.a[branch]), int(assembly.b[branch]), key=branch, ohms=ohms)
    if start == end:
        return []
    try:
        nodes = nx.dijkstra_path(graph, start, end, weight="ohms")
    except (nx.NodeNotFound, nx.NetworkXNoPath):
        return []
    steps = pairwise(nodes)
    return [min(graph[u][v], key=lambda key: graph[u][v][key]["ohms"]) for u, v in steps]
