"""Parts and wires turned into branches, each kept for as long as the part or wire is the same object."""

from collections.abc import Mapping
from typing import Any, NamedTuple

from wiring.catalogue.kind import Kind, Position
from wiring.circuit.behaviours.all_behaviours import BEHAVIOURS
from wiring.circuit.behaviours.piece import Behaviour, Piece, UnusableError, Values
from wiring.circuit.branches.laws import LAW_NUMBER, WIDTH
from wiring.circuit.branches.resistor import LEAST_OHMS
from wiring.plan.lengths import cut_length_m
from wiring.plan.names import TerminalRef
from wiring.plan.part import Part
from wiring.plan.plan import Plan
from wiring.plan.wire import Wire
from wiring.standards.conductors import ohm_per_m

LONGEST_M = 10_000.0
MOST_KEPT = 20_000  # parts or wires; then all are forgotten and made anew
Pairs = tuple[tuple[int, int], ...]  # of terminals, by their place in the kind


class CompiledPart(NamedTuple):
    """A part as the solver sees it; `trouble` says why it is left out."""

    part: Part
    kind: Kind
    behaviour: Behaviour
    values: Values
    position: str
    refs: tuple[TerminalRef, ...]
    laws: tuple[int, ...] = ()  # one entry a branch
    ends: Pairs = ()
    rows: tuple[tuple[float, ...], ...] = ()
    roles: tuple[str, ...] = ()
    ties: Pairs = ()
    links: Pairs = ()  # what it can join in any position
    trouble: str = ""


class _KeptPart(NamedTuple):
    """What was made from one part; it holds the part, so that its id is not given to another."""

    part: Part
    kind: Kind
    by_position: dict[str, CompiledPart]


class _KeptWire(NamedTuple):
    wire: Wire
    around: tuple[object, ...]
    ohms: float


_parts: dict[int, _KeptPart] = {}
_wires: dict[int, _KeptWire] = {}


def compiled_part(part: Part, kind: Kind, wanted: str) -> CompiledPart:
    """Return the part's branches when it stands in the position of that name (or its usual one)."""
    kept = _parts.get(id(part))
    if kept is None or kept.kind is not kind:
        if len(_parts) >= MOST_KEPT:
            _parts.clear()
        kept = _parts[id(part)] = _KeptPart(part, kind, {})
    found = kept.by_position.get(wanted)
    if found is None:
        found = kept.by_position[wanted] = _compile(part, kind, wanted)
    return found


def standing(part: Part, kind: Kind, wanted: str) -> Position | None:
    """Return the position a part stands in: the wanted one, else its own, else its kind's usual one."""
    names = {p.name: p for p in kind.positions}
    for name in (wanted, part.position, kind.in_use):
        if name in names:
            return names[name]
    return kind.positions[0] if kind.positions else None


def _compile(part: Part, kind: Kind, wanted: str) -> CompiledPart:
    behaviour = BEHAVIOURS.get(kind.behaviour)
    position = standing(part, kind, wanted)
    values = kind.values(part.settings)
    refs = tuple(TerminalRef(part.id, t.name) for t in kind.terminals)
    name = position.name if position else ""
    bare = CompiledPart(part, kind, behaviour or Behaviour(_nothing), values, name, refs)
    if behaviour is None:
        return bare._replace(trouble="its behaviour is unknown.")
    terminals = tuple(t.name for t in kind.terminals)
    place = {terminal: number for number, terminal in enumerate(terminals)}
    try:
        piece = behaviour.compile(values, position, terminals)
        links: dict[tuple[int, int], None] = {}
        for other in kind.positions or (None,):
            links |= dict.fromkeys(_joined(behaviour.compile(values, other, terminals), place))
    except UnusableError as error:
        return bare._replace(trouble=error.worded(kind))
    except ArithmeticError:
        return bare._replace(trouble="its settings are too far from anything real.")
    except KeyError as error:
        return bare._replace(trouble=f"its kind has no terminal {error.args[0]}.")
    return bare._replace(
        laws=tuple(LAW_NUMBER[b.law] for b in piece.branches),
        ends=tuple((place[b.a], place[b.b]) for b in piece.branches),
        rows=tuple(b.values + (0.0,) * (WIDTH - len(b.values)) for b in piece.branches),
        roles=tuple(b.role for b in piece.branches),
        ties=tuple((place[a], place[b]) for a, b in piece.ties),
        links=tuple(links),
    )


def _joined(piece: Piece, place: Mapping[str, int]) -> list[tuple[int, int]]:
    return [(place[b.a], place[b.b]) for b in piece.branches] + [(place[a], place[b]) for a, b in piece.ties]


def _nothing(values: Mapping[str, Any], position: Position | None, terminals: tuple[str, ...]) -> Piece:
    return Piece()


def wire_ohms(plan: Plan, kinds: Mapping[str, Kind], wire: Wire) -> float:
    """Return a wire's resistance at the plan's room temperature; ValueError for a size nobody knows."""
    one, other = plan.parts.get(wire.start.part), plan.parts.get(wire.end.part)
    around = (plan.habits, one, other, kinds, plan.wireways if wire.along else None)
    kept = _wires.get(id(wire))
    if kept is not None:
        if all(was is now for was, now in zip(kept.around, around, strict=True)):
            return kept.ohms
    if len(_wires) >= MOST_KEPT:
        _wires.clear()
    per_m = ohm_per_m(wire.size, wire.solid, plan.habits.ambient_c)
    length_m = cut_length_m(plan, kinds, wire)
    if not 0.0 <= length_m <= LONGEST_M:
        raise ValueError("its length must lie between 0 and 10 km.")
    ohms = max(per_m * length_m, LEAST_OHMS)
    _wires[id(wire)] = _KeptWire(wire, around, ohms)
    return ohms
