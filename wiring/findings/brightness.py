"""Lamps that get too much, look too dim, or differ within a scene."""

from collections.abc import Iterator

import numpy as np

from wiring.findings.asked import asked, figures_of, settings_of
from wiring.findings.finding import Finding, Rank
from wiring.findings.leds_across import all_across
from wiring.findings.situation import Situation
from wiring.findings.words import do, part_name, part_names, percent, volts
from wiring.studies.keeping import kept
from wiring.studies.light import Alike, Shine, alike_by_scene, evenness, lit
from wiring.studies.roles import LIGHTS

FILAMENTS = ("filament",)

OVER = 1.1  # of rated volts: a filament's life falls to about a third (re-rating exponent 12)
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
        found.sort(reverse=True)
        share, worst = found[0]
        lamps = tuple(lamp for _, lamp in found)
        got = volts(plan, abs(situation.figures.parts[worst].volts_v))
        yield Finding(
            "lamp-over-volts",
            Rank.DANGER if share > BURNS else Rank.WEAK,
            f"{part_names(plan, lamps)} {do(len(lamps), 'gets', 'get up to')} {got}, "
            f"{percent(share - 1)} more than rated.",
            "The lamp burns out at once."
            if share > BURNS
            else "Filament lamps on too many volts do not last.",
            "Feed it from a supply with fewer volts, or put two such lamps in series.",
            lamps,
        )


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
