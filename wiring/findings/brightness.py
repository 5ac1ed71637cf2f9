"""Lamps that get too much, look too dim, or differ within a scene."""

import math
from collections.abc import Iterator, Sequence

import numpy as np

from wiring.findings.act import Act
from wiring.findings.asked import asked, figures_of, settings_of
from wiring.findings.finding import Finding, Rank
from wiring.findings.leds_across import all_across
from wiring.findings.offers import resistor_before
from wiring.findings.situation import Situation
from wiring.findings.words import do, ohms, part_name, part_names, percent, volts, watts
from wiring.standards.rerating import LIFE_EXPONENT
from wiring.studies.keeping import kept
from wiring.studies.light import Alike, Shine, alike_by_scene, evenness, lit
from wiring.studies.resistor_choice import series_resistor
from wiring.studies.roles import LIGHTS
from wiring.studies.settings import number

FILAMENTS = ("filament",)

ALIKE = 0.95  # of the volts of the worst: lamps for which one resistor is right
OVER = 1.1  # of rated volts: a filament's life falls to about a third
BURNS = 1.5
SEEN = 15.0  # of lightness between lamps that should look alike; common practice, no source


def find(situation: Situation) -> Iterator[Finding]:
    """Find lamps that are over their volts, then lamps too dim, then lamps that are uneven."""
    yield from _over(situation)
    lamps = asked(situation, LIGHTS)
    shine = lit(situation.figures, lamps.ids)
    dim = frozenset(shine.below(situation.plan.habits.dim_lightness))
    told = (
        {led for chain in all_across(situation) if not chain.lights for led in chain.leds} if dim else set()
    )
    yield from _dim(situation, shine, dim - told)
    yield from _uneven(situation, shine, kept(alike_by_scene, lamps.parts), dim)


def _over(situation: Situation) -> Iterator[Finding]:
    plan = situation.plan
    over: dict[str, list[tuple[float, str]]] = {}
    some = asked(situation, FILAMENTS)
    rated_v, got_v = settings_of(some, "rated_v"), np.abs(figures_of(situation, some).volts)
    for row, part, _ in some.rows((rated_v > 0) & (got_v > OVER * rated_v)):
        over.setdefault(part.kind, []).append((float(got_v[row] / rated_v[row]), part.id))
    for found in over.values():
        found.sort(key=lambda one: -round(one[0], 2))  # the worst first, else as on the plan
        share, worst = max(found)
        lamps = tuple(lamp for _, lamp in found)
        got = volts(plan, abs(situation.figures.parts[worst].volts_v))
        yield Finding(
            "lamp-over-volts",
            Rank.DANGER if share > BURNS else Rank.WEAK,
            f"{part_names(plan, lamps)} {do(len(lamps), 'gets', 'get up to')} {got}, "
            f"{percent(share - 1)} more than rated.",
            "The lamp burns out at once."
            if share > BURNS
            else f"{do(len(lamps), 'It lasts', 'The worst lasts')} at most about "
            f"{percent(share**LIFE_EXPONENT)} of the hours it would at its rated volts.",
            *_held_back(situation, found),
        )


def _held_back(
    situation: Situation, found: Sequence[tuple[float, str]]
) -> tuple[str, tuple[str, ...], tuple[str, ...], Act | None]:
    """Return the mend of lamps over their volts, with lamps, wires and act."""
    plan, (share, worst) = situation.plan, max(found)
    lamps, part = tuple(lamp for _, lamp in found), plan.parts[worst]
    kind = situation.kinds[part.kind]
    rated_v, rated_a = number(part, kind, "rated_v"), number(part, kind, "rated_a")
    in_row = max(2, math.ceil(share / OVER))
    otherwise = f"feed {do(len(lamps), 'it', 'them')} from fewer volts, or put {in_row} such lamps in series."
    got_v = abs(situation.figures.parts[worst].volts_v)
    choice = series_resistor(got_v, rated_v, rated_a * max(number(part, kind, "in_parallel"), 1.0))
    if choice is None or min(found)[0] < ALIKE * share:  # one value would not be right for all of them
        return f"{otherwise[0].upper()}{otherwise[1:]}", lamps, (), None
    value = f"{ohms(plan, choice.ohms)}, {watts(plan, choice.rated_w)},"
    mend = f"Put a resistor of {value} before {do(len(lamps), 'it', 'each')}, {otherwise}"
    return mend, lamps, (), resistor_before(situation, lamps, choice.ohms, choice.rated_w)


def _dim(situation: Situation, shine: Shine, dim: frozenset[str]) -> Iterator[Finding]:
    plan = situation.plan
    by_supply: dict[str, list[str]] = {}
    for lamp in dim:
        by_supply.setdefault(situation.runs.supply_of(lamp) or "", []).append(lamp)
    for supply, lamps in sorted(by_supply.items()):
        ids = tuple(sorted(lamps, key=lambda lamp: shine[lamp]))
        worst = ids[0]
        yield Finding(
            "lamp-dim",
            Rank.WEAK,
            f"{part_names(plan, ids)} {do(len(ids), 'looks', 'look')} dim: "
            f"lightness {shine[worst]:.0f} of 100, below the {plan.habits.dim_lightness:.0f} you set.",
            f"{do(len(ids), 'It gives', 'The faintest gives')} "
            f"{percent(situation.figures.parts[worst].light or 0.0)} of its rated light.",
            _brighter(situation, worst, supply),
            ids,
        )


def _brighter(situation: Situation, lamp: str, supply: str) -> str:
    run = situation.runs.get(lamp)
    if run is not None and run.share > situation.plan.habits.drop_limit:
        return "Use thicker wire, or feed from both ends."
    if supply:
        name = part_name(situation.plan, supply)
        return f"Use a supply with more volts than {name}, or parts made for its volts."
    return "Use a supply with more volts, or parts made for the volts there are."


def _uneven(situation: Situation, shine: Shine, groups: Alike, dim: frozenset[str]) -> Iterator[Finding]:
    plan = situation.plan
    for lamps in shine.apart(groups, SEEN):
        scene = plan.parts[lamps[0]].scene
        if scene and scene not in plan.scenes:
            continue
        ends = evenness(shine, lamps)
        if ends.faintest in dim:
            continue
        where = f"in “{plan.scenes[scene].name}”" if scene else "outside any scene"
        yield Finding(
            "lamps-uneven",
            Rank.NOTE,
            f"Like lamps {where} look uneven: {part_name(plan, ends.faintest)} {ends.low:.0f}, "
            f"{part_name(plan, ends.brightest)} {ends.high:.0f} of 100.",
            "The eye sees such a difference side by side.",
            "Feed the row from both ends, use thicker wire, or give each lamp the same resistor.",
            (ends.faintest, ends.brightest),
        )
