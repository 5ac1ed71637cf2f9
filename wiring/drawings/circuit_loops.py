"""Wires that loop along a rail from one column to the next, as lamps are wired in practice."""

from itertools import pairwise

from wiring.drawings.circuit_blocks import ROW_MM, upper_and_lower
from wiring.drawings.circuit_facts import Facts
from wiring.drawings.circuit_tree import End, Leaf, Node, Parallel, Series, Stray
from wiring.plan.names import TerminalRef


def on_rails(facts: Facts, node: Parallel, parts: list[Node]) -> tuple[Facts, list[str], list[str]]:
    """Return the words along the upper and the lower rail before each column, and facts that know it.

    A wire lies along the rail when it is all there is between an end and the same net's end in the column
    before; any other way to a rail is drawn in the column itself.
    """
    taken: set[TerminalRef] = set()
    rails: list[list[str]] = []
    for upper in (True, False):
        words = [""]
        for before, part in pairwise(parts):
            ref = _end(facts, part, upper)
            looped = facts.tails.after.get(ref) if ref else None
            if ref and looped and looped in _ends(facts, before, upper):
                taken.add(ref)
                words.append(facts.tails.at[ref][0].words)
            else:
                words.append("")
        rails.append(words)
    return facts._replace(on_rail=facts.on_rail | taken), rails[0], rails[1]


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
