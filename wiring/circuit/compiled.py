"""Parts turned into branches; parts that are alike but for where they stand share one mould."""

from collections.abc import Mapping
from typing import Any, NamedTuple

from wiring.catalogue.kind import Kind, Position
from wiring.circuit.behaviours.all_behaviours import BEHAVIOURS
from wiring.circuit.behaviours.piece import (
    AMBIENT,
    ROOM_C,
    Behaviour,
    Piece,
    Shine,
    UnusableError,
    Values,
)
from wiring.circuit.branches.laws import LAW_NUMBER, WIDTH
from wiring.plan.names import TerminalRef
from wiring.plan.part import Part

MOST_KEPT = 20_000  # moulds; then all are forgotten and made anew
Pairs = tuple[tuple[int, int], ...]  # of terminals, by their place in the kind


class Mould(NamedTuple):
    """What a kind with certain settings in a certain position is to the solver."""

    kind: Kind
    behaviour: Behaviour
    values: Values
    position: str
    laws: tuple[int, ...] = ()  # one entry a branch
    ends: Pairs = ()
    rows: tuple[tuple[float, ...], ...] = ()
    roles: tuple[str, ...] = ()
    ties: Pairs = ()
    links: Pairs = ()  # what it can join in any position
    trouble: str = ""
    shine: Shine | None = None  # of what gives light

    def joins_like(self, other: "Mould") -> bool:
        """Whether it has the same branches between the same terminals, whatever their values."""
        if self is other:
            return True
        if self.kind is not other.kind or self.trouble or other.trouble:
            return False
        mine = self.laws, self.ends, self.roles, self.ties, self.links
        return mine == (other.laws, other.ends, other.roles, other.ties, other.links)


class CompiledPart(NamedTuple):
    """A part as the solver sees it; `trouble` says why it is left out."""

    part: Part
    mould: Mould

    @property
    def kind(self) -> Kind:
        """Its kind."""
        return self.mould.kind

    @property
    def behaviour(self) -> Behaviour:
        """Its behaviour."""
        return self.mould.behaviour

    @property
    def values(self) -> Values:
        """Its settings' values."""
        return self.mould.values

    @property
    def position(self) -> str:
        """The name of the position it stands in."""
        return self.mould.position

    @property
    def refs(self) -> tuple[TerminalRef, ...]:
        """Its terminals."""
        part = self.part.id
        return tuple(TerminalRef(part, t.name) for t in self.mould.kind.terminals)

    @property
    def laws(self) -> tuple[int, ...]:
        """The law of each branch."""
        return self.mould.laws

    @property
    def ends(self) -> Pairs:
        """The terminals of each branch."""
        return self.mould.ends

    @property
    def rows(self) -> tuple[tuple[float, ...], ...]:
        """The values of each branch."""
        return self.mould.rows

    @property
    def roles(self) -> tuple[str, ...]:
        """The role of each branch."""
        return self.mould.roles

    @property
    def ties(self) -> Pairs:
        """Terminals that are one node."""
        return self.mould.ties

    @property
    def links(self) -> Pairs:
        """What it can join in any position."""
        return self.mould.links

    @property
    def trouble(self) -> str:
        """Why it is left out."""
        return self.mould.trouble


_moulds: dict[object, Mould] = {}


def compiled_part(part: Part, kind: Kind, wanted: str, ambient_c: float = ROOM_C) -> CompiledPart:
    """Return the part's branches when it stands in the position of that name (or its usual one)."""
    return CompiledPart(part, mould_of(part, kind, wanted, ambient_c))


def mould_of(part: Part, kind: Kind, wanted: str, ambient_c: float = ROOM_C) -> Mould:
    """Return the mould of a part that stands in the position of that name, in air of that temperature."""
    try:
        settings: object = frozenset(part.settings.items()) if part.settings else None
        key = (id(kind), wanted, part.position, settings, ambient_c)
        found = _moulds.get(key)
    except TypeError:  # a setting that is no plain value
        return _compile(part, kind, wanted, ambient_c)
    if found is None or found.kind is not kind:
        if len(_moulds) >= MOST_KEPT:
            _moulds.clear()
        found = _moulds[key] = _compile(part, kind, wanted, ambient_c)
    return found


def standing(part: Part, kind: Kind, wanted: str) -> Position | None:
    """Return the position a part stands in: the wanted one, else its own, else its kind's usual one."""
    names = {p.name: p for p in kind.positions}
    for name in (wanted, part.position, kind.in_use):
        if name in names:
            return names[name]
    return kind.positions[0] if kind.positions else None


def _compile(part: Part, kind: Kind, wanted: str, ambient_c: float) -> Mould:
    behaviour = BEHAVIOURS.get(kind.behaviour)
    position = standing(part, kind, wanted)
    values = {**kind.values(part.settings), AMBIENT: ambient_c}
    name = position.name if position else ""
    bare = Mould(kind, behaviour or Behaviour(_nothing), values, name)
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
        shine=behaviour.shine(values) if behaviour.shine is not None else None,
    )


def _joined(piece: Piece, place: Mapping[str, int]) -> list[tuple[int, int]]:
    return [(place[b.a], place[b.b]) for b in piece.branches] + [(place[a], place[b]) for a, b in piece.ties]


def _nothing(values: Mapping[str, Any], position: Position | None, terminals: tuple[str, ...]) -> Piece:
    return Piece()
