"""What one part puts into the current paths of a circuit drawing: pieces with two ends.

A part with several contacts or coils is drawn in the detached way of IEC 61082: each piece stands in its own
path and carries the part's designation.
"""

from collections.abc import Iterable, Mapping
from typing import NamedTuple

from wiring.catalogue.kind import Kind
from wiring.plan.names import PartId, TerminalRef
from wiring.plan.part import Part

SOURCES = {"supply_regulated", "supply_unregulated", "supply_ac", "battery"}
INNER = "•"  # a joint inside a part, between its coils; no wire can reach it
JOINTS = {"separate", "bus", "pairs"}  # drawn as terminals in the line, they are no pieces of their own


class Piece(NamedTuple):
    """One two-ended piece: `start` is the end towards plus when the part is the right way round."""

    part: PartId
    start: str
    end: str
    symbol: str  # empty for a mere lead
    state: str = ""
    source: bool = False
    idle: str = ""  # the throw of a changeover that carries nothing in this position
    main: bool = True  # carries the part's value and label, not only its designation

    @property
    def start_ref(self) -> TerminalRef:
        """The terminal at the start."""
        return TerminalRef(self.part, self.start)

    @property
    def end_ref(self) -> TerminalRef:
        """The terminal at the end."""
        return TerminalRef(self.part, self.end)

    @property
    def idle_ref(self) -> TerminalRef:
        """The idle throw."""
        return TerminalRef(self.part, self.idle)


def pieces_of(part: Part, kind: Kind, position: str, wired: Iterable[str]) -> tuple[Piece, ...]:
    """Return the pieces of a part as it stands; contacts without any wire are left out."""
    names = [t.name for t in kind.terminals]
    wired = set(wired)
    if kind.behaviour in JOINTS or len(names) < 2:
        return ()
    if kind.behaviour == "rectifier":
        return (
            Piece(part.id, "~1", "~2", kind.symbol),
            Piece(part.id, "+", "-", kind.symbol, source=True, main=False),
        )
    if kind.behaviour == "twin_coil":
        return (
            Piece(part.id, "N", INNER, kind.symbol),
            Piece(part.id, "R", INNER, kind.symbol, main=False),
            Piece(part.id, INNER, "C", "", main=False),
        )
    closed = _closes(kind, position)
    if kind.behaviour == "switch":
        contacts = _contacts(part, names, closed, wired, kind.symbol)
        return contacts or _contacts(part, names, closed, set(names), kind.symbol)
    if kind.behaviour in ("stall_motor", "relay"):
        coil = Piece(part.id, names[0], names[1], kind.symbol)
        rest = _contacts(part, names[2:], closed, wired, "contact")
        return (coil, *(c._replace(main=False) for c in rest))
    state = "blown" if position in ("blown", "tripped") else ""
    if kind.behaviour != "servo" and len(names) > 2 and "-" in names:  # feed and outputs with one return
        first, *others = (name for name in names if name != "-")
        outputs = tuple(Piece(part.id, name, "-", kind.symbol, source=True, main=False) for name in others)
        return (Piece(part.id, first, "-", kind.symbol, state), *outputs)
    source = kind.behaviour in SOURCES
    return (Piece(part.id, names[0], names[1], kind.symbol, state, source),)


def _closes(kind: Kind, position: str) -> set[frozenset[str]]:
    found: Mapping[str, tuple[tuple[str, str], ...]] = {p.name: p.closes for p in kind.positions}
    return {frozenset(pair) for pair in found.get(position, ())}


def _contacts(
    part: Part, names: list[str], closed: set[frozenset[str]], wired: set[str], symbol: str
) -> tuple[Piece, ...]:
    """Return one piece for each pole; the first figure of its terminal numbers tells the pole."""
    found: list[Piece] = []
    for pole in sorted({name[0] for name in names}):
        ends = sorted(name for name in names if name[0] == pole)
        if len(ends) < 2 or not wired & set(ends):
            continue
        main = not found
        if len(ends) == 2:
            state = "closed" if frozenset(ends) in closed else ""
            found.append(Piece(part.id, ends[0], ends[1], symbol, state, main=main))
            continue
        common, low, high = ends[:3]  # 11, 12, 14
        live = next((t for t in (high, low) if frozenset((common, t)) in closed), "")
        shown = live or (high if high in wired or low not in wired else low)
        state = "closed changeover" if live else "changeover"
        idle = low if shown == high else high
        found.append(Piece(part.id, shown, common, symbol, state, idle=idle, main=main))
    return tuple(found)
