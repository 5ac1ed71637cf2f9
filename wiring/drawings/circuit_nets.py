"""Which terminals of a circuit are one conductor, and the wires that make them so."""

from collections.abc import Iterable, Mapping
from typing import NamedTuple

from wiring.catalogue.kind import Kind
from wiring.drawings.circuit_pieces import INNER
from wiring.plan.names import PartId, TerminalRef
from wiring.plan.plan import Plan
from wiring.plan.wire import Wire


class Link(NamedTuple):
    """The way from one terminal to the next: a wire, or None inside a block or a plug."""

    to: TerminalRef
    wire: Wire | None


class Nets(NamedTuple):
    """Nets by number, the terminals they join, and the links between these."""

    of: Mapping[TerminalRef, int]
    links: Mapping[TerminalRef, tuple[Link, ...]]
    members: tuple[tuple[TerminalRef, ...], ...]
    wires: tuple[Wire, ...]
    apart: frozenset[PartId] = frozenset()  # plugs drawn from their sockets; one net all the same


def nets_of(plan: Plan, kinds: Mapping[str, Kind], parts: Iterable[PartId]) -> Nets:
    """Return the nets of some parts of a plan; a wire counts when one of its ends is on one of them."""
    chosen = [p for p in parts if p in plan.parts and plan.parts[p].kind in kinds]
    inside = set(chosen)
    links: dict[TerminalRef, list[Link]] = {}
    for part_id in chosen:
        for terminal in kinds[plan.parts[part_id].kind].terminals:
            links[TerminalRef(part_id, terminal.name)] = []
        if kinds[plan.parts[part_id].kind].behaviour == "twin_coil":
            links[TerminalRef(part_id, INNER)] = []
    wires = [w for w in plan.wires.values() if w.start.part in inside or w.end.part in inside]
    for wire in wires:
        _join(links, TerminalRef(*wire.start), TerminalRef(*wire.end), wire)
    for part_id in chosen:
        for one, other in _inner_joints(part_id, kinds[plan.parts[part_id].kind]):
            _join(links, one, other, None)
    of: dict[TerminalRef, int] = {}
    members: list[tuple[TerminalRef, ...]] = []
    for terminal_ref in list(links):
        if terminal_ref in of:
            continue
        found = [terminal_ref]
        of[terminal_ref] = len(members)
        for ref in found:
            for link in links[ref]:
                if link.to not in of:
                    of[link.to] = len(members)
                    found.append(link.to)
        members.append(tuple(found))
    return Nets(of, {ref: tuple(found) for ref, found in links.items()}, tuple(members), tuple(wires))


def _inner_joints(part_id: PartId, kind: Kind) -> list[tuple[TerminalRef, TerminalRef]]:
    """Return what a block or a plug joins inside; a block's terminals meet in a hub without a name."""
    names = [t.name for t in kind.terminals]
    if kind.behaviour == "bus":
        return [(TerminalRef(part_id, ""), TerminalRef(part_id, name)) for name in names]
    if kind.behaviour == "pairs":
        return [
            (TerminalRef(part_id, f"{name[:-1]}a"), TerminalRef(part_id, name))
            for name in names
            if name.endswith("b") and f"{name[:-1]}a" in names
        ]
    return []


def _join(
    links: dict[TerminalRef, list[Link]], one: TerminalRef, other: TerminalRef, wire: Wire | None
) -> None:
    links.setdefault(one, []).append(Link(other, wire))
    links.setdefault(other, []).append(Link(one, wire))
