"""Islands: what hangs together through conducting branches, with the dead ends taken off before any solving.

No current can flow in a dead end, so its branches rest: nothing across a load, its EMF across a source.
Taking dead ends off leaves a network in which every node is held, however many wires hang loose.
"""

from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from wiring.circuit.assembly import Assembly
from wiring.circuit.linear import Floats, Ints
from wiring.circuit.network import Network
from wiring.circuit.sets import joined


class Twig(NamedTuple):
    """A node that only one branch holds, and the node at that branch's other end."""

    node: int
    branch: int
    other: int


class Island(NamedTuple):
    """One fed island: its branches and nodes, and what is left of them without dead ends."""

    branches: Ints
    nodes: Ints
    reference: int  # node whose voltage is nought
    core: Ints  # branches that can carry current
    core_nodes: Ints  # their nodes, the held one last
    loops: Ints  # branches with both ends on one node
    twigs: tuple[Twig, ...]  # from the inside outwards
    alternating: bool


class Islands(NamedTuple):
    """All fed islands, and which island each node lies in (-1: nothing feeds it)."""

    fed: tuple[Island, ...]
    of_node: Ints


def find_islands(assembly: Assembly) -> Islands:
    """Return the fed islands of a plan."""
    a, b, count = assembly.a, assembly.b, assembly.node_count
    if not len(assembly.sources):
        return Islands((), np.full(count, -1, dtype=np.intp))
    label = joined(np.stack((a, b), axis=1), count)
    of_piece = np.full(int(label.max()) + 1, -1, dtype=np.intp)
    first_source: list[int] = []
    for source in assembly.sources:
        piece = label[a[source]]
        if of_piece[piece] < 0:
            of_piece[piece] = len(first_source)
            first_source.append(int(source))
    of_node = of_piece[label]
    of_branch = of_node[a]
    dead, twigs = _dead_ends(a, b, count)
    twigs_of: list[list[Twig]] = [[] for _ in first_source]
    for twig in reversed(twigs):
        island = int(of_node[twig.node])
        if island >= 0:
            twigs_of[island].append(twig)
    itself = a == b
    fed = []
    for number, source in enumerate(first_source):
        mine = of_branch == number
        core = np.flatnonzero(mine & ~dead & ~itself)
        reference = int(b[source])
        core_nodes = np.unique(np.concatenate((a[core], b[core])))
        last = reference if reference in core_nodes else (int(core_nodes[-1]) if len(core_nodes) else -1)
        core_nodes = np.append(core_nodes[core_nodes != last], last) if last >= 0 else core_nodes
        branches = np.flatnonzero(mine)
        fed.append(
            Island(
                branches, np.flatnonzero(of_node == number), reference, core, core_nodes,
                np.flatnonzero(mine & itself), tuple(twigs_of[number]),
                bool(assembly.alternating[branches].any()),
            )
        )  # fmt: skip
    return Islands(tuple(fed), of_node)


def core_network(assembly: Assembly, island: Island, values: Floats) -> Network:
    """Return the arrays of an island's core, its last node held at nought."""
    place = np.empty(assembly.node_count, dtype=np.intp)
    place[island.core_nodes] = np.arange(len(island.core_nodes))
    core = island.core
    a, b = place[assembly.a[core]], place[assembly.b[core]]
    return Network(assembly.laws[core], a, b, values[core], len(island.core_nodes) - 1, np.zeros(1))


def _dead_ends(a: Ints, b: Ints, count: int) -> tuple[NDArray[np.bool_], list[Twig]]:
    """Return which branches are dead ends, and the twigs in the order they were taken off.

    Each node keeps the exclusive-or of its branches' numbers, so the last one left can be read off.
    """
    real = np.flatnonzero(a != b)
    degree = np.bincount(a[real], minlength=count) + np.bincount(b[real], minlength=count)
    mixed = np.zeros(count, dtype=np.intp)
    np.bitwise_xor.at(mixed, a[real], real)
    np.bitwise_xor.at(mixed, b[real], real)
    dead = np.zeros(len(a), dtype=np.bool_)
    waiting: list[int] = np.flatnonzero(degree == 1).tolist()
    twigs: list[Twig] = []
    while waiting:
        node = waiting.pop()
        if degree[node] != 1:
            continue
        branch = int(mixed[node])
        other = int(b[branch] if a[branch] == node else a[branch])
        dead[branch] = True
        twigs.append(Twig(node, branch, other))
        degree[node] = 0
        degree[other] -= 1
        mixed[other] ^= branch
        if degree[other] == 1:
            waiting.append(other)
    return dead, twigs
