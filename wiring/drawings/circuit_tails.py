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


Steps = tuple[Step, ...]


class Tails(NamedTuple):
    """Steps outward from each end, what hangs on each net besides, and the name of each net."""

    at: Mapping[TerminalRef, Steps]
    strays: Mapping[int, tuple[Steps, ...]]
    names: Mapping[int, str]
    rank: Mapping[TerminalRef, int]  # place of each end along the wires of its net, from the root on
    after: Mapping[TerminalRef, TerminalRef]  # the end that a single wire loops on from, where one does


def tails_of(plan: Plan, nets: Nets, ends: Iterable[TerminalRef], roots: Mapping[int, TerminalRef]) -> Tails:
    """Return the tails of the ends of all pieces, given in plan order, and of the root of each net."""
    ends = list(dict.fromkeys(ends))
    at: dict[TerminalRef, Steps] = {}
    strays: dict[int, tuple[Steps, ...]] = {}
    names: dict[int, str] = {}
    rank: dict[TerminalRef, int] = {}
    after: dict[TerminalRef, TerminalRef] = {}
    by_net: dict[int, list[TerminalRef]] = {}
    for end in ends:
        by_net.setdefault(nets.of[end], []).append(end)
    for net, its_ends in by_net.items():
        root = roots.get(net, its_ends[0])
        names[net] = terminal_label(plan, root)
        net_tails = _NetTails(plan, nets, root, its_ends)
        rank.update(net_tails.ranks())
        at[root] = net_tails.of_root()
        for end in net_tails.order:
            if end in net_tails.ends and end != root:
                at[end] = net_tails.of_end(end)
        after.update(net_tails.after)
        strays[net] = net_tails.strays()
    return Tails(at, strays, names, rank, after)


class _NetTails:
    def __init__(self, plan: Plan, nets: Nets, root: TerminalRef, ends: list[TerminalRef]) -> None:
        self.plan = plan
        self.root = root
        self.ends = {end: place for place, end in enumerate(ends)}
        self.after: dict[TerminalRef, TerminalRef] = {}
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

    def ranks(self) -> dict[TerminalRef, int]:
        """Return the order of the ends along the wires: a chain to its end before the next one begins."""
        first = {ref: self.ends.get(ref, len(self.ends)) for ref in self.children}
        for ref in reversed(self.order):
            if ref in self.children and ref != self.root:
                before = self.parent[ref][0]
                first[before] = min(first[before], first[ref])
        found: dict[TerminalRef, int] = {}
        waiting = [self.root]
        while waiting:
            ref = waiting.pop()
            if ref in self.ends:
                found[ref] = len(found)
            waiting.extend(sorted(self.children[ref], key=first.__getitem__, reverse=True))
        return found

    def of_root(self) -> Steps:
        """Return the steps from the root to where the net first branches or meets a piece."""
        steps: list[Step] = []
        here = self.root
        while len(self.children[here]) == 1:
            here = self.children[here][0]
            self.claimed.add(here)
            steps.extend(self._wire(self.parent[here][1]))
            if here in self.ends:
                break
            steps.extend(self._terminal(here))
        return tuple(steps)

    def of_end(self, end: TerminalRef) -> Steps:
        """Return the steps from an end to the part of the net already drawn."""
        steps: list[Step] = []
        here = end
        while here not in self.claimed:
            self.claimed.add(here)
            if here not in self.ends:
                steps.extend(self._terminal(here))
            here, wire = self.parent[here][0], self.parent[here][1]
            steps.extend(self._wire(wire))
        if len(steps) == 1 and here in self.ends:
            self.after[end] = here
        return tuple(steps)

    def strays(self) -> tuple[Steps, ...]:
        """Return what is left, from the net outward; and the wires that close a loop."""
        found: list[Steps] = []
        for leaf in [ref for ref, kids in self.children.items() if not kids and ref not in self.claimed]:
            found.append(tuple(reversed(self.of_end(leaf))))
        for wire in self.rings:
            ends = f"{terminal_label(self.plan, wire.start)} – {terminal_label(self.plan, wire.end)}"
            found.append((Step(f"{wire.label} {wire.colour} {ends}", wire=wire),))
        return tuple(found)

    def _wire(self, wire: Wire | None) -> list[Step]:
        return [Step(f"{wire.label} {wire.colour}", wire=wire)] if wire else []

    def _terminal(self, ref: TerminalRef) -> list[Step]:
        if not ref.terminal or ref.part not in self.plan.parts:
            return []
        return [Step(terminal_label(self.plan, ref), terminal=ref)]
