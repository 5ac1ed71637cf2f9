"""What the meter says with the power off: no short on any feed, fuses whole, contacts as the lever stands."""

from collections.abc import Sequence
from typing import NamedTuple

from wiring.catalogue.kind import Kind
from wiring.findings.situation import Situation
from wiring.plan.designations import part_label
from wiring.sheets.designation_runs import run_words

# Common practice, no source: cold filament lamps in parallel read above this; a short reads the leads alone.
SHORT_OHM = 1.0
_SUPPLIES = ("supply_regulated", "supply_unregulated", "supply_ac", "battery")


class OhmCheck(NamedTuple):
    """One test with the beeper or the ohms range."""

    what: str
    where: str
    expect: str


def ohm_checks(situation: Situation) -> tuple[OhmCheck, ...]:
    """Return the tests: feeds first, then fuses, then switches in each of their positions."""
    plan = situation.plan
    feeds: list[OhmCheck] = []
    fuses: list[OhmCheck] = []
    switches: dict[str, list[str]] = {}
    for part in plan.parts.values():
        kind = situation.kinds.get(part.kind)
        if kind is None:
            continue
        label = part_label(plan, part.id)
        name = part.label or kind.title
        if kind.behaviour in _SUPPLIES:
            first, second = kind.terminals[0].name, kind.terminals[1].name
            where = f"the two feed wires taken off {label}:{first} and {label}:{second}"
            feeds.append(OhmCheck(name, where, f"more than {SHORT_OHM:g} Ω, no steady beep"))
        elif kind.behaviour in ("fuse", "resettable_fuse"):
            where = f"{label}:{kind.terminals[0].name} and {label}:{kind.terminals[1].name}"
            fuses.append(OhmCheck(name, where, "a beep: the fuse is whole"))
        elif kind.behaviour == "switch":
            switches.setdefault(kind.key, []).append(label)
    contacts = [c for key, labels in switches.items() for c in _contacts(situation.kinds[key], labels)]
    return *feeds, *fuses, *contacts


def _contacts(kind: Kind, labels: Sequence[str]) -> list[OhmCheck]:
    """Return what all switches of one kind must do, position by position."""
    every = {pair for position in kind.positions for pair in position.closes}
    found = []
    for position in kind.positions:
        made = [f"{a}–{b}" for a, b in position.closes]
        parted = sorted(f"{a}–{b}" for a, b in every - set(position.closes))
        says = [f"beep on {', '.join(made)}"] if made else []
        says += [f"silence on {', '.join(parted)}"] if parted else []
        if says:
            found.append(OhmCheck(kind.title, f"{run_words(labels)}, {position.name}", "; ".join(says)))
    return found
