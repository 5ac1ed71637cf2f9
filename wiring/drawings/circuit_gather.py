"""Which parts and wires a section shows."""

from collections.abc import Iterator

from wiring.drawings.circuit_facts import Facts
from wiring.drawings.circuit_pieces import Piece
from wiring.drawings.circuit_sections import Section
from wiring.drawings.circuit_tails import Step
from wiring.drawings.circuit_tree import Node, Parallel, Series, Stray, leaves
from wiring.plan.names import PartId, WireId


def shown(facts: Facts, section: Section) -> tuple[list[PartId], list[WireId]]:
    """Return ids of the parts and wires of a section, in the order they are met."""
    parts: dict[PartId, None] = {}
    wires: dict[WireId, None] = {}
    pieces = [leaf.piece for leaf in (section.source, *section.upper, *section.lower) if leaf]
    if section.node is not None:
        pieces.extend(leaf.piece for leaf in leaves(section.node))
    steps: list[Step] = []
    for piece in pieces:
        parts[piece.part] = None
        steps.extend(_steps(facts, piece))
    if section.node is not None:
        for stray in _strays(section.node):
            net = stray.top if stray.hangs else stray.bottom
            steps.extend(facts.tails.strays[net][stray.number])
    for step in steps:
        if step.wire is not None:
            wires[step.wire.id] = None
        if step.terminal is not None:
            parts[step.terminal.part] = None
    return list(parts), list(wires)


def _steps(facts: Facts, piece: Piece) -> Iterator[Step]:
    yield from facts.steps(piece.start_ref)
    yield from facts.steps(piece.end_ref)
    if piece.idle:
        yield from facts.steps(piece.idle_ref)


def _strays(node: Node) -> Iterator[Stray]:
    if isinstance(node, Stray):
        yield node
    elif isinstance(node, (Series, Parallel)):
        for part in node.parts:
            yield from _strays(part)
