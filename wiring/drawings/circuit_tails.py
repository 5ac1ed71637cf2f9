"""The wires and strip terminals between a piece and the net it joins, each drawn once.

The wires of a net form a tree from its root, the end that feeds it. What only one end uses is that end's
tail; what hangs on the tree and reaches no piece is a stray; a wire that closes a loop is told in words.
"""

from collections.abc import Iterable, Mapping
from typing import NamedTuple

from wiring.drawings.circuit_nets import Nets
from wiring.plan.designations import terminal_label
from wiring.plan.names import TerminalRef
from wiring.plan.plan import Plan
from wiring.plan.wire import Wire


class Step(NamedTuple):
    """A wire or a terminal in the line, with the words beside it."""

    words: str
    terminal: TerminalRef | None = None
    wire: Wire | None = None
    apart: bool = False  # a plug drawn from its socket


Steps = tuple[Step, ...]


class Way(NamedTuple):
    """From an end to the joint it hangs on: the terminals passed, and the steps between each two of them."""

    nodes: tuple[TerminalRef, ...]
    hops: tuple[Steps, ...]


class Spot(NamedTuple):
    """Where a terminal stands in the tree of its net: its place, how many follow below, how many are ends."""

    place: int
    size: int
    ends: int


class Tails(NamedTuple):
    """Steps outward from each end, what hangs on each net besides, and the name of each net."""

    at: Mapping[TerminalRef, Steps]
    strays: Mapping[int, tuple[Steps, ...]]
    names: Mapping[int, str]
    spots: Mapping[TerminalRef, Spot]
    ways: Mapping[TerminalRef, Way]

    def under(self, node: TerminalRef, ref: TerminalRef) -> bool:
        """Tell whether the way from a terminal to the root passes a node of the same net."""
        top, below = self.spots[node], self.spots.get(ref)
        return below is not None and top.place <= below.place < top.place + top.size


def tails_of(plan: Plan, nets: Nets, ends: Iterable[TerminalRef], roots: Mapping[int, TerminalRef]) -> Tails:
    """Return the tails of the ends of all pieces, given in plan order, and of the root of each net."""
    ends = list(dict.fromkeys(ends))
    at: dict[TerminalRef, Steps] = {}
    strays: dict[int, tuple[Steps, ...]] = {}
    names: dict[int, str] = {}
    spots: dict[TerminalRef, Spot] = {}
    ways: dict[TerminalRef, Way] = {}
    by_net: dict[int, list[TerminalRef]] = {}
    for end in ends:
        by_net.setdefault(nets.of[end], []).append(end)
    for net, its_ends in by_net.items():
        root = roots.get(net, its_ends[0])
        names[net] = terminal_label(plan, root)
        net_tails = _NetTails(plan, nets, root, its_ends)
        spots.update(net_tails.spots())
        at[root] = net_tails.of_root()
        for end in net_tails.order:
            if end in net_tails.ends and end != root:
                ways[end] = net_tails.way(end)
                at[end] = tuple(step for hop in ways[end].hops for step in hop)
        strays[net] = net_tails.strays()
    return Tails(at, strays, names, spots, ways)


class _NetTails:
    def __init__(self, plan: Plan, nets: Nets, root: TerminalRef, ends: list[TerminalRef]) -> None:
        self.plan = plan
        self.root = root
        self.ends = {end: place for place, end in enumerate(ends)}
        self.apart = nets.apart
        self.claimed = {root}
        self.parent: dict[TerminalRef, tuple[TerminalRef, Wire | None]] = {}
        self.children: dict[TerminalRef, list[TerminalRef]] = {root: []}
        used: set[str] = set()
        self.rings: list[Wire] = []
        self.order = [root]
        for ref in self.order:
            for link in nets.links[ref]:
                if link.to not in self.children:
                    self.children[link.to] = []
                    self.parent[link.to] = (ref, link.wire)
                    self.children[ref].append(link.to)
                    self.order.append(link.to)
                    if link.wire:
                        used.add(link.wire.id)
                elif link.wire and link.wire.id not in used:
                    used.add(link.wire.id)
                    self.rings.append(link.wire)
        for ref in reversed(self.order):  # terminals of a block or plug that no wire reaches are not drawn
            if ref != root and not (self.children[ref] or ref in self.ends or self.parent[ref][1]):
                self.children[self.parent[ref][0]].remove(ref)
                del self.children[ref]

    def spots(self) -> dict[TerminalRef, Spot]:
        """Return the place of each terminal, a chain to its end before the next, chains last."""
        first = {ref: self.ends.get(ref, len(self.ends)) for ref in self.children}
        count = {ref: int(ref in self.ends) for ref in self.children}
        size = dict.fromkeys(self.children, 1)
        for ref in reversed(self.order):
            if ref in self.children and ref != self.root:
                before = self.parent[ref][0]
                first[before] = min(first[before], first[ref])
                count[before] += count[ref]
                size[before] += size[ref]
        found: dict[TerminalRef, Spot] = {}
        waiting = [self.root]
        while waiting:
            ref = waiting.pop()
            found[ref] = Spot(len(found), size[ref], count[ref])
            waiting.extend(sorted(self.children[ref], key=lambda r: (count[r] > 1, first[r]), reverse=True))
        return found

    def of_root(self) -> Steps:
        """Return the steps from the root to where the net first branches or meets a piece."""
        steps: list[Step] = []
        here = self.root
        while len(self.children[here]) == 1:
            here = self.children[here][0]
            self.claimed.add(here)
            steps.extend(self._link(here))
            if here in self.ends:
                break
            steps.extend(self._terminal(here))
        return tuple(steps)

    def way(self, end: TerminalRef) -> Way:
        """Return the way from an end to the part of the net already drawn."""
        nodes, hops = [end], []
        while nodes[-1] not in self.claimed:
            self.claimed.add(nodes[-1])
            before = self.parent[nodes[-1]][0]
            mark = [] if before in self.claimed else self._terminal(before)
            hops.append((*self._link(nodes[-1]), *mark))
            nodes.append(before)
        return Way(tuple(nodes), tuple(hops))

    def strays(self) -> tuple[Steps, ...]:
        """Return what is left, from the net outward; and the wires that close a loop."""
        found: list[Steps] = []
        for leaf in [ref for ref, kids in self.children.items() if not kids and ref not in self.claimed]:
            steps = [*self._terminal(leaf), *(step for hop in self.way(leaf).hops for step in hop)]
            found.append(tuple(reversed(steps)))
        for wire in self.rings:
            ends = f"{terminal_label(self.plan, wire.start)} – {terminal_label(self.plan, wire.end)}"
            found.append((Step(f"{wire.label} {wire.colour} {ends}", wire=wire),))
        return tuple(found)

    def _link(self, ref: TerminalRef) -> list[Step]:
        """Return the wire from a terminal towards the root, or the gap of a plug that is apart."""
        before, wire = self.parent[ref]
        if wire is not None:
            return [Step(f"{wire.label} {wire.colour}", wire=wire)]
        return [Step("apart", apart=True)] if ref.part in self.apart and before.part == ref.part else []

    def _terminal(self, ref: TerminalRef) -> list[Step]:
        if not ref.terminal or ref.part not in self.plan.parts:
            return []
        return [Step(terminal_label(self.plan, ref), terminal=ref)]
