"""What the branches of a family are to a bound: conductors, diodes, loads, sources and smoothing capacitors.

Ends are nodes of the assembly. A part that can be thrown, or a relay, which throws itself, has a form for
each of its positions.
"""

from collections.abc import Mapping, Sequence
from typing import NamedTuple

from wiring.catalogue.kind import Kind
from wiring.circuit.assembly import Assembly
from wiring.circuit.branches.laws import LAWS
from wiring.circuit.compiled import CompiledPart, compiled_part
from wiring.plan.names import PartId
from wiring.plan.plan import Plan
from wiring.studies.positions.options import LASTING, Choice, Option

CONDUCTORS = frozenset({"wire", "contact", "fuse"})
DIODES = frozenset({"diode", "rectifier"})  # behaviours whose junctions limit no current by themselves
CONDUCTOR, DIODE, LOAD, SOURCE, STORE = "conductor", "diode", "load", "source", "store"


class Piece(NamedTuple):
    """One branch."""

    sort: str
    a: int
    b: int
    law: int
    row: tuple[float, ...]
    role: str


class Pieces(NamedTuple):
    """The branches of all wires and of all parts, the latter by part and position."""

    wires: Mapping[str, Piece]
    fixed: Mapping[PartId, tuple[Piece, ...]]  # of parts that are not thrown
    forms: Mapping[PartId, Mapping[str, tuple[Piece, ...]]]  # of those that are
    options: tuple[Option, ...]  # what can be thrown, relays among it as if they were free

    def every(self) -> list[tuple[str, Piece]]:
        """Return all branches that any position has, each with its wire or part."""
        found = [*self.wires.items()]
        found += [(part, piece) for part, pieces in self.fixed.items() for piece in pieces]
        for part, forms in self.forms.items():
            found += [(part, piece) for pieces in forms.values() for piece in pieces]
        return found


def pieces_of(plan: Plan, kinds: Mapping[str, Kind], assembly: Assembly, options: Sequence[Option]) -> Pieces:
    """Return the branches of a family; relays are taken to stand either way, whatever their coils get."""
    free = [
        Option(part, tuple(Choice(p.name, LASTING) for p in compiled.kind.positions))
        for part, compiled in assembly.parts.items()
        if compiled.kind.behaviour == "relay" and all(part != option.part for option in options)
    ]
    every = (*options, *free)
    thrown = {option.part for option in every}
    wires = {
        wire: Piece(CONDUCTOR, int(assembly.a[n]), int(assembly.b[n]), int(assembly.laws[n]),
                    tuple(assembly.values[n].tolist()), "wire")
        for wire, n in assembly.wires.items()
    }  # fmt: skip
    fixed = {
        part: _pieces(assembly, part, compiled)
        for part, compiled in assembly.parts.items()
        if part not in thrown
    }
    forms = {
        option.part: {
            choice.position: _pieces(assembly, option.part, _standing(plan, kinds, option.part, choice))
            for choice in option.choices
        }
        for option in every
    }
    return Pieces(wires, fixed, forms, every)


def _standing(plan: Plan, kinds: Mapping[str, Kind], part_id: PartId, choice: Choice) -> CompiledPart:
    part = plan.parts[part_id]
    return compiled_part(part, kinds[part.kind], choice.position, plan.habits.ambient_c)


def _pieces(assembly: Assembly, part: PartId, compiled: CompiledPart) -> tuple[Piece, ...]:
    begin, node_of = assembly.first_terminal[part], assembly.node_of
    behaviour, alternates = compiled.kind.behaviour, bool(assembly.alternating.any())
    rows = zip(compiled.laws, compiled.ends, compiled.rows, compiled.roles, strict=True)
    return tuple(
        Piece(
            _sort(LAWS[law].name, role, behaviour, alternates),
            int(node_of[begin + a]),
            int(node_of[begin + b]),
            law,
            row,
            role,
        )
        for law, (a, b), row, role in rows
    )


def _sort(law: str, role: str, behaviour: str, alternates: bool) -> str:
    if role in CONDUCTORS:
        return CONDUCTOR
    if law == "source":
        return SOURCE
    if law == "capacitor":
        return STORE if alternates else LOAD
    return DIODE if law == "junction" and behaviour in DIODES else LOAD
