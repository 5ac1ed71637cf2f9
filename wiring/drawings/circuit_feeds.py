"""Which pieces hang together, and which source feeds them: what has one is drawn from it.

Two supplies that share nothing but a common return feed a group each, as a builder thinks of them.
"""

from collections.abc import Iterable
from typing import NamedTuple

from wiring.drawings.circuit_tree import Leaf

NOWHERE = -1  # stands for the minus net of a source whose ends are one net


class Group(NamedTuple):
    """Pieces that are drawn together, and the source at their left."""

    source: Leaf | None
    edges: tuple[Leaf, ...]

    @property
    def plus(self) -> int:
        """The net of the upper rail."""
        return self.source.top if self.source else self.edges[0].top

    @property
    def minus(self) -> int:
        """The net of the lower rail; without a source, the one farthest from the upper rail."""
        if self.source:
            return self.source.bottom if self.source.bottom != self.source.top else NOWHERE
        seen = _walk(self.edges, self.plus)
        return seen[-1] if len(seen) > 1 else NOWHERE

    @property
    def nets(self) -> set[int]:
        """Every net a piece of the group ends on."""
        own = (self.source,) if self.source else ()
        return {net for edge in (*own, *self.edges) for net in (edge.top, edge.bottom)}


def fed_groups(edges: list[Leaf]) -> list[Group]:
    """Return the groups of pieces, fed ones first, in plan order of their sources."""
    groups = [group for members in _joined(edges, set()) for group in _with_sources(members)]
    return sorted(groups, key=lambda g: (g.source is None, g.source.order if g.source else 0))


def by_net(edges: Iterable[Leaf]) -> dict[int, list[Leaf]]:
    """Return the pieces that end on each net."""
    at: dict[int, list[Leaf]] = {}
    for edge in edges:
        for net in {edge.top, edge.bottom}:
            at.setdefault(net, []).append(edge)
    return at


def _with_sources(edges: list[Leaf]) -> list[Group]:
    """Give pieces that hang together their source; those that another source feeds over one net get it."""
    sources = sorted((e for e in edges if e.piece.source), key=lambda e: (not e.piece.main, e.order))
    if not sources:
        return [Group(None, tuple(edges))]
    source = sources[0]
    ends = {source.top, source.bottom}
    rest = [edge for edge in edges if edge is not source]
    own: list[Leaf] = []
    groups: list[Group] = []
    for members in _joined(rest, ends):
        touched = {net for edge in members for net in (edge.top, edge.bottom)} & ends
        if len(ends) == 2 and len(touched) == 1 and any(_feeds(edge, touched) for edge in members):
            groups.extend(_with_sources(members))
        else:
            own.extend(members)
    return [Group(source, tuple(sorted(own, key=lambda e: e.order))), *groups]


def _feeds(edge: Leaf, ends: set[int]) -> bool:
    """Tell whether a piece is a source that stands on one of the nets and reaches beyond it."""
    return edge.piece.source and len({edge.top, edge.bottom} & ends) == 1 and edge.top != edge.bottom


def _joined(edges: list[Leaf], never: set[int]) -> list[list[Leaf]]:
    """Return pieces in groups that hang together over nets other than some; plan order is kept."""
    at = by_net(edges)
    done: set[int] = set()
    groups: list[list[Leaf]] = []
    for first in edges:
        if first.order in done:
            continue
        done.add(first.order)
        group = [first]
        for edge in group:
            for net in {edge.top, edge.bottom} - never:
                fresh = [other for other in at[net] if other.order not in done]
                done.update(other.order for other in fresh)
                group.extend(fresh)
        groups.append(sorted(group, key=lambda e: e.order))
    return groups


def _walk(edges: Iterable[Leaf], start: int) -> list[int]:
    at = by_net(edges)
    seen = {start: None}
    waiting = [start]
    for net in waiting:
        for edge in at.get(net, ()):
            for other in (edge.top, edge.bottom):
                if other not in seen:
                    seen[other] = None
                    waiting.append(other)
    return waiting
