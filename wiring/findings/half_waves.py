"""Lights on AC behind a single diode: they get every second half wave only."""

from collections.abc import Iterator

from wiring.findings.asked import Asked, asked
from wiring.findings.finding import Finding, Rank
from wiring.findings.situation import Situation
from wiring.findings.words import do, part_names
from wiring.plan.names import PartId
from wiring.studies.joints import LASTING, Link, ends
from wiring.studies.keeping import kept
from wiring.studies.nets import Net
from wiring.studies.roles import SOURCE_ENDS, THROUGH

ON_AC, LIGHTS = (
    ("supply_ac",),
    ("led", "strip", "constant_current", "flasher"),
)  # a filament stays hot between


def find(situation: Situation) -> Iterator[Finding]:
    """Find lights with one end on a leg of an AC supply and the other behind a diode."""
    supplies, lights = asked(situation, ON_AC), asked(situation, LIGHTS)
    if not supplies.ids or not lights.ids:
        return
    near = situation.joints.net(LASTING | Link.RESISTOR)
    far = situation.joints.net(LASTING | Link.RESISTOR | Link.DIODE)
    parts = tuple(
        part
        for part in kept(_halved, supplies, lights, near, far)
        if part in situation.figures.alternating and situation.figures.parts[part].current_a > 0
    )
    if parts:
        names, get = part_names(situation.plan, parts), do(len(parts), "gets", "get")
        yield Finding(
            "half-waves",
            Rank.NOTE,
            f"{names} {get} every second half wave only.",
            "A light that follows the current so fast is dark half of the time; many people see it flicker.",
            "Use a bridge rectifier with a capacitor in place of the single diode.",
            parts,
        )


def _halved(supplies: Asked, lights: Asked, near: Net, far: Net) -> tuple[PartId, ...]:
    """Return the lights that hang on a leg at one end and over a diode on the other leg at the other."""
    found: list[PartId] = []
    rows = list(zip(supplies.ids, supplies.kinds, strict=True))
    legs = [ends(supply, SOURCE_ENDS[kind.behaviour]) for supply, kind in rows]
    for part, kind in zip(lights.ids, lights.kinds, strict=True):
        both = ends(part, THROUGH[kind.behaviour][0])
        for leg, other in (pair for one, two in legs for pair in ((one, two), (two, one))):
            for here, there in (both, both[::-1]):
                behind = far.joins(there, other) and not near.joins(there, other)
                if near.joins(here, leg) and not near.joins(here, other) and behind:
                    found.append(part)
    return tuple(dict.fromkeys(found))
