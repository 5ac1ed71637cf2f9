"""Whether some allowed set of positions closes a loop of sources, conductors and diodes without any load.

Nets are what conductors that never change join. Current leaves a source at its plus (either way round on AC,
and in a source that lets some back in where that is asked) and goes through a diode one way. Conductors
alone, or with diodes, are no loop: they only resist.
"""

import math
from collections.abc import Iterator, Sequence
from itertools import product
from typing import Any, NamedTuple

from wiring.studies.positions.pieces import CONDUCTOR, DIODE, SOURCE, Pieces

MOST_SETS = 256  # of the switches that lie together between the same nets
MOST_WHOLE = 1024  # of all such lots together; more are taken to join all that any of them joins

Pairs = frozenset[tuple[Any, Any]]


class Nets(NamedTuple):
    """What conductors that never change join, and the one-way ways between them."""

    of_node: dict[int, Any]
    sources: tuple[tuple[int, Any, Any], ...]  # which one, from minus to plus; both ways on AC or if it sinks
    diodes: tuple[tuple[Any, Any], ...]

    @property
    def ends(self) -> set[Any]:
        """The nets that sources and diodes end on."""
        return {n for _, *both in self.sources for n in both} | {n for pair in self.diodes for n in pair}

    def at(self, node: int) -> object:
        """Return the net of a node; one that nothing joins is a net by itself."""
        return self.of_node.get(node, ("node", node))


def may_loop(pieces: Pieces, *, sinking: bool) -> bool:
    """Whether any allowed set might close such a loop; yes where that is not certain.

    With `sinking`, one in which a source drives another backward counts too.
    """
    nets = nets_of(pieces, sinking=sinking)
    lots = [_ways(lot, nets) for lot in _lots(pieces, nets)]
    if math.prod(map(len, lots)) > MOST_WHOLE:
        return _loops(nets, [pair for lot in lots for pairs in lot for pair in pairs])
    return any(
        _loops(nets, [pair for pairs in chosen for pair in pairs]) for chosen in product(*map(sorted_, lots))
    )


def sorted_(ways: set[Pairs]) -> list[Pairs]:
    """Return ways in an order that is the same in every run."""
    return sorted(ways, key=lambda pairs: sorted(map(repr, pairs)))


def nets_of(pieces: Pieces, *, sinking: bool) -> Nets:
    """Return the nets of a family."""
    import networkx as nx

    graph = nx.Graph((p.a, p.b) for p in pieces.wires.values())
    graph.add_edges_from((p.a, p.b) for some in pieces.fixed.values() for p in some if p.sort == CONDUCTOR)
    nets: dict[int, Any] = {n: place for place, ns in enumerate(nx.connected_components(graph)) for n in ns}
    found = Nets(nets, (), ())
    sources, diodes = [], []
    for number, (_, piece) in enumerate(pieces.every()):
        a, b = found.at(piece.a), found.at(piece.b)
        if piece.sort == SOURCE:
            both = piece.role == "alternating" or (sinking and piece.row[3] != 0.0)
            sources += [(number, b, a), (number, a, b)] if both else [(number, b, a)]
        elif piece.sort == DIODE:
            diodes.append((a, b))
    return found._replace(sources=tuple(sources), diodes=tuple(diodes))


def _lots(pieces: Pieces, nets: Nets) -> Iterator[list[list[list[tuple[Any, Any]]]]]:
    """Walk lots of switches that share a net that no source or diode ends on; their pairs by form."""
    import networkx as nx

    ends = nets.ends
    pairs = {
        part: [[(nets.at(p.a), nets.at(p.b)) for p in form if p.sort == CONDUCTOR] for form in forms.values()]
        for part, forms in pieces.forms.items()
    }
    lots = nx.Graph()
    for part, forms in pairs.items():
        lots.add_node(("part", part))
        touched = {n for form in forms for pair in form for n in pair} - ends
        lots.add_edges_from((("part", part), ("net", n)) for n in touched)
    for lot in nx.connected_components(lots):
        yield [pairs[name] for sort, name in lot if sort == "part"]


def _ways(lot: Sequence[Sequence[Sequence[tuple[Any, Any]]]], nets: Nets) -> set[Pairs]:
    """Return what a lot may join of the nets that sources and diodes end on, each way it can stand once."""
    ends = nets.ends
    if math.prod(map(len, lot)) > MOST_SETS:
        return {_joined([pair for part in lot for form in part for pair in form], ends)}
    return {_joined([pair for form in chosen for pair in form], ends) for chosen in product(*lot)}


def _joined(pairs: Sequence[tuple[Any, Any]], ends: set[Any]) -> Pairs:
    import networkx as nx

    found = set()
    for net in nx.connected_components(nx.Graph(list(pairs))):
        mine = sorted(net & ends, key=repr)
        found |= {(mine[0], other) for other in mine[1:]}
    return frozenset(found)


def _loops(nets: Nets, joined: Sequence[tuple[Any, Any]]) -> bool:
    """Whether current that leaves a source can come back to it through no load."""
    import networkx as nx

    ways = nx.DiGraph([*nets.diodes, *joined, *((b, a) for a, b in joined)])
    for number, minus, plus in nets.sources:
        if minus == plus:
            return True
        others = [(one, other) for n, one, other in nets.sources if n != number]  # not back through itself
        graph = nx.DiGraph([*ways.edges, *others])
        if plus in graph and minus in graph and nx.has_path(graph, plus, minus):
            return True
    return False
