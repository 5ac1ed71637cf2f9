"""The resistor that would hold back LEDs which take too much through the one they have."""

from collections.abc import Sequence
from typing import NamedTuple

from wiring.findings.act import Act
from wiring.findings.offers import set_to
from wiring.findings.situation import Situation
from wiring.findings.words import ohms, part_names, watts
from wiring.plan.names import PartId, TerminalRef
from wiring.studies.joints import STIFF
from wiring.studies.resistor_choice import DERATE, ResistorChoice, series_resistor
from wiring.studies.roles import FUSES, SOURCE_ENDS, THROUGH
from wiring.studies.settings import number


class LargerResistor(NamedTuple):
    """What the mend says, and the act that does it."""

    words: str
    act: Act | None


def larger_resistor(situation: Situation, leds: Sequence[PartId]) -> LargerResistor | None:
    """Return the one value that is right for the resistors of all those LEDs; None where there is none."""
    found: dict[PartId, ResistorChoice] = {}
    for led in leds:
        chosen = _of_chain(situation, _chain(situation, led))
        if chosen is None:
            return None
        found[chosen[0]] = chosen[1]
    choices = set(found.values())
    if len({choice.ohms for choice in choices}) != 1:
        return None
    choice = max(choices, key=lambda choice: choice.rated_w)
    plan, resistors = situation.plan, tuple(found)
    values = {"resistance": choice.ohms}
    words = ohms(plan, choice.ohms)
    if any(_value(situation, r, "rated_power") < choice.power_w / DERATE for r in resistors):
        values["rated_power"] = choice.rated_w
        words = f"{words}, {watts(plan, choice.rated_w)}"
    which = (
        f"-{plan.parts[resistors[0]].designation}" if len(resistors) == 1 else f"{len(resistors)} resistors"
    )
    act = set_to(situation, resistors, f"Set {which} to {ohms(plan, choice.ohms)}", **values)
    return LargerResistor(f"Use {words} for {part_names(plan, resistors)}", act)


def some_resistor(situation: Situation, leds: Sequence[PartId]) -> str:
    """Return the mend of LEDs for which no value can be told: a larger resistor, or one at all."""
    if not any(_held(situation, i) for led in leds for i in _chain(situation, led)):
        return f"Put a resistor in series with {'it' if len(leds) == 1 else 'each'}"
    return "Use a larger series resistor"


def _held(situation: Situation, part: PartId) -> bool:
    """Whether a part of a chain is or has a resistor, or hangs on one it may share."""
    if _behaviour(situation, part) != "led" or _value(situation, part, "series_ohm") > 0:
        return True
    both = [situation.joints.reach((TerminalRef(part, end),), STIFF).terminals for end in ("A", "K")]
    return any(_behaviour(situation, ref.part) == "resistor" for near in both for ref in near)


def _of_chain(situation: Situation, chain: Sequence[PartId]) -> tuple[PartId, ResistorChoice] | None:
    """Return the only resistor of a chain, and what it should be: the volts left for it over the current."""
    resistors = [i for i in chain if _behaviour(situation, i) == "resistor"]
    leds = [i for i in chain if i not in resistors]
    figures = [situation.figures.parts.get(i) for i in chain]
    limited = any(supply.limited for supply in situation.figures.supplies.values())
    if len(resistors) != 1 or limited or any(_value(situation, led, "series_ohm") > 0 for led in leds):
        return None
    whole_v = sum(abs(figure.volts_v) for figure in figures if figure is not None)
    forward_v = sum(_value(situation, i, "forward_v") * _value(situation, i, "in_series") for i in leds)
    wished_a = min(_value(situation, i, "forward_a") * _value(situation, i, "in_parallel") for i in leds)
    choice = series_resistor(whole_v, forward_v, wished_a)
    larger = choice is not None and choice.ohms > _value(situation, resistors[0], "resistance")
    return (resistors[0], choice) if choice is not None and larger else None


def _chain(situation: Situation, led: PartId) -> list[PartId]:
    """Return the LEDs and resistors through which all the current of an LED goes, and nothing else's."""
    found = [led]
    for end in ("A", "K"):
        here = _next(situation, TerminalRef(led, end))
        while here is not None and here.part not in found:
            found.append(here.part)
            pair = THROUGH[_behaviour(situation, here.part)][0]
            here = _next(situation, TerminalRef(here.part, pair[here.terminal == pair[0]]))
    return found


def _next(situation: Situation, ref: TerminalRef) -> TerminalRef | None:
    """Return the terminal of an LED or resistor that a terminal is joined to, if to nothing else."""
    others = [
        other
        for other in situation.joints.reach((ref,), STIFF).terminals
        if other != ref and (b := _behaviour(situation, other.part)) not in FUSES and b in _DRAWING
    ]
    one = others[0] if len(others) == 1 else None
    return one if one is not None and _behaviour(situation, one.part) in ("led", "resistor") else None


_DRAWING = frozenset({*THROUGH, *SOURCE_ENDS})


def _behaviour(situation: Situation, part: PartId) -> str:
    kind = situation.kinds.get(situation.plan.parts[part].kind)
    return kind.behaviour if kind is not None else ""


def _value(situation: Situation, part_id: PartId, name: str) -> float:
    part = situation.plan.parts[part_id]
    return number(part, situation.kinds[part.kind], name)
