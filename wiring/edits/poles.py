"""Which end of which supply each terminal is joined to, over wires, contacts, fuses, blocks and plugs."""

from collections import defaultdict
from collections.abc import Iterator, Mapping
from typing import NamedTuple

from wiring.catalogue.kind import Kind
from wiring.plan.names import PartId, TerminalRef
from wiring.plan.plan import Plan

FIRM = ("fuse", "resettable_fuse", "bus", "pairs", "separate")  # closed as long as they are whole
_Joints = dict[TerminalRef, list[TerminalRef]]
PLUS_MARKS, MINUS_MARKS = ("+", "~"), ("-", "~")


class Pole(NamedTuple):
    """The end of a supply a terminal is joined to, and how many joints and parts lie between."""

    source: PartId
    is_plus: bool  # or the first leg of an AC supply
    steps: int
    switched: bool = False  # every way to it leads over a contact


def source_ends(kind: Kind) -> tuple[str, str] | None:
    """Return plus and minus of a supply or battery, or its two AC legs; None for anything else."""
    if kind.purpose != "feed":
        return None
    for marks in (("+", "-"), ("~", "~")):
        names = [t.name for t in kind.terminals if t.mark in marks]
        if len(names) == 2:
            return names[0], names[1]
    return None


_last: tuple[object, object, Mapping[TerminalRef, Pole]] | None = None  # of the last plan; replaced whole


def poles(plan: Plan, kinds: Mapping[str, Kind]) -> Mapping[TerminalRef, Pole]:
    """Return the pole of every terminal that is joined to one; a terminal that reaches two is left out.

    Contacts count as closed in whichever position they close; nothing is followed through a load. One act
    asks several times: the answer for the last plan is kept.
    """
    global _last
    last = _last
    if last is not None and last[0] is plan and last[1] is kinds:
        return last[2]
    found = _poles(plan, kinds)
    _last = plan, kinds, found
    return found


def _poles(plan: Plan, kinds: Mapping[str, Kind]) -> dict[TerminalRef, Pole]:
    firm: _Joints = defaultdict(list)  # whatever stands how
    contacts: _Joints = defaultdict(list)
    for a, b, is_contact in _joints(plan, kinds):
        table = contacts if is_contact else firm
        table[a].append(b)
        table[b].append(a)
    found: dict[TerminalRef, Pole] = {}
    doubtful: set[TerminalRef] = set()
    for part in plan.parts.values():
        kind = kinds.get(part.kind)
        ends = source_ends(kind) if kind is not None else None
        for at, name in enumerate(ends or ()):
            start = TerminalRef(part.id, name)
            unswitched = _reached((firm,), start)
            for ref, steps in _reached((firm, contacts), start).items():
                pole = Pole(part.id, at == 0, steps, ref not in unswitched)
                if ref in found and found[ref][:2] != pole[:2]:
                    doubtful.add(ref)
                else:
                    found[ref] = pole
    return {ref: pole for ref, pole in found.items() if ref not in doubtful}


def joined(plan: Plan, kinds: Mapping[str, Kind]) -> Mapping[TerminalRef, list[TerminalRef]]:
    """Return what each terminal is joined to, contacts closed."""
    table: _Joints = defaultdict(list)
    for a, b, _ in _joints(plan, kinds):
        table[a].append(b)
        table[b].append(a)
    return table


def _joints(plan: Plan, kinds: Mapping[str, Kind]) -> Iterator[tuple[TerminalRef, TerminalRef, bool]]:
    """Walk what joins two terminals; True for a contact that opens and closes."""
    for wire in plan.wires.values():
        yield wire.start, wire.end, False
    for part in plan.parts.values():
        kind = kinds.get(part.kind)
        if kind is None or (not kind.positions and kind.behaviour != "bus"):
            continue
        pairs = [pair for position in kind.positions for pair in position.closes]
        if kind.behaviour == "bus":
            first, *others = (t.name for t in kind.terminals)
            pairs = [(first, other) for other in others]  # every terminal is the same metal
        for a, b in pairs:
            yield TerminalRef(part.id, a), TerminalRef(part.id, b), kind.behaviour not in FIRM


def _reached(tables: tuple[_Joints, ...], start: TerminalRef) -> dict[TerminalRef, int]:
    """Return every terminal that is joined to one, with the fewest joints to it."""
    reached, waiting = {start: 0}, [start]
    for here in waiting:  # grows while it is walked
        steps = reached[here] + 1
        for table in tables:
            for there in table.get(here, ()):
                if there not in reached:
                    reached[there] = steps
                    waiting.append(there)
    return reached
