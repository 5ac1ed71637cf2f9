"""What the meter says with the power off: no short on any feed, fuses whole, contacts as the lever stands."""

from typing import NamedTuple

from wiring.catalogue.kind import Kind
from wiring.findings.situation import Situation
from wiring.plan.designations import part_label
from wiring.plan.part import Part

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
    contacts: list[OhmCheck] = []
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
            contacts += _contacts(part, kind, label, name)
    return *feeds, *fuses, *contacts


def _contacts(part: Part, kind: Kind, label: str, name: str) -> list[OhmCheck]:
    every = {pair for position in kind.positions for pair in position.closes}
    found = []
    for position in kind.positions:
        made = [f"{a}–{b}" for a, b in position.closes]
        parted = sorted(f"{a}–{b}" for a, b in every - set(position.closes))
        says = [f"beep on {', '.join(made)}"] if made else []
        says += [f"silence on {', '.join(parted)}"] if parted else []
        if says:
            found.append(OhmCheck(name, f"{label} {position.name}", "; ".join(says)))
    return found
