"""Empty smoothing capacitors against fuses and supplies, at the moment of switching on."""

from collections.abc import Iterator

from wiring.findings.finding import Finding, Rank
from wiring.findings.situation import Situation
from wiring.findings.words import amps, part_name
from wiring.standards.fuses import RATINGS_A
from wiring.studies.settings import number, text
from wiring.studies.throws.inrush import BLOWS, HOLDS
from wiring.studies.throws.store_rush import FuseFill, SupplyFill, fills_of, short_verdict

TRIPS = ("shuts off", "folds back")  # a supply that only holds its current fills them more slowly


def find(situation: Situation) -> Iterator[Finding]:
    """Find fuses that empty capacitors may blow, and supplies that give way to them."""
    stores = any(number(p, k, "capacitance") > 0 for p, k in situation.of("rectifier"))
    touchy = any(text(p, k, "on_overload") in TRIPS for p, k in situation.of("supply_regulated"))
    if not stores or not (touchy or any(True for _ in situation.of("fuse"))):
        return
    found = fills_of(situation.plan, situation.kinds, situation.positions)
    for fuse in found.fuses:
        figure = situation.figures.parts.get(fuse.fuse)
        part = situation.plan.parts[fuse.fuse]
        rating_a = number(part, situation.kinds[part.kind], "rating_a")
        if fuse.verdict != HOLDS and figure is not None and abs(figure.current_a) <= rating_a:
            yield _fuse(situation, fuse, rating_a)
    for supply in found.supplies:
        part = situation.plan.parts[supply.supply]
        trips = text(part, situation.kinds[part.kind], "on_overload") in TRIPS
        now = situation.figures.supplies.get(supply.supply)
        if trips and supply.limited and now is not None and not now.limited:
            yield _supply(situation, supply)


def _fuse(situation: Situation, fuse: FuseFill, rating_a: float) -> Finding:
    plan = situation.plan
    blows = fuse.verdict == BLOWS
    return Finding(
        "store-rush-fuse",
        Rank.WEAK if blows else Rank.NOTE,
        f"The empty capacitors behind {part_name(plan, fuse.fuse)} draw {amps(plan, fuse.peak_a)} "
        f"for a moment, and it is {amps(plan, rating_a)}.",
        f"It {'blows' if blows else 'may blow'} when the supply is switched on, though it bears what lasts.",
        _better(situation, fuse, rating_a),
        (fuse.fuse,),
    )


def _better(situation: Situation, fuse: FuseFill, rating_a: float) -> str:
    if short_verdict(rating_a, "slow", fuse.heat_a2s) == HOLDS:
        return f"Use a slow fuse of {amps(situation.plan, rating_a)}, or smaller capacitors."
    larger = (r for r in RATINGS_A if r > rating_a and short_verdict(r, "slow", fuse.heat_a2s) == HOLDS)
    better_a = next(larger, None)
    if better_a is None:
        return "Use smaller capacitors, or put a resistor of some ohms before each rectifier."
    return (
        f"Use smaller capacitors, or a slow fuse of {amps(situation.plan, better_a)} "
        "if the wire behind it bears that."
    )


def _supply(situation: Situation, supply: SupplyFill) -> Finding:
    plan = situation.plan
    figure = situation.figures.supplies[supply.supply]
    part = plan.parts[supply.supply]
    how = text(part, situation.kinds[part.kind], "on_overload")
    return Finding(
        "store-rush-supply",
        Rank.WEAK,
        f"The empty capacitors on {part_name(plan, supply.supply)} draw {amps(plan, supply.peak_a)} "
        f"for a moment, and it gives {amps(plan, figure.rated_a)}.",
        f"It {how} on overload, so it may never start.",
        "Use smaller capacitors, or a supply that holds its current.",
        (supply.supply,),
    )
