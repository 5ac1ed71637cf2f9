"""Put the columns of a tree in the order the wires reach them, and columns that hang free by themselves."""

from wiring.drawings.circuit_facts import Facts
from wiring.drawings.circuit_tree import End, Node, Parallel, Series, in_parallel, leaves


def arranged(facts: Facts, node: Node) -> Node:
    """Return the node with side-by-side columns ordered along the wires of their upper net.

    Their `order` is from then on their place in the row.
    """
    if isinstance(node, Series):
        return node._replace(parts=tuple(arranged(facts, part) for part in node.parts))
    if isinstance(node, Parallel):
        parts = [arranged(facts, part) for part in node.parts]
        parts.sort(key=lambda part: (_rank(facts, part), part.order))
        return node._replace(parts=tuple(part._replace(order=place) for place, part in enumerate(parts)))
    return node


def _rank(facts: Facts, node: Node) -> int:
    found = [
        facts.tails.spots[ref].place
        for leaf in leaves(node)
        for ref in (leaf.piece.start_ref, leaf.piece.end_ref)
        if facts.nets.of[ref] == node.top and ref in facts.tails.spots
    ]
    return min(found, default=len(facts.tails.spots))


def without_floating(node: Node) -> tuple[Node | None, list[Node]]:
    """Return the node without columns that reach its lower rail only, and these as a node of their own."""
    if isinstance(node, Series) and isinstance(node.parts[0], End):
        return None, [node]
    if not isinstance(node, Parallel):
        return node, []
    apart = [p for p in node.parts if isinstance(p, Series) and isinstance(p.parts[0], End)]
    if not apart:
        return node, []
    kept = [p for p in node.parts if p not in apart]
    rest: Node | None = None
    if kept:
        rest = kept[0] if len(kept) == 1 else node._replace(parts=tuple(kept))
    return rest, [apart[0] if len(apart) == 1 else in_parallel(apart, node.top, node.bottom)]
