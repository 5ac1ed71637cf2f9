"""From the parts of one circuit to its facts and the sections that show them."""

from collections import Counter
from collections.abc import Iterable, Mapping
from typing import NamedTuple

from wiring.catalogue.kind import Kind
from wiring.circuit.figures import Figures
from wiring.drawings.circuit_arrange import arranged, without_floating
from wiring.drawings.circuit_dress import Dresser
from wiring.drawings.circuit_facts import Facts
from wiring.drawings.circuit_feeds import NOWHERE, Group, by_net, fed_groups
from wiring.drawings.circuit_nets import Nets, nets_of
from wiring.drawings.circuit_pieces import Piece, pieces_of
from wiring.drawings.circuit_poles import poles_of
from wiring.drawings.circuit_reduce import folded
from wiring.drawings.circuit_sections import ROW_MM, Divider, Section
from wiring.drawings.circuit_tails import tails_of
from wiring.drawings.circuit_tree import Leaf, Node, oriented
from wiring.plan.names import PartId, TerminalRef
from wiring.plan.plan import Plan
from wiring.plan.positions import Positions


class Built(NamedTuple):
    """A circuit ready to draw."""

    facts: Facts
    sections: tuple[Section, ...]
    dresser: Dresser


def built(
    plan: Plan,
    kinds: Mapping[str, Kind],
    positions: Positions,
    figures: Figures,
    parts: Iterable[PartId],
    symbols: str = "iec",
    row_mm: float = ROW_MM,
) -> Built:
    """Return the sections of one circuit; every piece of every part is in exactly one of them."""
    wanted = set(parts)
    chosen = [p for p in plan.parts if p in wanted and plan.parts[p].kind in kinds]
    apart = frozenset(p for p in chosen if positions.get(p) == "apart")
    nets = nets_of(plan, kinds, chosen)._replace(apart=apart)
    edges: list[Leaf] = []
    for part_id in chosen:
        part = plan.parts[part_id]
        wired = [ref.terminal for ref, links in nets.links.items() if ref.part == part_id and links]
        kind = kinds[part.kind]
        for piece in pieces_of(part, kind, _position(part_id, kind, positions, figures), wired):
            edges.append(Leaf(piece, nets.of[piece.start_ref], nets.of[piece.end_ref], len(edges)))
    groups = fed_groups(edges)
    roots: dict[int, TerminalRef] = {}
    for group in groups:
        roots = {**_roots(nets, group), **roots}
    ends = [ref for edge in edges for ref in (edge.piece.start_ref, edge.piece.end_ref)]
    ends.extend(e.piece.idle_ref for e in edges if e.piece.idle and nets.links[e.piece.idle_ref])
    tails, poles = tails_of(plan, nets, ends, roots), poles_of([e.piece for e in edges])
    facts = Facts(plan, kinds, figures, nets, tails, poles=poles, symbols=symbols, drawn={})
    divider = Divider(facts, row_mm)
    sections: list[Section] = []
    for group in groups:
        sections.extend(_sections(divider, group))
    live = {net for edge in edges for net in (edge.top, edge.bottom)}
    idle = {nets.of[e.piece.idle_ref] for e in edges if e.piece.idle and nets.links[e.piece.idle_ref]}
    shared = _shared(groups)
    dresser = Dresser(facts.tails, divider.wanted | (idle & live) | shared, shared)
    return Built(facts, tuple(dresser.section(section) for section in sections), dresser)


def _position(part_id: PartId, kind: Kind, positions: Positions, figures: Figures) -> str:
    """Return the position a part stands in; a relay's is what the solved volts on its coil make of it."""
    figure = figures.parts.get(part_id)
    if kind.behaviour == "relay" and figure is not None and figure.state in {p.name for p in kind.positions}:
        return figure.state
    return positions.get(part_id, kind.in_use)


def _roots(nets: Nets, group: Group) -> dict[int, TerminalRef]:
    """Return the end that feeds each net: the first one met on the way from plus."""
    roots: dict[int, TerminalRef] = {}
    if group.source:
        roots[group.source.top] = group.source.piece.start_ref
        roots.setdefault(group.source.bottom, group.source.piece.end_ref)
    at = by_net(group.edges)
    queue = [group.plus]
    for net in queue:
        for edge in at.get(net, ()):
            other = edge.bottom if edge.top == net else edge.top
            if other not in roots:
                roots[other] = _end_on(nets, edge.piece, other)
                queue.append(other)
    return roots


def _end_on(nets: Nets, piece: Piece, net: int) -> TerminalRef:
    return piece.end_ref if nets.of[piece.end_ref] == net else piece.start_ref


def _shared(groups: list[Group]) -> frozenset[int]:
    """Return the nets that more than one group of pieces is drawn on."""
    found = Counter(net for group in groups for net in group.nets)
    return frozenset(net for net, count in found.items() if count > 1)


def _sections(divider: Divider, group: Group) -> list[Section]:
    tree, aside = folded(list(group.edges), group.plus, group.minus)
    floating: list[Node] = []
    if tree is not None:
        tree, floating = without_floating(arranged(divider.facts, tree))
    found: list[Section] = []
    if tree is not None or group.source is not None:
        found.extend(divider.divided(Section(tree, group.plus, group.minus, group.source)))
    for node in floating:
        divider.wanted.add(node.bottom)
        found.extend(divider.divided(Section(node, NOWHERE, node.bottom)))
    if group.minus == NOWHERE and group.source:
        divider.wanted.add(group.plus)
    for node in aside:
        if node.top == group.minus or node.bottom == group.plus:
            node = oriented(node, node.bottom)
        node = arranged(divider.facts, node)
        divider.wanted |= {node.top, node.bottom}
        found.extend(divider.divided(Section(node, node.top, node.bottom)))
    return found
