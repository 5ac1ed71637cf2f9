"""What a multimeter should read as amperes: the meter in place of a fuse, or in the plus lead of a supply."""

from typing import NamedTuple

from wiring.catalogue.kind import Kind
from wiring.findings.situation import Situation
from wiring.plan.designations import part_label
from wiring.plan.names import PartId
from wiring.plan.part import Part
from wiring.sheets.places import place_name

# How far the current of a sound circuit may lie from what is worked out: forward volts of LEDs and the
# filaments of lamps scatter. Common practice, no source.
SPREAD = 0.20
LEAST_A = 0.002  # a cheap meter's last digit on its amperes range
_SUPPLIES = ("supply_regulated", "supply_unregulated", "supply_ac", "battery")
_FUSES = ("fuse", "resettable_fuse")


class AmpCheck(NamedTuple):
    """One current to measure, with everything as it stands in a session."""

    what: str
    where: str
    expect_a: float
    low_a: float
    high_a: float
    alternating: bool
    part: PartId = ""  # the fuse or the supply


def amp_checks(situation: Situation, place: str | None = None) -> tuple[AmpCheck, ...]:
    """Return the currents: supplies first, then fuses that carry some; of one place or of all."""
    plan = situation.plan
    found: list[tuple[bool, AmpCheck]] = []
    for part in plan.parts.values():
        kind = situation.kinds.get(part.kind)
        if kind is None or (place is not None and place_name(plan, part) != place):
            continue
        amps = _amps(situation, part, kind)
        if amps is None or amps < LEAST_A:
            continue
        spread = max(amps * SPREAD, LEAST_A)
        check = AmpCheck(
            part.label or kind.title,
            _where(part_label(plan, part.id), kind),
            amps,
            max(amps - spread, 0.0),
            amps + spread,
            part.id in situation.figures.alternating,
            part.id,
        )
        found.append((kind.behaviour in _FUSES, check))
    return tuple(check for _, check in sorted(found, key=lambda f: f[0]))


def _amps(situation: Situation, part: Part, kind: Kind) -> float | None:
    if kind.behaviour in _SUPPLIES:
        supply = situation.figures.supplies.get(part.id)
        return abs(supply.current_a) if supply is not None else None
    if kind.behaviour in _FUSES:
        figure = situation.figures.parts.get(part.id)
        return abs(figure.current_a) if figure is not None else None
    return None


def _where(label: str, kind: Kind) -> str:
    if kind.behaviour in _FUSES:
        return f"fuse {label} out, meter across its holder"
    return f"wires off {label}:{kind.terminals[0].name}, meter between them and the terminal"
