"""What is not joined up yet: wires and terminals left loose, parts not wired, kinds not known."""

from collections.abc import Iterator

from wiring.catalogue.kind import Kind
from wiring.findings.finding import Finding, Rank
from wiring.findings.situation import Situation
from wiring.findings.words import do, listed, part_names, wire_names
from wiring.plan.designations import terminal_label
from wiring.plan.names import TerminalRef
from wiring.plan.part import Part
from wiring.studies.roles import NEEDED

_Ends = dict[TerminalRef, list[str]]


def find(situation: Situation) -> Iterator[Finding]:
    """Find loose ends of each sort, one finding a sort."""
    ends_at = _wires_by_terminal(situation)
    names_at: dict[str, set[str]] = {}
    for ref in ends_at:
        names_at.setdefault(ref.part, set()).add(ref.terminal)
    yield from _unknown(situation)
    yield from _nowhere(situation, ends_at)
    bare: list[str] = []
    free: list[TerminalRef] = []
    dead: list[TerminalRef] = []
    for part in situation.plan.parts.values():
        kind = situation.kinds.get(part.kind)
        if kind is None or not kind.terminals:
            continue
        reached = names_at.get(part.id)
        wired = {t.name for t in kind.terminals if t.name in reached} if reached else None
        if not wired:
            bare.append(part.id)
            continue
        free += [TerminalRef(part.id, name) for name in _missing(kind, wired)]
        dead += [TerminalRef(part.id, name) for name in _dead_ends(kind, part, wired, ends_at)]
    yield from _free(situation, free)
    yield from _loose(situation, dead, ends_at)
    if bare:
        yield Finding(
            "not-wired",
            Rank.NOTE,
            f"{part_names(situation.plan, bare)} {do(len(bare), 'has', 'have')} no wires yet.",
            "Nothing is known of it until it is wired."
            if len(bare) == 1
            else "Nothing is known of them until they are wired.",
            f"Wire {do(len(bare), 'it', 'them')}, or take {do(len(bare), 'it', 'them')} out of the plan.",
            tuple(bare),
        )


def _wires_by_terminal(situation: Situation) -> _Ends:
    ends_at: _Ends = {}
    for wire in situation.plan.wires.values():
        ends_at.setdefault(wire.start, []).append(wire.id)
        ends_at.setdefault(wire.end, []).append(wire.id)
    return ends_at


def _unknown(situation: Situation) -> Iterator[Finding]:
    plan = situation.plan
    strangers: dict[str, list[str]] = {}
    for part in plan.parts.values():
        if part.kind not in situation.kinds:
            strangers.setdefault(part.kind, []).append(part.id)
    for kind, parts in strangers.items():
        yield Finding(
            "unknown-kind",
            Rank.WEAK,
            f"{part_names(plan, parts)} {do(len(parts), 'is', 'are')} of the kind “{kind[:40]}”, "
            "which is not in the catalogue.",
            "It cannot be calculated, and is left out of all figures.",
            "Add that kind to your own catalogue folder, or put another part in its place.",
            tuple(parts),
        )


def _nowhere(situation: Situation, ends_at: _Ends) -> Iterator[Finding]:
    plan = situation.plan
    lost = {ref for ref in ends_at if not _exists(situation, ref)}
    wires = [w.id for w in plan.wires.values() if w.start in lost or w.end in lost] if lost else []
    if wires:
        yield Finding(
            "wire-nowhere",
            Rank.WEAK,
            f"{wire_names(plan, wires)} {do(len(wires), 'ends', 'end')} on a terminal that is not there.",
            "A wire without two ends carries nothing.",
            f"Draw {do(len(wires), 'it', 'them')} again, or remove {do(len(wires), 'it', 'them')}.",
            (),
            tuple(wires),
        )


def _exists(situation: Situation, ref: TerminalRef) -> bool:
    part = situation.plan.parts.get(ref.part)
    if part is None:
        return False
    kind = situation.kinds.get(part.kind)
    return kind is None or any(t.name == ref.terminal for t in kind.terminals)


def _free(situation: Situation, free: list[TerminalRef]) -> Iterator[Finding]:
    if free:
        names = listed([terminal_label(situation.plan, ref) for ref in free])
        yield Finding(
            "terminal-free",
            Rank.WEAK,
            f"{names} {do(len(free), 'has', 'have')} no wire, though the part is wired elsewhere.",
            "A part cannot work with only some of its terminals wired.",
            f"Wire {names}, or take the other wires off.",
            tuple(dict.fromkeys(ref.part for ref in free)),
        )


def _loose(situation: Situation, dead: list[TerminalRef], ends_at: _Ends) -> Iterator[Finding]:
    if dead:
        names = listed([terminal_label(situation.plan, ref) for ref in dead])
        wires = tuple(dict.fromkeys(wire for ref in dead for wire in ends_at[ref]))
        yield Finding(
            "wire-loose",
            Rank.WEAK,
            f"{wire_names(situation.plan, wires)} {do(len(wires), 'goes', 'go')} no further than {names}.",
            "A wire that leads nowhere carries nothing.",
            "Bring a second wire to the same place, or remove the first.",
            tuple(dict.fromkeys(ref.part for ref in dead)),
            wires,
        )


def _missing(kind: Kind, wired: set[str]) -> list[str]:
    if kind.behaviour == "twin_coil" and wired == {"C"}:
        return ["N", "R"]
    needed = NEEDED.get(kind.behaviour, ())
    return [name for name in needed if name not in wired]


def _dead_ends(kind: Kind, part: Part, wired: set[str], ends_at: _Ends) -> list[str]:
    """Return the terminals of a joint or switch that a wire reaches and nothing leaves."""
    if kind.behaviour == "separate":
        return [name for name in sorted(wired) if len(ends_at[TerminalRef(part.id, name)]) == 1]
    if kind.behaviour == "bus":
        only = next(iter(wired))
        return [only] if len(wired) == 1 and len(ends_at[TerminalRef(part.id, only)]) == 1 else []
    if kind.behaviour == "pairs":
        twin = {"a": "b", "b": "a"}
        return [
            name for name in sorted(wired) if name[-1] in twin and f"{name[:-1]}{twin[name[-1]]}" not in wired
        ]
    if kind.behaviour == "switch":
        met = {a: {b for a2, b in _closes(kind) if a2 == a} for a in wired}
        return [
            name
            for name in sorted(wired)
            if not met[name] & wired and len(ends_at[TerminalRef(part.id, name)]) == 1
        ]
    return []


def _closes(kind: Kind) -> set[tuple[str, str]]:
    pairs = {pair for position in kind.positions for pair in position.closes}
    return pairs | {(b, a) for a, b in pairs}
