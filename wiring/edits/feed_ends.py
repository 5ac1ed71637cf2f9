"""What feeding is about: which selected parts want current, which give it, which stand in between."""

from collections.abc import Iterable, Mapping
from typing import NamedTuple

from wiring.catalogue.kind import Kind
from wiring.edits.poles import source_ends
from wiring.edits.tables import part_of
from wiring.plan.names import PartId, TerminalRef
from wiring.plan.part import Part
from wiring.plan.plan import Plan

# Plus (or first leg) and minus (or second) of everything that two conductors feed.
LOAD_ENDS: Mapping[str, tuple[str, str]] = {
    "led": ("A", "K"),
    "strip": ("+", "-"),
    "filament": ("1", "2"),
    "flasher": ("+", "-"),
    "constant_current": ("+", "-"),
    "constant_power": ("+", "-"),
    "stall_motor": ("M1", "M2"),
    "servo": ("+", "-"),
    "relay": ("A1", "A2"),
    "discharge_unit": ("+", "-"),
}
# Where current comes in and goes out of what can interrupt it; the first pair a kind has is taken.
GATE_ENDS: Mapping[str, tuple[tuple[str, str], ...]] = {
    "switch": (("13", "14"), ("11", "14"), ("11", "12")),
    "fuse": (("1", "2"),),
    "resettable_fuse": (("1", "2"),),
}
# The same for a second pole that makes together with the first.
SECOND_ENDS: Mapping[str, tuple[tuple[str, str], ...]] = {
    "switch": (("23", "24"), ("21", "24"), ("21", "22"))
}
COIL_ENDS = ("N", "C", "R")
TAPS = frozenset({"separate", "pairs"})


class Group(NamedTuple):
    """Loads that are fed as one: a single one, or LEDs in series behind one resistor."""

    parts: tuple[PartId, ...]
    ohms: float = 0.0  # of the resistor in front; 0 for none
    watts: float = 0.25


class Sorted(NamedTuple):
    """The selected parts by what they are to a feed, in plan order."""

    sources: tuple[Part, ...]
    gates: tuple[Part, ...]  # switches and fuses
    blocks: tuple[Part, ...]  # all terminals one
    taps: tuple[Part, ...]  # terminal strips and plugs
    loads: tuple[Part, ...]  # that still lack a wire on one of their ends
    coils: tuple[Part, ...] = ()  # twin-coil motors that still lack one
    throwers: tuple[Part, ...] = ()  # unwired contacts that let go by themselves or stand off: for coils


def load_ends(part: Part, kind: Kind) -> tuple[TerminalRef, TerminalRef] | None:
    """Return plus and minus of a load; None for anything else."""
    names = LOAD_ENDS.get(kind.behaviour)
    if names is None or any(n not in {t.name for t in kind.terminals} for n in names):
        return None
    return TerminalRef(part.id, names[0]), TerminalRef(part.id, names[1])


def gate_ends(part: Part, kind: Kind) -> tuple[TerminalRef, TerminalRef] | None:
    """Return the way in and the way out of a switch or fuse; None for anything else."""
    closed = {frozenset(pair) for position in kind.positions for pair in position.closes}
    for a, b in GATE_ENDS.get(kind.behaviour, ()):
        if frozenset((a, b)) in closed:
            return TerminalRef(part.id, a), TerminalRef(part.id, b)
    return None


def second_ends(part: Part, kind: Kind) -> tuple[TerminalRef, TerminalRef] | None:
    """Return the way in and out of a second pole; None for what has only one."""
    closed = {frozenset(pair) for position in kind.positions for pair in position.closes}
    for a, b in SECOND_ENDS.get(kind.behaviour, ()):
        if frozenset((a, b)) in closed:
            return TerminalRef(part.id, a), TerminalRef(part.id, b)
    return None


def lets_go(kind: Kind) -> bool:
    """Whether a switch can send a pulse: a push-to-make button, or a changeover that can stand off."""
    if kind.behaviour != "switch":
        return False
    if any(position.momentary and ("13", "14") in position.closes for position in kind.positions):
        return True
    closing = {pair for position in kind.positions for pair in position.closes}
    return any(not p.closes for p in kind.positions) and closing == {("11", "14"), ("11", "12")}


def is_bare_led(part: Part, kind: Kind) -> bool:
    """Whether a part is an LED without a resistor of its own."""
    return kind.behaviour == "led" and float(kind.values(part.settings).get("series_ohm", 0.0)) <= 0.0


def sorted_out(plan: Plan, kinds: Mapping[str, Kind], ids: Iterable[str]) -> Sorted:
    """Sort selected parts; wires among the ids are passed over. EditRefused for a part that is gone."""
    chosen = {part_of(plan, i).id for i in ids if i not in plan.wires}
    wired = {ref for wire in plan.wires.values() for ref in (wire.start, wire.end)}
    found: dict[str, list[Part]] = {name: [] for name in Sorted._fields}
    for part in plan.parts.values():
        kind = kinds.get(part.kind)
        if part.id in chosen and kind is not None:
            name = _role(part, kind, wired)
            if name:
                found[name].append(part)
    if found["coils"]:
        idle = [
            p for p in found["gates"] if lets_go(kinds[p.kind]) and not any(r.part == p.id for r in wired)
        ]
        found["throwers"] = idle
        found["gates"] = [p for p in found["gates"] if p not in idle]
    return Sorted(*(tuple(found[name]) for name in Sorted._fields))


def _role(part: Part, kind: Kind, wired: set[TerminalRef]) -> str:
    ends = load_ends(part, kind)
    if ends is not None:
        return "" if wired.issuperset(ends) else "loads"
    if kind.behaviour == "twin_coil":
        return "" if wired.issuperset(TerminalRef(part.id, n) for n in COIL_ENDS) else "coils"
    if gate_ends(part, kind) is not None:
        return "gates"
    if source_ends(kind) is not None:
        return "sources"
    if kind.behaviour == "bus":
        return "blocks"
    return "taps" if kind.behaviour in TAPS else ""
