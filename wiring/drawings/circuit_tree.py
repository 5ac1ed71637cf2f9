"""A circuit as a tree: pieces in series stand one under the other, pieces in parallel side by side."""

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from wiring.drawings.circuit_pieces import Piece


class Leaf(NamedTuple):
    """One piece between two nets."""

    piece: Piece
    top: int
    bottom: int
    order: int


class End(NamedTuple):
    """A path that stops at a net: nothing leads on, or a flag says where it goes on."""

    top: int
    bottom: int
    order: int = 0
    flag: str = ""


class Stray(NamedTuple):
    """A wire or terminal that hangs on a net and leads to no piece of this circuit; see circuit_tails."""

    number: int
    top: int
    bottom: int
    order: int = 0
    hangs: bool = True  # from the upper net; else it stands on the lower one


class Series(NamedTuple):
    """Nodes one after the other, top first."""

    parts: tuple["Node", ...]
    top: int
    bottom: int
    order: int


class Parallel(NamedTuple):
    """Nodes between the same two nets, in plan order; flags name a net that goes on elsewhere."""

    parts: tuple["Node", ...]
    top: int
    bottom: int
    order: int
    flag_top: str = ""
    flag_bottom: str = ""
    led: bool = False  # goes on from another row: its rails come in from the left


Node = Leaf | End | Stray | Series | Parallel


def oriented(node: Node, top: int) -> Node:
    """Return the node turned so that its top lies on a net; one between other nets is returned as it is."""
    if node.top == top or node.bottom != top:
        flipped = False
    else:
        flipped = True
        node = node._replace(top=node.bottom, bottom=node.top)
    if isinstance(node, Series):
        parts: list[Node] = []
        net = node.top
        for part in reversed(node.parts) if flipped else node.parts:
            turned = oriented(part, net)
            parts.append(turned)
            net = turned.bottom
        return node._replace(parts=tuple(parts))
    if isinstance(node, Parallel):
        return node._replace(
            parts=tuple(sorted((oriented(p, node.top) for p in node.parts), key=lambda p: p.order))
        )
    return node


def leaves(node: Node) -> Iterator[Leaf]:
    """Yield the pieces of a node, top to bottom and left to right."""
    if isinstance(node, Leaf):
        yield node
    elif isinstance(node, (Series, Parallel)):
        for part in node.parts:
            yield from leaves(part)


def in_series(one: Node, other: Node, top: int, bottom: int) -> Series:
    """Return two nodes one after the other; series inside series is laid open."""
    parts = (one.parts if isinstance(one, Series) else (one,)) + (
        other.parts if isinstance(other, Series) else (other,)
    )
    return Series(parts, top, bottom, min(one.order, other.order))


def in_parallel(nodes: Sequence[Node], top: int, bottom: int) -> Parallel:
    """Return nodes side by side in plan order; parallel inside parallel is laid open."""
    parts: list[Node] = []
    for node in nodes:
        parts.extend(node.parts if isinstance(node, Parallel) else (node,))
    parts.sort(key=lambda n: n.order)
    return Parallel(tuple(parts), top, bottom, parts[0].order)
