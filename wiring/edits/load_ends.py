"""At which terminals current goes into and out of loads, fuses and switches."""

from collections.abc import Mapping

from wiring.catalogue.kind import Kind
from wiring.plan.names import TerminalRef
from wiring.plan.part import Part

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
