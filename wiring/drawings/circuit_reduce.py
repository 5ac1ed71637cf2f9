"""Fold the pieces between plus and minus into one series-parallel tree, and set aside what does not fold.

Two edges in a row become a series, two side by side a parallel; repeated, this folds every ladder, feeder and
group. A bridge, or anything else that does not fold, is taken out one edge at a time, smallest first, and is
drawn by itself with the names of the nets it leads to: a drawing never has to cross or guess a joint.
"""

from typing import NamedTuple

from wiring.drawings.circuit_tree import End, Leaf, Node, in_parallel, in_series, leaves, oriented


class Folded(NamedTuple):
    """The tree from plus to minus (None when nothing joins them) and the nodes set aside."""

    tree: Node | None
    aside: tuple[Node, ...]


def folded(edges: list[Leaf], plus: int, minus: int) -> Folded:
    """Return the tree of pieces between two nets; every piece is in the tree or aside, once."""
    bench = _Bench(edges, plus, minus)
    bench.fold()
    while len(bench.edges) > 1 or any({e.top, e.bottom} != {plus, minus} for e in bench.edges.values()):
        bench.take_out()
        bench.fold()
    tree = next(iter(bench.edges.values()), None)
    return Folded(tree and oriented(tree, plus), tuple(oriented(node, node.top) for node in bench.aside))


class _Bench:
    def __init__(self, edges: list[Leaf], plus: int, minus: int) -> None:
        self.plus = plus
        self.minus = minus
        self.edges: dict[int, Node] = {}
        self.at: dict[int, set[int]] = {}
        self.aside: list[Node] = []
        self.touched: set[int] = set()
        self.next = 0
        for edge in edges:
            self._add(edge)

    def fold(self) -> None:
        """Fold until no net gives anything more."""
        while self.touched:
            net = min(self.touched)
            self.touched.discard(net)
            self._side_by_side(net)
            if net in (self.plus, self.minus):
                continue
            keys = sorted(self.at.get(net, ()))
            if len(keys) == 2:
                self._in_a_row(net, keys)
            elif len(keys) == 1:
                self._dead_end(net, keys[0])

    def take_out(self) -> None:
        """Set the smallest edge aside that is not already whole, the last made of equals."""
        whole = {self.plus, self.minus}
        keys = [k for k, e in self.edges.items() if {e.top, e.bottom} != whole]
        key = min(keys, key=lambda k: (sum(1 for _ in leaves(self.edges[k])), -self.edges[k].order))
        self.aside.append(self._drop(key))

    def _side_by_side(self, net: int) -> None:
        groups: dict[int, list[int]] = {}
        for key in sorted(self.at.get(net, ())):
            edge = self.edges[key]
            groups.setdefault(edge.bottom if edge.top == net else edge.top, []).append(key)
        for other, keys in groups.items():
            if len(keys) > 1:
                self._add(in_parallel([self._drop(k) for k in keys], net, other))

    def _in_a_row(self, net: int, keys: list[int]) -> None:
        one, other = self._drop(keys[0]), self._drop(keys[1])
        first = one.bottom if one.top == net else one.top
        last = other.bottom if other.top == net else other.top
        self._add(in_series(oriented(one, first), oriented(other, net), first, last))

    def _dead_end(self, net: int, key: int) -> None:
        edge = self._drop(key)
        near = edge.bottom if edge.top == net else edge.top
        if near == self.minus:
            self._add(in_series(End(self.plus, net, edge.order), oriented(edge, net), self.plus, near))
        else:
            self._add(in_series(oriented(edge, near), End(net, self.minus, edge.order), near, self.minus))

    def _add(self, edge: Node) -> None:
        if edge.top == edge.bottom:
            self.aside.append(edge)
            return
        self.edges[self.next] = edge
        for net in (edge.top, edge.bottom):
            self.at.setdefault(net, set()).add(self.next)
            self.touched.add(net)
        self.next += 1

    def _drop(self, key: int) -> Node:
        edge = self.edges.pop(key)
        for net in (edge.top, edge.bottom):
            self.at[net].discard(key)
            self.touched.add(net)
        return edge
