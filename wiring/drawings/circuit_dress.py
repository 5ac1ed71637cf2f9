"""Hang on a folded tree what its nets have besides pieces: stray wires, and names of nets drawn twice."""

from wiring.drawings.circuit_sections import Section, upright
from wiring.drawings.circuit_tails import Tails
from wiring.drawings.circuit_tree import End, Node, Parallel, Series, Stray, in_parallel, in_series


class Dresser:
    """Hands out each net's strays and its flag once, to the first place where the net is drawn."""

    def __init__(self, tails: Tails, wanted: set[int], shared: frozenset[int] = frozenset()) -> None:
        self.tails = tails
        self.shared = shared  # nets of more than one source: each source tells their name
        self.wanted = set(wanted)
        self.hung: set[int] = set()

    def section(self, section: Section) -> Section:
        """Return a section with its node dressed; a run with a flag inside it stands upright again."""
        inner = {leaf.bottom for leaf in section.upper[:-1]} | {leaf.top for leaf in section.lower[1:]}
        if inner & self.wanted:
            section = upright(section)
        if section.node is None:
            return section
        node = self.dressed(section.node)
        above = self.flag(node.top) if section.upper else ""
        below = self.flag(node.bottom) if section.lower else ""
        if above or below:
            if not isinstance(node, Parallel):
                node = Parallel((node,), node.top, node.bottom, node.order)
            node = node._replace(flag_top=above or node.flag_top, flag_bottom=below or node.flag_bottom)
        return section._replace(node=node)

    def dressed(self, node: Node, ends: bool = True) -> Node:
        """Return the node with strays and flags on its nets; those of its two end nets only where told."""
        if isinstance(node, Series):
            node = self._series(node)
        elif isinstance(node, Parallel):
            parts = tuple(self.dressed(part, ends=False) for part in node.parts)
            node = in_parallel(list(parts), node.top, node.bottom)._replace(led=node.led)
        return self._with_strays_of_ends(node) if ends else node

    def _series(self, node: Series) -> Node:
        first = self.dressed(node.parts[0], ends=False)
        if len(node.parts) == 1:
            return first
        net = node.parts[1].top
        if isinstance(node.parts[1], End):
            end = node.parts[1]
            name = self.flag(net)
            strays = self._strays(net, end.bottom, hangs=True)
            last: Node = end._replace(flag=name)
            if strays:
                last = in_parallel([*strays], net, end.bottom)
                last = last._replace(flag_top=name)
            return in_series(first, last, node.top, node.bottom)
        strays = self._strays(net, node.bottom, hangs=True)
        name = "" if isinstance(node.parts[0], End) else self.flag(net)
        rest = Series(node.parts[1:], net, node.bottom, node.order)
        below = self._series(rest)
        if strays or name:
            below = _beside(below, strays, net, node.bottom, name)
        if isinstance(first, End):
            first = first._replace(flag=self.flag(net))
        return in_series(first, below, node.top, node.bottom)

    def _with_strays_of_ends(self, node: Node) -> Node:
        strays = self._strays(node.top, node.bottom, hangs=True)
        strays += self._strays(node.bottom, node.top, hangs=False)
        return _beside(node, strays, node.top, node.bottom, "") if strays else node

    def _strays(self, net: int, other: int, hangs: bool) -> list[Node]:
        if net in self.hung:
            return []
        self.hung.add(net)
        top, bottom = (net, other) if hangs else (other, net)
        count = len(self.tails.strays.get(net, ()))
        return [Stray(number, top, bottom, 1_000_000 + number, hangs) for number in range(count)]

    def source_flag(self, net: int) -> str:
        """Return the name of a net at the end of a source, where it is drawn elsewhere too."""
        return self.flag(net) or (self.tails.names.get(net, "") if net in self.shared else "")

    def flag(self, net: int) -> str:
        """Return the name of a net that is drawn in two places, the first time it is asked for."""
        if net not in self.wanted:
            return ""
        self.wanted.discard(net)
        return self.tails.names.get(net, "")


def _beside(node: Node, strays: list[Node], top: int, bottom: int, name: str) -> Parallel:
    """Return a node with strays at its right and a flag on its upper rail."""
    whole = in_parallel([node, *strays], top, bottom)
    if isinstance(node, Parallel):
        whole = whole._replace(flag_top=node.flag_top, flag_bottom=node.flag_bottom, led=node.led)
    return whole._replace(flag_top=name or whole.flag_top)
