"""Parts and wires turned into branches, each kept for as long as the part or wire is the same object."""

from collections import OrderedDict
from collections.abc import Mapping
from typing import Any, Generic, NamedTuple, TypeVar

from wiring.catalogue.kind import Kind, Position
from wiring.circuit.behaviours.all_behaviours import BEHAVIOURS
from wiring.circuit.behaviours.piece import Behaviour, Piece, UnusableError
from wiring.circuit.branches.resistor import LEAST_OHMS
from wiring.plan.lengths import cut_length_m
from wiring.plan.names import PartId
from wiring.plan.part import Part
from wiring.plan.plan import Plan
from wiring.plan.wire import Wire
from wiring.standards.conductors import ohm_per_m

KEPT = 20_000
T = TypeVar("T")


class Kept(Generic[T]):
    """Results by the identity of what they were made from; the makers are held, so an id is never reused."""

    def __init__(self) -> None:
        self._found: OrderedDict[tuple[int, ...], tuple[tuple[Any, ...], T]] = OrderedDict()

    def get(self, makers: tuple[Any, ...]) -> T | None:
        """Return the result made from these very objects, or None."""
        found = self._found.get(tuple(map(id, makers)))
        return None if found is None else found[1]

    def put(self, makers: tuple[Any, ...], result: T) -> T:
        """Keep a result; the oldest goes when there are too many."""
        self._found[tuple(map(id, makers))] = (makers, result)
        if len(self._found) > KEPT:
            self._found.popitem(last=False)
        return result


class CompiledPart(NamedTuple):
    """A part as the solver sees it; `trouble` says why it is left out."""

    part: Part
    kind: Kind
    behaviour: Behaviour
    values: Mapping[str, Any]
    position: str
    piece: Piece
    trouble: str = ""


_parts: Kept[dict[str, CompiledPart]] = Kept()
_wires: Kept[float] = Kept()


def compiled_part(part: Part, kind: Kind, wanted: str) -> CompiledPart:
    """Return the part's branches when it stands in the position of that name (or its usual one)."""
    by_position = _parts.get((part, kind))
    if by_position is None:
        by_position = _parts.put((part, kind), {})
    found = by_position.get(wanted)
    if found is None:
        found = by_position[wanted] = _compile(part, kind, wanted)
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
    name = position.name if position else ""
    values = kind.values(part.settings)
    if behaviour is None:
        return CompiledPart(
            part, kind, Behaviour(_nothing), values, name, Piece(), "its behaviour is unknown."
        )
    try:
        piece = behaviour.compile(values, position, tuple(t.name for t in kind.terminals))
    except UnusableError as error:
        return CompiledPart(part, kind, behaviour, values, name, Piece(), str(error))
    return CompiledPart(part, kind, behaviour, values, name, piece)


def _nothing(values: Mapping[str, Any], position: Position | None, terminals: tuple[str, ...]) -> Piece:
    return Piece()


def wire_ohms(plan: Plan, kinds: Mapping[str, Kind], wire: Wire) -> float:
    """Return a wire's resistance at the plan's room temperature; ValueError for a size nobody knows."""
    ends = _end_makers(plan, kinds, wire.start.part) + _end_makers(plan, kinds, wire.end.part)
    flat = (wire, plan.habits, *ends)
    found = _wires.get(flat)
    if found is None:
        length_m = cut_length_m(plan, kinds, wire)
        ohms = ohm_per_m(wire.size, wire.solid, plan.habits.ambient_c) * length_m
        found = _wires.put(flat, max(ohms, LEAST_OHMS))
    return found


def _end_makers(plan: Plan, kinds: Mapping[str, Kind], part: PartId) -> tuple[object, object]:
    there = plan.parts.get(part)
    return there, kinds.get(there.kind) if there is not None else None
