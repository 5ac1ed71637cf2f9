"""What lies behind diodes: parts of a circuit that current enters and leaves through diodes alone.

Current that comes in through a diode and leaves through another passes a load on its way, unless a conductor
joins where one lets in and another lets out. A part with one smoothing capacitor and no source can only be
charged through its diodes, to no more than lies between the nodes beyond them, and gives nothing back there.
"""

from collections.abc import Iterable
from typing import NamedTuple

from wiring.plan.names import PartId
from wiring.studies.positions.pieces import CONDUCTOR, DIODE, LOAD, SOURCE, STORE, Piece, Pieces


class Behind(NamedTuple):
    """One such part."""

    loads: tuple[tuple[PartId, Piece], ...]
    stores: int
    sources: int
    passes: bool  # a conductor joins where one diode lets in and another lets out


class Rectified(NamedTuple):
    """A family taken apart at its diodes."""

    parts: tuple[Behind, ...]
    of_node: dict[int, int]

    @property
    def sound(self) -> bool:
        """Whether each smoothing capacitor is charged by its own diodes alone."""
        return all(part.stores == 0 or (part.stores == 1 and not part.sources) for part in self.parts)

    def behind(self, diodes: Iterable[Piece], nodes: set[int]) -> tuple[Behind, ...] | None:
        """Return what lies beyond diodes that leave some nodes; None if current might pass it by."""
        places = {self.of_node[p.b if p.a in nodes else p.a] for p in diodes}
        found = tuple(self.parts[place] for place in sorted(places))
        return None if any(part.passes or part.sources for part in found) else found


def rectified(pieces: Pieces) -> Rectified:
    """Return a family taken apart at its diodes, all that any position joins taken as joined."""
    import networkx as nx

    every = pieces.every()
    whole, wired = nx.Graph(), nx.Graph()
    for _, piece in every:
        whole.add_nodes_from((piece.a, piece.b))
        wired.add_nodes_from((piece.a, piece.b))
        if piece.sort != DIODE:
            whole.add_edge(piece.a, piece.b)
        if piece.sort == CONDUCTOR:
            wired.add_edge(piece.a, piece.b)
    net = {n: place for place, nodes in enumerate(nx.connected_components(wired)) for n in nodes}
    lets_in = {net[p.b] for _, p in every if p.sort == DIODE}
    lets_out = {net[p.a] for _, p in every if p.sort == DIODE}
    both = lets_in & lets_out
    components = list(nx.connected_components(whole))
    of_node = {n: place for place, nodes in enumerate(components) for n in nodes}
    inside: list[list[tuple[PartId, Piece]]] = [[] for _ in components]
    for owner, piece in every:
        if piece.sort not in (CONDUCTOR, DIODE):
            inside[of_node[piece.a]].append((owner, piece))
    return Rectified(
        tuple(
            Behind(
                tuple((owner, p) for owner, p in some if p.sort == LOAD),
                sum(p.sort == STORE for _, p in some),
                sum(p.sort == SOURCE for _, p in some),
                any(net[n] in both for n in nodes),
            )
            for nodes, some in zip(components, inside, strict=True)
        ),
        of_node,
    )
