"""Parts of a plan that do not feel one another, so that each is gone through over its own switches only.

Two circuits without a conductor or part between them are independent; so are two halves of one circuit that
meet only at the terminals of an ideal supply, because nothing moves its voltage. A part with contacts in two
circuits throws both, and joins them to one group.
"""

from collections.abc import Sequence
from typing import NamedTuple

from wiring.circuit.assembly import Assembly
from wiring.circuit.behaviours.feeding import LEAST_SOURCE_OHMS
from wiring.plan.names import PartId, WireId
from wiring.studies.positions.options import Option

NODE = "node"


class Group(NamedTuple):
    """Wires and parts that feel one another, and what can be thrown among them."""

    options: tuple[Option, ...]
    parts: frozenset[PartId]
    wires: frozenset[WireId]


class Family(NamedTuple):
    """Groups that share an ideal supply; most families are one group."""

    groups: tuple[Group, ...]
    supplies: frozenset[PartId]
    ideal: frozenset[PartId]  # supplies at which groups were cut apart


def families(assembly: Assembly, thrown: Sequence[Option]) -> tuple[Family, ...]:
    """Return all families of a plan that anything can be thrown in, or that a supply feeds."""
    import networkx as nx

    ideal = _ideal(assembly)
    cut = {int(n) for part in ideal for n in _nodes(assembly, part)}
    graph = nx.Graph()
    inner = _edges(assembly, ideal, {option.part for option in thrown})
    for member, nodes in inner.items():
        graph.add_node(member)
        graph.add_edges_from((member, (NODE, n)) for n in nodes if n not in cut)
    by_part = {option.part: option for option in thrown}
    groups: list[Group] = []
    whose: dict[object, int] = {}
    for members in nx.connected_components(graph):
        wires = frozenset(name for sort, name in members if sort == "wire")
        parts = frozenset(name for sort, name in members if sort not in ("wire", NODE))
        if not wires:
            continue
        group = Group(tuple(o for p, o in by_part.items() if p in parts), parts, wires)
        for member in members:
            whose[member] = len(groups)
        groups.append(group)
    together = nx.Graph()
    together.add_nodes_from(range(len(groups)))
    for part in ideal:
        nodes = {int(n) for n in _nodes(assembly, part)}
        near = [whose[m] for m, reached in inner.items() if m in whose and not nodes.isdisjoint(reached)]
        nx.add_path(together, near)
    return tuple(_family(assembly, [groups[n] for n in sorted(some)], ideal, inner, cut) for some in
                 nx.connected_components(together))  # fmt: skip


def _family(
    assembly: Assembly,
    groups: list[Group],
    ideal: frozenset[PartId],
    inner: dict[tuple[str, str], set[int]],
    cut: set[int],
) -> Family:
    reached = {n for g in groups for w in g.wires for n in inner["wire", w]} & cut
    mine = frozenset(part for part in ideal if not reached.isdisjoint(int(n) for n in _nodes(assembly, part)))
    others = frozenset(
        part for g in groups for part in g.parts if assembly.parts[part].behaviour.feeds and part not in ideal
    )
    return Family(tuple(groups), others | mine, mine)


def _edges(
    assembly: Assembly, ideal: frozenset[PartId], thrown: set[PartId]
) -> dict[tuple[str, str], set[int]]:
    """Return the nodes every wire and part joins, in whatever position; ideal supplies join none.

    A part that acts as one joins all its nodes; others, such as a plug of many ways, pair by pair.
    """
    found: dict[tuple[str, str], set[int]] = {
        ("wire", wire): {int(assembly.a[n]), int(assembly.b[n])} for wire, n in assembly.wires.items()
    }
    for part, compiled in assembly.parts.items():
        begin = assembly.first_terminal[part]
        if part in ideal:
            continue
        pairs = [{int(assembly.node_of[begin + end]) for end in pair} for pair in compiled.links]
        if part in thrown or compiled.behaviour.feeds or compiled.kind.behaviour == "relay":
            found["part", part] = set().union(*pairs)
        else:
            found |= {(f"link {number}", part): pair for number, pair in enumerate(pairs)}
    return found


def _nodes(assembly: Assembly, part: PartId) -> tuple[int, int]:
    source = assembly.spans[part][0]
    return int(assembly.a[source]), int(assembly.b[source])


def _ideal(assembly: Assembly) -> frozenset[PartId]:
    return frozenset(
        assembly.owners[s]
        for s in assembly.sources
        if assembly.values[s, 1] <= LEAST_SOURCE_OHMS and assembly.roles[s] == "source"
    )
