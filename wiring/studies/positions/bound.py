"""What no set of positions can exceed, where there are too many sets to solve them all.

Loads, conductors and diodes only ever take. So all that flows goes round from source to source through
them, and no conductor carries more than all sources together give: each at most its limit, or what its own
ohms let through. Where no allowed set closes a loop without a load in it, each such round passes a load, so a
conductor also carries no more than all loads together take at the most volts there can be
(studies.positions.takes); a battery counts as a load where another source can push into it. By Kirchhoff's
law one that is the only way to some nodes carries no more than what else leaves them.

A relay is taken to stand either way; a converter gives its limit at most, and takes in that over its
efficiency. Smoothing capacitors are dealt with where each is charged by its own rectifier
(studies.positions.rectified); otherwise, and only then, nothing is proved and the bound is infinite.
"""

import math
from collections.abc import Callable, Mapping, Sequence
from functools import cached_property

from wiring.catalogue.kind import Kind
from wiring.circuit.assembly import assemble
from wiring.plan.names import PartId
from wiring.plan.plan import Plan
from wiring.plan.positions import Positions
from wiring.studies.positions.loops import may_loop
from wiring.studies.positions.options import HELD, LASTING, MOVING, Option
from wiring.studies.positions.pieces import CONDUCTOR, DIODE, LOAD, SOURCE, STORE, Piece, pieces_of
from wiring.studies.positions.rectified import rectified
from wiring.studies.positions.returns import narrowed
from wiring.studies.positions.sets import of
from wiring.studies.positions.takes import gives_a, input_a, load_a, reach_of, sinks_a

Chosen = Callable[[Piece], bool]
ROUNDS = 3  # what is carried says how far apart nodes can be, and that what is carried


class Bound:
    """The most that one family can carry."""

    def __init__(
        self, plan: Plan, kinds: Mapping[str, Kind], base: Positions, options: Sequence[Option]
    ) -> None:
        self._assembly = assemble(plan, kinds, base)
        self._pieces = pieces_of(plan, kinds, self._assembly, options)
        every = self._pieces.every()
        self._sources = [(part, piece) for part, piece in every if piece.sort == SOURCE]
        self._reach = reach_of(piece for _, piece in self._sources)
        self._taken_apart = rectified(self._pieces)
        self._smooths = any(piece.sort == STORE for _, piece in every)
        self._total_a = math.inf
        if not self._taken_apart.sound:
            return
        closed, pushes = (may_loop(self._pieces, sinking=sinking) for sinking in (False, True))
        for _ in range(1 if closed else ROUNDS):
            given = sum(gives_a(piece, self._reach) for _, piece in self._sources)
            loads = self._sum(lambda piece: pushes or piece.sort != SOURCE)
            taken = math.inf if closed else self._charging(loads, self._smooths)
            self._total_a = min(self._total_a, given, taken)
            self._reach = narrowed(self._pieces, self._reach, self._total_a)

    def _charging(self, taken_a: float, smooths: bool) -> float:
        """Return the RMS of what brings loads so much, where it may come in the short waves of charging.

        The mean of the charging current is that of what the loads take, and its peak no more than what the
        sources' own ohms let through: RMS squared is at most mean times peak.
        """
        if not smooths:
            return taken_a
        peak_a = taken_a + sum(self._reach.most_v / piece.row[1] for _, piece in self._sources)
        return math.sqrt(taken_a * peak_a)

    @property
    def total_a(self) -> float:
        """What any conductor carries at most."""
        return self._total_a

    def of_supply(self, part: PartId) -> float:
        """Return the most one supply gives or takes: by itself, or by what is wired to either of its ends."""
        mine = [piece for owner, piece in self._sources if owner == part]
        own = max((max(gives_a(p, self._reach), sinks_a(p, self._reach)) for p in mine), default=math.inf)
        ends = [self._at(piece, end) for piece in mine[:1] for end in (piece.a, piece.b)]
        return min([own, self._total_a, *ends])

    def _at(self, source: Piece, node: int) -> float:
        """Return what can come to a node besides a source's own current."""
        total = 0.0
        for name, piece in self._pieces.every():
            if node not in (piece.a, piece.b) or piece is source:
                continue
            if piece.sort == LOAD:
                total += self._load_a(name, piece)
            else:
                total += self.of_conductors.get(name, math.inf) if piece.sort == CONDUCTOR else math.inf
        return total

    @cached_property
    def of_conductors(self) -> dict[str, float]:
        """The most of each wire and fuse: less than the total where it is the only way to some nodes."""
        import networkx as nx

        fuses = [part for part, some in self._pieces.fixed.items() if [p.sort for p in some] == [CONDUCTOR]]
        found = dict.fromkeys([*self._pieces.wires, *fuses], self._total_a)
        graph = nx.MultiGraph()
        for name, piece in self._pieces.every():
            if piece.sort == CONDUCTOR:
                graph.add_edge(piece.a, piece.b, name=name)
        simple = nx.Graph((a, b) for a, b in graph.edges() if a != b)
        for a, b in list(nx.bridges(simple)):
            if graph.number_of_edges(a, b) > 1:
                continue
            (name,) = (data["name"] for data in graph[a][b].values())
            if name in found:
                simple.remove_edge(a, b)
                sides = [nx.node_connected_component(simple, end) for end in (a, b)]
                simple.add_edge(a, b)
                found[name] = min([found[name], *map(self._crossing, sides)])
        return found

    def _crossing(self, nodes: set[int]) -> float:
        """Return what leaves some nodes through loads, diodes and sources at most."""

        def crosses(piece: Piece) -> bool:
            return (piece.a in nodes) != (piece.b in nodes)

        if math.isinf(self._total_a):
            return math.inf
        every = self._pieces.every()
        if any(p.sort == STORE and crosses(p) for _, p in every):
            return self._total_a
        whole = self._sum(lambda piece: piece.sort != SOURCE and crosses(piece))
        whole += sum(
            max(gives_a(p, self._reach), sinks_a(p, self._reach)) for _, p in self._sources if crosses(p)
        )
        diodes = [p for _, p in every if p.sort == DIODE and crosses(p)]
        behind = self._taken_apart.behind(diodes, nodes)
        if behind is None:
            return self._total_a
        for part in behind:
            taken = sum(self._load_a(owner, piece) for owner, piece in part.loads)
            whole += self._charging(taken, part.stores > 0)
        return whole

    def _sum(self, chosen: Chosen) -> float:
        """Return what the chosen loads take at most together, one part of them held and one moving."""
        whole = sum(self._most(part, pieces, chosen) for part, pieces in self._pieces.fixed.items())
        more: dict[str, float] = {HELD: 0.0, MOVING: 0.0}
        for option in self._pieces.options:
            forms = self._pieces.forms[option.part]
            takes = {name: self._most(option.part, pieces, chosen) for name, pieces in forms.items()}
            lasting = max(takes[c.position] for c in of(option, LASTING))
            whole += lasting
            for how in more:
                more[how] = max([more[how], *(takes[c.position] - lasting for c in of(option, how))])
        return whole + sum(more.values())

    def _most(self, part: PartId, pieces: Sequence[Piece], chosen: Chosen) -> float:
        return sum(self._load_a(part, piece) for piece in pieces if chosen(piece))

    def _load_a(self, part: PartId, piece: Piece) -> float:
        """Return what a branch takes; a source takes what others push back into it."""
        if piece.sort in (CONDUCTOR, DIODE, STORE):
            return 0.0
        if piece.sort == SOURCE:
            return sinks_a(piece, self._reach)
        compiled = self._assembly.parts[part]
        if compiled.kind.behaviour == "converter":
            return input_a(compiled.values, piece.role, piece)
        return load_a(piece, self._reach.held() if self._smooths else self._reach)
