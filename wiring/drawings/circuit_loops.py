"""Wires and terminals that lie along a rail between two columns, as lamps along a street are wired."""

from typing import NamedTuple

from wiring.drawings.circuit_blocks import ROW_MM, upper_and_lower
from wiring.drawings.circuit_facts import Facts
from wiring.drawings.circuit_tails import Step, Steps, Way
from wiring.drawings.circuit_tree import End, Leaf, Node, Parallel, Series, Stray
from wiring.plan.names import TerminalRef


class Rail(NamedTuple):
    """What lies along a rail: the steps before each column, left to right, and the terminal at its joint."""

    runs: tuple[Steps, ...]
    joints: tuple[Step | None, ...]

    @property
    def used(self) -> bool:
        """Whether anything lies along it."""
        return any(self.runs) or any(self.joints)


def on_rails(facts: Facts, node: Parallel, parts: list[Node]) -> tuple[Facts, Rail, Rail]:
    """Return what lies along the upper and the lower rail, and facts that know it.

    Steps lie along the rail before a column where the net's tree says that all columns from there on are
    reached through them; any other way to a rail is drawn in the column itself.
    """
    short: dict[TerminalRef, Steps] = {}
    rails = [_rail(facts, parts, upper, node.led, short) for upper in (True, False)]
    return facts._replace(short={**facts.short, **short}), rails[0], rails[1]


def _rail(facts: Facts, parts: list[Node], upper: bool, led: bool, short: dict[TerminalRef, Steps]) -> Rail:
    runs: list[Steps] = [()] * len(parts)
    joints: list[Step | None] = [None] * len(parts)
    ends = [_ends(facts, part, upper) for part in parts]
    here: TerminalRef | None = None  # the terminal that the rail has come to
    running = False
    for number, part in enumerate(parts):
        ref = _end(facts, part, upper)
        way = facts.tails.ways.get(ref) if ref else None
        if ref is None or way is None:
            here = here or ref
            running = False
            continue
        here = here or way.nodes[-1]
        place = _joint(facts, way, running) if number or led else None
        running = (
            place is not None
            and way.nodes[-1] == here
            and all(facts.tails.under(way.nodes[place], e) for later in ends[number:] for e in later)
        )
        if running and place is not None:
            here = way.nodes[place]
            runs[number] = tuple(step for hop in reversed(way.hops[place:]) for step in reversed(hop))
            left = [step for hop in way.hops[:place] for step in hop]
            if left and left[-1].terminal == here:
                joints[number] = left.pop()
            short[ref] = tuple(left)
    return Rail(tuple(runs), tuple(joints))


def _joint(facts: Facts, way: Way, running: bool) -> int | None:
    """Return which terminal on the way from an end is the joint: the first that others hang on too."""
    for place, node in enumerate(way.nodes[:-1]):
        if facts.tails.spots[node].ends > 1:
            return place
    last = len(way.hops) - 1
    return last if running and last >= 0 and way.hops[last] else None


def lead_mm(facts: Facts, node: Node) -> float:
    """Return how far below a rail the symbol of a column's first piece stands."""
    ref = _end(facts, node, upper=True)
    return len(facts.steps(ref)) * ROW_MM if ref else 0.0


def has_rail(node: Node, upper: bool) -> bool:
    """Tell whether a node starts, or ends, with a rail of its own."""
    while isinstance(node, Series):
        node = node.parts[0 if upper else -1]
    return isinstance(node, Parallel)


def is_open(node: Node) -> bool:
    """Tell whether a column is joined to one rail only."""
    if isinstance(node, Series):
        return isinstance(node.parts[0], End) or is_open(node.parts[-1])
    if isinstance(node, Parallel):
        return all(is_open(part) for part in node.parts)
    return isinstance(node, (End, Stray))


def _end(facts: Facts, node: Node, upper: bool) -> TerminalRef | None:
    while isinstance(node, Series):
        node = node.parts[0 if upper else -1]
    return upper_and_lower(facts, node)[0 if upper else 1] if isinstance(node, Leaf) else None


def _ends(facts: Facts, node: Node, upper: bool) -> set[TerminalRef]:
    while isinstance(node, Series):
        node = node.parts[0 if upper else -1]
    if isinstance(node, Parallel):
        return {ref for part in node.parts for ref in _ends(facts, part, upper)}
    ref = _end(facts, node, upper)
    return {ref} if ref else set()
