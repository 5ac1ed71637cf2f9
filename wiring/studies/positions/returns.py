"""How far apart nodes can be where the minuses of all sources are joined: their volts then do not add up.

Between two minuses lies no more than the ohms of the conductors that join them times the most any carries, so
no two nodes are farther apart than the highest electromotive force and that.
"""

import math

from wiring.studies.positions.pieces import CONDUCTOR, SOURCE, Pieces
from wiring.studies.positions.takes import Reach


def narrowed(pieces: Pieces, reach: Reach, most_a: float) -> Reach:
    """Return a reach that is no more than that, for direct current and conductors that carry `most_a`."""
    import networkx as nx

    sources = [piece for _, piece in pieces.every() if piece.sort == SOURCE]
    if reach.swing_v > 0.0 or len(sources) < 2 or not math.isfinite(most_a):
        return reach
    graph = nx.Graph()
    fixed = [*pieces.wires.values(), *(p for some in pieces.fixed.values() for p in some)]
    for piece in fixed:
        if piece.sort == CONDUCTOR:
            known = graph.get_edge_data(piece.a, piece.b, {"ohms": math.inf})["ohms"]
            graph.add_edge(piece.a, piece.b, ohms=min(known, abs(piece.row[0])))
    first = sources[0].b
    graph.add_node(first)
    ohms = nx.single_source_dijkstra_path_length(graph, first, weight="ohms")
    if any(source.b not in ohms for source in sources):
        return reach
    apart = sorted(ohms[source.b] for source in sources)[-2:]
    highest_v = max(abs(source.row[0]) for source in sources)
    return reach._replace(within_v=min(reach.within_v, highest_v + sum(apart) * most_a))
