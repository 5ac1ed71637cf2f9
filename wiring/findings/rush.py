"""What happens in a rush: cold lamps against fuses and supplies, servos that all move at once."""

from collections.abc import Iterator

from wiring.findings.finding import Finding, Rank
from wiring.findings.gives_way import (
    bears_now,
    fuse_rating_a,
    how_it_trips,
    slow_fuse,
    slow_fuse_mend,
    tripping,
)
from wiring.findings.situation import Situation
from wiring.findings.words import amps, part_name, part_names
from wiring.plan.names import PartId
from wiring.studies.throws.inrush import BLOWS, HOLDS, FuseRush, rushes, verdict
from wiring.studies.throws.servos import servo_draws


def find(situation: Situation) -> Iterator[Finding]:
    """Find fuses and supplies that cold lamps overcome, then supplies too small for their servos together."""
    yield from _cold_lamps(situation)
    yield from _servos(situation)


def _cold_lamps(situation: Situation) -> Iterator[Finding]:
    lamps = any(situation.figures.parts.get(p.id) for p, _ in situation.of("filament"))
    touchy = tripping(situation)
    if not lamps or not (touchy or any(True for _ in situation.of("fuse"))):
        return
    found = rushes(situation.plan, situation.kinds, situation.positions, situation.figures)
    told: set[str] = set()
    for rush in found.values():
        for fuse in rush.fuses:
            if fuse.verdict != HOLDS and fuse.fuse not in told and bears_now(situation, fuse.fuse):
                told.add(fuse.fuse)
                yield _fuse(situation, fuse)
    for supply in touchy:
        if supply in found and found[supply].limited and not situation.figures.supplies[supply].limited:
            yield _supply(situation, supply, found[supply].cold_a)


def _fuse(situation: Situation, rush: FuseRush) -> Finding:
    plan = situation.plan
    rating_a = fuse_rating_a(situation, rush.fuse)
    blows = rush.verdict == BLOWS

    def holds(slow_a: float) -> bool:
        return verdict(slow_a, "slow", rush.cold_a, rush.hot_a) == HOLDS

    return Finding(
        "cold-lamps-fuse",
        Rank.WEAK if blows else Rank.NOTE,
        f"The cold lamps behind {part_name(plan, rush.fuse)} draw {amps(plan, rush.cold_a)} for a moment, "
        f"and it is {amps(plan, rating_a)}.",
        f"It {'blows' if blows else 'may blow'} when they are switched on, though it carries them once lit.",
        slow_fuse_mend(
            situation,
            rating_a,
            holds,
            less="switch the lamps on in groups",
            otherwise="Switch the lamps on in groups, each with its own fuse.",
        ),
        (rush.fuse,),
        act=slow_fuse(situation, rush.fuse, holds),
    )


def _supply(situation: Situation, supply: PartId, cold_a: float) -> Finding:
    plan = situation.plan
    figure = situation.figures.supplies[supply]
    return Finding(
        "cold-lamps-supply",
        Rank.WEAK,
        f"The cold lamps on {part_name(plan, supply)} draw {amps(plan, cold_a)} for a moment, "
        f"and it gives {amps(plan, figure.rated_a)}.",
        f"It {how_it_trips(situation, supply)} on overload, so it may never start with all of them on.",
        "Switch the lamps on in groups, or use a larger supply, or one that holds its current.",
        (supply,),
    )


def _servos(situation: Situation) -> Iterator[Finding]:
    plan = situation.plan
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
