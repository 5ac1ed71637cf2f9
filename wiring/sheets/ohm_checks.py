"""What the meter says with the power off: no short on any feed, fuses whole, contacts as the lever stands."""

from collections.abc import Mapping, Sequence
from typing import NamedTuple

from wiring.catalogue.kind import Kind
from wiring.findings.situation import Situation
from wiring.plan.designations import part_label
from wiring.plan.names import TerminalRef
from wiring.plan.part import Part
from wiring.quantities.wording import worded
from wiring.sheets.designation_runs import run_words
from wiring.sheets.places import place_name

# Common practice, no source: cold filament lamps in parallel read above this; a short reads the leads alone.
SHORT_OHM = 1.0
_SUPPLIES = ("supply_regulated", "supply_unregulated", "supply_ac", "battery")

# By behaviour: the setting with the ohms, how far a sound part may lie from it, and where to measure.
# Windings scatter by a tenth and are warmer than on the sheet; common practice, no source.
_COILS: Mapping[str, tuple[str, float, tuple[tuple[str, str], ...]]] = {
    "twin_coil": ("coil_ohm", 0.2, (("C", "N"), ("C", "R"))),
    "relay": ("coil_ohm", 0.2, (("A1", "A2"),)),
    "resistor": ("resistance", 0.06, (("1", "2"),)),
}


class OhmCheck(NamedTuple):
    """One test with the beeper or the ohms range."""

    what: str
    where: str
    expect: str
    refs: tuple[TerminalRef, ...] = ()  # where the leads go; of the first of several switches


def ohm_checks(situation: Situation, place: str | None = None) -> tuple[OhmCheck, ...]:
    """Return the tests, of one place or of all: feeds, fuses, windings, then switches by position."""
    plan = situation.plan
    feeds: list[OhmCheck] = []
    fuses: list[OhmCheck] = []
    coils: list[OhmCheck] = []
    switches: dict[str, list[Part]] = {}
    for part in plan.parts.values():
        kind = situation.kinds.get(part.kind)
        if kind is None or (place is not None and place_name(plan, part) != place):
            continue
        label = part_label(plan, part.id)
        name = part.label or kind.title
        if kind.behaviour in _SUPPLIES:
            first, second = kind.terminals[0].name, kind.terminals[1].name
            where = f"the two feed wires taken off {label}:{first} and {label}:{second}"
            says = f"more than {SHORT_OHM:g} Ω, no steady beep"
            feeds.append(OhmCheck(name, where, says, _refs(part, first, second)))
        elif kind.behaviour in ("fuse", "resettable_fuse"):
            first, second = kind.terminals[0].name, kind.terminals[1].name
            where = f"{label}:{first} and {label}:{second}"
            fuses.append(OhmCheck(name, where, "a beep: the fuse is whole", _refs(part, first, second)))
        elif kind.behaviour in _COILS:
            coils += _windings(kind, part, label, name)
        elif kind.behaviour == "switch":
            switches.setdefault(kind.key, []).append(part)
    contacts = [
        check
        for key, parts in switches.items()
        for check in _contacts(situation.kinds[key], parts, [part_label(plan, p.id) for p in parts])
    ]
    return *feeds, *fuses, *coils, *contacts


def _windings(kind: Kind, part: Part, label: str, name: str) -> list[OhmCheck]:
    """Return what the windings of one part must read, from its own setting."""
    setting, share, pairs = _COILS[kind.behaviour]
    ohms = float(kind.values(part.settings).get(setting) or 0.0)
    if ohms <= 0.0:
        return []
    span = f"{worded(ohms * (1 - share), 'resistance')} to {worded(ohms * (1 + share), 'resistance')}"
    return [
        OhmCheck(
            name,
            f"{label}:{a} and {label}:{b}, one wire off",
            f"{worded(ohms, 'resistance')} ({span})",
            _refs(part, a, b),
        )
        for a, b in pairs
    ]


def _refs(part: Part, *terminals: str) -> tuple[TerminalRef, ...]:
    return tuple(TerminalRef(part.id, name) for name in terminals)


def _contacts(kind: Kind, parts: Sequence[Part], labels: Sequence[str]) -> list[OhmCheck]:
    """Return what all switches of one kind must do, position by position."""
    every = {pair for position in kind.positions for pair in position.closes}
    found = []
    for position in kind.positions:
        made = [f"{a}–{b}" for a, b in position.closes]
        parted = sorted(f"{a}–{b}" for a, b in every - set(position.closes))
        says = [f"beep on {', '.join(made)}"] if made else []
        says += [f"silence on {', '.join(parted)}"] if parted else []
        if says:
            where = f"terminals of {run_words(labels)}, {position.name}"
            used = dict.fromkeys(name for pair in position.closes for name in pair)
            found.append(OhmCheck(kind.title, where, "; ".join(says), _refs(parts[0], *used)))
    return found
