"""Empty smoothing capacitors against fuses and supplies, at the moment of switching on."""

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
from wiring.findings.words import amps, part_name
from wiring.studies.settings import number
from wiring.studies.throws.inrush import BLOWS, HOLDS
from wiring.studies.throws.store_rush import FuseFill, SupplyFill, fills_of, short_verdict


def find(situation: Situation) -> Iterator[Finding]:
    """Find fuses that empty capacitors may blow, and supplies that give way to them."""
    stores = any(number(p, k, "capacitance") > 0 for p, k in situation.of("rectifier"))
    touchy = tripping(situation)
    if not stores or not (touchy or any(True for _ in situation.of("fuse"))):
        return
    found = fills_of(situation.plan, situation.kinds, situation.positions)
    for fuse in found.fuses:
        if fuse.verdict != HOLDS and bears_now(situation, fuse.fuse):
            yield _fuse(situation, fuse)
    for supply in found.supplies:
        now = situation.figures.supplies.get(supply.supply)
        if supply.supply in touchy and supply.limited and now is not None and not now.limited:
            yield _supply(situation, supply)


def _fuse(situation: Situation, fuse: FuseFill) -> Finding:
    plan = situation.plan
    rating_a = fuse_rating_a(situation, fuse.fuse)
    blows = fuse.verdict == BLOWS

    def holds(slow_a: float) -> bool:
        return short_verdict(slow_a, "slow", fuse.heat_a2s) == HOLDS

    return Finding(
        "store-rush-fuse",
        Rank.WEAK if blows else Rank.NOTE,
        f"The empty capacitors behind {part_name(plan, fuse.fuse)} draw {amps(plan, fuse.peak_a)} "
        f"for a moment, and it is {amps(plan, rating_a)}.",
        f"It {'blows' if blows else 'may blow'} when the supply is switched on, though it bears what lasts.",
        slow_fuse_mend(
            situation,
            rating_a,
            holds,
            less="use smaller capacitors",
            otherwise="Use smaller capacitors, or put a resistor of some ohms before each rectifier.",
        ),
        (fuse.fuse,),
        act=slow_fuse(situation, fuse.fuse, holds),
    )


def _supply(situation: Situation, supply: SupplyFill) -> Finding:
    plan = situation.plan
    figure = situation.figures.supplies[supply.supply]
    return Finding(
        "store-rush-supply",
        Rank.WEAK,
        f"The empty capacitors on {part_name(plan, supply.supply)} draw {amps(plan, supply.peak_a)} "
        f"for a moment, and it gives {amps(plan, figure.rated_a)}.",
        f"It {how_it_trips(situation, supply.supply)} on overload, so it may never start.",
        "Use smaller capacitors, or a supply that holds its current.",
        (supply.supply,),
    )
