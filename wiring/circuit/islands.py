"""Islands: what hangs together through conducting branches, with the dead ends taken off before any solving.

No current can flow in a dead end, so its branches rest: nothing across a load, its EMF across a source.
Taking dead ends off leaves a network in which every node is held, however many wires hang loose.
"""

from collections.abc import Sequence
from typing import Any, NamedTuple, overload

import numpy as np
from numpy.typing import NDArray

from wiring.circuit.branch_arrays import Assembly
from wiring.circuit.dead_ends import DeadEnds, Twigs, dead_ends, hung
from wiring.circuit.linear import Floats, Ints
from wiring.circuit.links import hanging
from wiring.circuit.network import Network, Shape


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

    fed: Sequence[Island]
    of_node: Ints
    of_branch: Ints
    references: Ints  # per island
    alternating: NDArray[np.bool_]  # per island
    dead: DeadEnds
    circling: NDArray[np.bool_]  # per branch: both ends are on one node


class _Fed(Sequence[Island]):
    """The islands one by one, each made when it is asked for: a large plan has hundreds."""

    def __init__(self, assembly: Assembly, found: Islands) -> None:
        self._assembly, self._found = assembly, found
        self._made: dict[int, Island] = {}

    def __len__(self) -> int:
        return len(self._found.references)

    @overload
    def __getitem__(self, place: int) -> Island: ...
    @overload
    def __getitem__(self, place: slice) -> list[Island]: ...
    def __getitem__(self, place: int | slice) -> Island | list[Island]:
        if isinstance(place, slice):
            return [self[n] for n in range(*place.indices(len(self)))]
        if not -len(self) <= place < len(self):
            raise IndexError(place)
        place %= len(self)
        if place not in self._made:
            self._made[place] = self._make(place)
        return self._made[place]

    def _make(self, place: int) -> Island:
        found, a, b = self._found, self._assembly.a, self._assembly.b
        mine = found.of_branch == place
        reference = int(found.references[place])
        core = np.flatnonzero(mine & ~found.dead.dead & ~found.circling)
        core_nodes = np.unique(np.concatenate((a[core], b[core])))
        last = reference if reference in core_nodes else (int(core_nodes[-1]) if len(core_nodes) else -1)
        core_nodes = np.append(core_nodes[core_nodes != last], last) if last >= 0 else core_nodes
        nodes, branches, others = found.dead.twigs
        twigs = found.of_node[nodes] == place
        hung = zip(nodes[twigs].tolist(), branches[twigs].tolist(), others[twigs].tolist(), strict=True)
        return Island(
            np.flatnonzero(mine), np.flatnonzero(found.of_node == place), reference, core, core_nodes,
            np.flatnonzero(mine & found.circling), tuple(Twig(*twig) for twig in hung),
            bool(found.alternating[place]),
        )  # fmt: skip


def find_islands(assembly: Assembly) -> Islands:
    """Return the fed islands of a plan, in the order of their first source."""
    return assembly.kept.of(islands_question(assembly), lambda: _find(assembly))


def islands_question(assembly: Assembly) -> tuple[Any, ...]:
    """Return by what they are known."""
    return "islands", assembly.a, assembly.b, assembly.sources, assembly.alternating


def dead_ends_question(assembly: Assembly) -> tuple[Any, ...]:
    """Return by what the dead ends are known."""
    return "dead ends", assembly.a, assembly.b


def _find(assembly: Assembly) -> Islands:
    a, b, count, sources = assembly.a, assembly.b, assembly.node_count, assembly.sources
    circling = a == b
    if not len(sources):
        nowhere = np.full(count, -1, dtype=np.intp)
        none = np.zeros(0, dtype=np.intp)
        unfed = np.full(len(a), -1, dtype=np.intp)
        dead = hung(Twigs(none, none, none), none, len(a))
        return Islands((), nowhere, unfed, none, np.zeros(0, dtype=np.bool_), dead, circling)
    label = hanging(assembly)
    pieces, first = np.unique(label[a[sources]], return_index=True)
    by_source = np.argsort(first)
    of_piece = np.full(int(label.max()) + 1, -1, dtype=np.intp)
    of_piece[pieces[by_source]] = np.arange(len(pieces))
    of_node = of_piece[label]
    of_branch = of_node[a]
    swinging = np.zeros(len(pieces), dtype=np.bool_)
    swinging[of_branch[np.flatnonzero(assembly.alternating)]] = True
    dead = assembly.kept.of(dead_ends_question(assembly), lambda: dead_ends(a, b, count))
    found = Islands((), of_node, of_branch, b[sources[first[by_source]]], swinging, dead, circling)
    return found._replace(fed=_Fed(assembly, found))


def swinging_only(assembly: Assembly, islands: Islands, alternating: NDArray[np.bool_]) -> Islands:
    """Return the same islands with others of them on AC."""
    found = islands._replace(alternating=alternating)
    return found._replace(fed=_Fed(assembly, found) if len(islands.fed) else ())


def core_network(assembly: Assembly, island: Island, values: Floats) -> Network:
    """Return the arrays of an island's core, its last node held at nought."""
    known = (f"core at {island.reference}", island, assembly.laws)
    return Network.shaped(
        assembly.kept.of(known, lambda: _shape(assembly, island)), values[island.core], np.zeros(1)
    )


def _shape(assembly: Assembly, island: Island) -> Shape:
    place = np.empty(assembly.node_count, dtype=np.intp)
    place[island.core_nodes] = np.arange(len(island.core_nodes))
    core = island.core
    a, b = place[assembly.a[core]], place[assembly.b[core]]
    return Shape(assembly.laws[core], a, b, max(len(island.core_nodes) - 1, 0), 1, None)
