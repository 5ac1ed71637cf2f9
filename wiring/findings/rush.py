"""What happens in a rush: cold lamps against fuses and supplies, servos that all move at once."""

import math
from collections.abc import Iterator

from wiring.circuit.altered import with_cold_lamps
from wiring.findings.asked import asked
from wiring.findings.finding import Finding, Rank
from wiring.findings.gives_way import Rush, bears_now, fuse_finding, supply_finding, tripping
from wiring.findings.situation import Situation
from wiring.findings.words import amps, part_name, part_names
from wiring.studies.throws.inrush import (
    BLOWS,
    FADES_S,
    HOLDS,
    FuseRush,
    fuse_rushes,
    supply_rush,
    verdict,
)
from wiring.studies.throws.servos import servo_draws

# What a supply bears beyond its limit before it takes it for a fault, seconds; common practice, no source.
BORNE_S = 0.02
FILAMENTS, FUSE = ("filament",), ("fuse",)

_COLD = Rush(
    about="cold-lamps",
    what="The cold lamps",
    when="they are switched on, though it carries them once lit",
    with_all=" with all of them on",
    less="switch the lamps on in groups",
    otherwise="Switch the lamps on in groups, each with its own fuse.",
    supply="Switch the lamps on in groups, or use a larger supply, or one that holds its current.",
)


def find(situation: Situation) -> Iterator[Finding]:
    """Find fuses and supplies that cold lamps overcome, then supplies too small for their servos together."""
    yield from _cold_lamps(situation)
    yield from _servos(situation)


def _cold_lamps(situation: Situation) -> Iterator[Finding]:
    plan, kinds, figures = situation.plan, situation.kinds, situation.figures
    touchy, lamps = tripping(situation), asked(situation, FILAMENTS).ids
    if not (touchy or asked(situation, FUSE).ids) or not any(lamp in figures.parts for lamp in lamps):
        return
    cold = with_cold_lamps(plan, kinds, situation.positions)
    gives_way = [rush for rush in fuse_rushes(plan, kinds, figures, cold) if rush.verdict != HOLDS]
    told: set[str] = set()
    for supply in figures.supplies if gives_way else ():
        for fuse in gives_way:
            is_new = fuse.fuse not in told and cold.one_circuit(supply, fuse.fuse)
            if is_new and bears_now(situation, fuse.fuse):
                told.add(fuse.fuse)
                yield _fuse(situation, fuse)
    for supply in touchy:
        if supply in figures.supplies and not figures.supplies[supply].limited:
            rush_a, lasting_a, limit_a = supply_rush(plan, kinds, figures, cold, supply)
            if _above_s(rush_a, lasting_a, limit_a) > BORNE_S:
                yield supply_finding(situation, _COLD, supply, rush_a)


def _above_s(rush_a: float, lasting_a: float, limit_a: float) -> float:
    """Return how long a fading rush stays above a limit, in seconds."""
    if rush_a <= limit_a:
        return 0.0
    return (
        FADES_S * math.log((rush_a - lasting_a) / (limit_a - lasting_a)) if limit_a > lasting_a else math.inf
    )


def _fuse(situation: Situation, rush: FuseRush) -> Finding:
    def holds(slow_a: float) -> bool:
        return verdict(slow_a, "slow", rush.cold_a, rush.hot_a) == HOLDS

    blows = rush.verdict == BLOWS
    return fuse_finding(situation, _COLD, rush.fuse, rush.cold_a, blows=blows, holds=holds)


def _servos(situation: Situation) -> Iterator[Finding]:
    plan = situation.plan
    if not any(True for _ in situation.of("servo")):
        return
    for draw in servo_draws(plan, situation.kinds, situation.figures, situation.runs):
        if draw.now_a > draw.limit_a or draw.stalled_a <= draw.limit_a:
            continue
        moving = draw.moving_a > draw.limit_a
        several = len(draw.servos) > 1
        does = ("all move" if several else "moves") if moving else ("all stick" if several else "sticks")
        asked = amps(plan, draw.moving_a if moving else draw.stalled_a)
        yield Finding(
            "servos-moving" if moving else "servos-stalled",
            Rank.WEAK if moving else Rank.NOTE,
            f"When {part_names(plan, draw.servos)} {does}{' at once' if several else ''}, "
            f"{part_name(plan, draw.supply)} is asked for {asked} and gives {amps(plan, draw.limit_a)}.",
            "Its volts then fall: servos twitch, and everything else on it flickers.",
            "Use a larger supply, or move the servos one after the other."
            if moving
            else "Use a larger supply, or one for the servos alone.",
            (draw.supply, *draw.servos),
        )
