"""What to know before touching it: mains adapters, batteries that can burn, volts that can harm."""

from collections.abc import Iterator, Mapping, Sequence
from typing import NamedTuple

from wiring.catalogue.kind import Kind
from wiring.findings.finding import Finding, Rank
from wiring.findings.situation import Situation
from wiring.findings.words import do, part_name, part_names, volts
from wiring.plan.names import PartId
from wiring.plan.part import Part
from wiring.plan.plan import Plan
from wiring.standards.low_voltage import NEM_SCENERY_DC_V, TOUCH_AC_V, TOUCH_DC_V
from wiring.studies.keeping import kept
from wiring.studies.roles import SOURCES


class _Note(NamedTuple):
    what: str  # follows the parts' names and "is a" or "are"
    many: str
    why: str
    mend: str


# By the caution a kind of part earns in the catalogue; the printed sheets have more on each.
_NOTES: dict[str, _Note] = {
    "mains-adapter": _Note(
        "is fed from the mains.",
        "are fed from the mains.",
        "Only its outgoing side is safe to touch, and only while its case is whole.",
        "Buy a closed adapter that is marked as short-circuit proof, keep mains wiring off the layout, "
        "and switch all of it off at one place.",
    ),
    "lithium-cells": _Note(
        "has lithium cells.",
        "have lithium cells.",
        "A short or wrong charging can set them on fire.",
        "Use cells with a protection circuit, a fuse at the battery, and the charger made for them.",
    ),
    "lead-acid": _Note(
        "is a lead-acid battery.",
        "are lead-acid batteries.",
        "It pushes hundreds of amperes into a short and gives off gas while it is charged.",
        "Put a fuse right at its plus terminal, cover the terminals, and charge it in the open.",
    ),
}


def find(situation: Situation) -> Iterator[Finding]:
    """Find volts beyond what may be touched, then what to know of supplies and batteries, one note a kind."""
    yield from _volts(situation)
    yield from kept(_notes, situation.parts, situation.kinds)


def _notes(parts: Mapping[PartId, Part], kinds: Mapping[str, Kind]) -> Sequence[Finding]:
    return tuple(_earned(Plan(parts=parts), kinds))


def _earned(plan: Plan, kinds: Mapping[str, Kind]) -> Iterator[Finding]:
    earned: dict[str, list[str]] = {}
    for part in plan.parts.values():
        kind = kinds.get(part.kind)
        for caution in kind.cautions if kind is not None else ():
            if caution in _NOTES:
                earned.setdefault(caution, []).append(part.id)
    for caution, note in _NOTES.items():
        if some := earned.get(caution):
            yield Finding(
                f"safety-{caution}",
                Rank.NOTE,
                f"{part_names(plan, some)} {do(len(some), note.what, note.many)}",
                note.why,
                note.mend,
                tuple(some),
            )


def _volts(situation: Situation) -> Iterator[Finding]:
    plan = situation.plan
    for part, kind in situation.of(*SOURCES):
        figure = situation.figures.supplies.get(part.id)
        if figure is None:
            continue
        alternating = kind.behaviour == "supply_ac"
        highest_v = max(abs(figure.volts_v), figure.nominal_v)
        limit_v = TOUCH_AC_V if alternating else TOUCH_DC_V
        if highest_v > limit_v:
            yield Finding(
                "volts-to-touch",
                Rank.DANGER,
                f"{part_name(plan, part.id)} gives {volts(plan, highest_v)} {'AC' if alternating else 'DC'}.",
                f"Bare ends are harmless to touch only up to {limit_v:.0f} V "
                f"{'AC' if alternating else 'DC'}.",
                "Use a supply with fewer volts; nothing on a layout needs that many.",
                (part.id,),
            )
        elif not alternating and highest_v > 1.2 * NEM_SCENERY_DC_V:
            yield Finding(
                "volts-for-scenery",
                Rank.NOTE,
                f"{part_name(plan, part.id)} gives {volts(plan, highest_v)}.",
                f"Model-railway scenery is made for up to {NEM_SCENERY_DC_V:.0f} V DC (NEM 611).",
                "Make sure that every part on it is made for these volts.",
                (part.id,),
            )
