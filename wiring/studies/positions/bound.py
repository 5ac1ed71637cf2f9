"""What no set of positions can exceed, where there are too many sets to solve them all.

With one source, and nothing else that pushes, no two nodes are farther apart than the source's volts, and
what a part takes never falls as its volts rise (a module of one power takes most at its least volts): so
each part takes at most what it takes there. Where no allowed set joins the source's two ends by conductors,
all that flows in conductors goes to parts and comes from parts, none of it round in circles, as conductors
only resist: so a conductor carries at most what all parts together take; and one that is the only way to
some parts, whatever the switches do, at most what those take.
"""

import math
from collections.abc import Iterator, Mapping, Sequence
from itertools import product
from typing import Any

import numpy as np

from wiring.catalogue.kind import Kind
from wiring.circuit.assembly import assemble
from wiring.circuit.branches.laws import LAWS
from wiring.circuit.compiled import CompiledPart, compiled_part
from wiring.plan.names import PartId
from wiring.plan.plan import Plan
from wiring.plan.positions import Positions
from wiring.studies.positions.options import HELD, LASTING, MOVING, Option
from wiring.studies.positions.sets import of

CONDUCTORS = frozenset({"wire", "contact", "fuse"})
OF_THEIR_OWN = frozenset({"relay", "converter"})  # what they do is not told by positions
MOST_SETS = 256  # of the switches that lie together between the same conductors


class Bound:
    """The most that one family can carry; infinite where nothing is proved."""

    def __init__(
        self, plan: Plan, kinds: Mapping[str, Kind], base: Positions, options: Sequence[Option]
    ) -> None:
        self._assembly = assemble(plan, kinds, base)
        self._forms = {
            option.part: {
                choice.position: compiled_part(plan.parts[option.part], kinds[plan.parts[option.part].kind],
                                               choice.position, plan.habits.ambient_c)
                for choice in option.choices
            }
            for option in options
        }  # fmt: skip
        self._options = options
        self._emf_v = 0.0
        self._total_a = math.inf
        if self._one_source() and not self._can_short():
            self._total_a = self._sum(set(self._assembly.parts))

    @property
    def total_a(self) -> float:
        """What the source, and so any conductor, carries at most."""
        return self._total_a

    def of_wires(self) -> dict[str, float]:
        """Return the most of each wire: less than the total where it is the only way to some parts."""
        import networkx as nx

        wires = dict.fromkeys(self._assembly.wires, self._total_a)
        if math.isinf(self._total_a):
            return wires
        graph = nx.MultiGraph()
        for a, b, name in self._conductors(every=True):
            graph.add_edge(a, b, name=name)
        simple = nx.Graph((a, b) for a, b in graph.edges())
        simple.remove_edges_from([(a, b) for a, b in simple.edges() if a == b])
        source = int(self._assembly.sources[0])
        ends = {int(self._assembly.a[source]), int(self._assembly.b[source])}
        at = self._parts_at()
        for a, b in list(nx.bridges(simple)):
            if graph.number_of_edges(a, b) > 1:
                continue
            (name,) = (data["name"] for data in graph[a][b].values())
            if name not in wires:
                continue
            simple.remove_edge(a, b)
            for side in (a, b):
                nodes = nx.node_connected_component(simple, side)
                if ends.isdisjoint(nodes):
                    wires[name] = min(wires[name], self._sum({p for n in nodes for p in at.get(n, ())}))
            simple.add_edge(a, b)
        return wires

    def _one_source(self) -> bool:
        assembly = self._assembly
        behaviours = {c.kind.behaviour for c in assembly.parts.values()}
        laws = {LAWS[n].name for n in np.unique(assembly.laws)}
        if len(assembly.sources) != 1 or behaviours & OF_THEIR_OWN or "capacitor" in laws:
            return False
        self._emf_v = abs(float(assembly.values[assembly.sources[0], 0]))
        return True

    def _conductors(self, *, every: bool) -> Iterator[tuple[int, int, str]]:
        """Walk wires and contacts: those that never change, or all that any position makes."""
        assembly = self._assembly
        for branch, role in enumerate(assembly.roles):
            if role in CONDUCTORS and assembly.owners[branch] not in self._forms:
                yield int(assembly.a[branch]), int(assembly.b[branch]), assembly.owners[branch]
        for part, forms in self._forms.items() if every else ():
            for form in forms.values():
                yield from ((a, b, part) for a, b in self._contacts(part, form))

    def _contacts(self, part: PartId, form: CompiledPart) -> list[tuple[int, int]]:
        begin, node_of = self._assembly.first_terminal[part], self._assembly.node_of
        return [
            (int(node_of[begin + a]), int(node_of[begin + b]))
            for (a, b), role in zip(form.ends, form.roles, strict=True)
            if role in CONDUCTORS
        ]

    def _can_short(self) -> bool:
        """Whether any allowed set might join the source's ends.

        Switches that share no conductor but its ends' are looked at apart, since a way from end to end leads
        through one such lot alone.
        """
        import networkx as nx

        fixed = nx.Graph((a, b) for a, b, _ in self._conductors(every=False))
        source = int(self._assembly.sources[0])
        fixed.add_nodes_from((int(self._assembly.a[source]), int(self._assembly.b[source])))
        net: dict[int, Any] = {
            n: place for place, ns in enumerate(nx.connected_components(fixed)) for n in ns
        }
        plus, minus = net[int(self._assembly.a[source])], net[int(self._assembly.b[source])]
        if plus == minus:
            return True
        nets = {
            part: {
                name: [
                    (net.get(a, ("node", a)), net.get(b, ("node", b))) for a, b in self._contacts(part, form)
                ]
                for name, form in forms.items()
            }
            for part, forms in self._forms.items()
        }
        lots = nx.Graph()
        for part, by_position in nets.items():
            lots.add_node(("part", part))
            touched = {n for pairs in by_position.values() for pair in pairs for n in pair} - {plus, minus}
            lots.add_edges_from((("part", part), ("net", n)) for n in touched)
        return any(
            _joins([list(nets[name].values()) for sort, name in lot if sort == "part"], plus, minus)
            for lot in nx.connected_components(lots)
        )

    def _parts_at(self) -> dict[int, set[PartId]]:
        found: dict[int, set[PartId]] = {}
        for part, compiled in self._assembly.parts.items():
            begin = self._assembly.first_terminal[part]
            for forms in self._forms.get(part, {"": compiled}).values():
                for ends, role in zip(forms.ends, forms.roles, strict=True):
                    if role not in CONDUCTORS:
                        for end in ends:
                            found.setdefault(int(self._assembly.node_of[begin + end]), set()).add(part)
        return found

    def _sum(self, parts: set[PartId]) -> float:
        """Return what parts take at most together, one of them held and one moving."""
        whole = 0.0
        more: dict[str, float] = {HELD: 0.0, MOVING: 0.0}
        by_part = {option.part: option for option in self._options}
        for part in parts:
            option = by_part.get(part)
            if option is None:
                whole += self._most(self._assembly.parts[part])
                continue
            takes = {c.position: self._most(self._forms[part][c.position]) for c in option.choices}
            lasting = max(takes[c.position] for c in of(option, LASTING))
            whole += lasting
            for how in more:
                more[how] = max([more[how], *(takes[c.position] - lasting for c in of(option, how))])
        return whole + sum(more.values())

    def _most(self, compiled: CompiledPart) -> float:
        total = 0.0
        for law_number, row, role in zip(compiled.laws, compiled.rows, compiled.roles, strict=True):
            law = LAWS[law_number]
            if role in CONDUCTORS or law.name == "source":
                continue
            at = np.array(
                [-self._emf_v, self._emf_v, *([min(row[1], self._emf_v)] if not law.monotone else [])]
            )
            amps, _ = law.current(at, np.repeat(np.array(row)[:, None], len(at), axis=1))
            total += float(np.abs(amps).max())
        return total


def _joins(parts: Sequence[Sequence[Sequence[tuple[Any, Any]]]], plus: object, minus: object) -> bool:
    """Whether some choice of positions, one a part, joins plus to minus; too many to try count as yes."""
    import networkx as nx

    if math.prod(map(len, parts)) > MOST_SETS:
        return True
    for chosen in product(*parts):
        graph = nx.Graph(pair for pairs in chosen for pair in pairs)
        if plus in graph and minus in graph and nx.has_path(graph, plus, minus):
            return True
    return False
