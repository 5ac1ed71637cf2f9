"""Empty smoothing capacitors against fuses and supplies, at the moment of switching on."""

from collections.abc import Iterator

from wiring.findings.finding import Finding
from wiring.findings.gives_way import Rush, bears_now, fuse_finding, supply_finding, tripping
from wiring.findings.situation import Situation
from wiring.studies.settings import number
from wiring.studies.throws.inrush import BLOWS, HOLDS
from wiring.studies.throws.store_rush import FuseFill, fills_of, short_verdict

_FILLING = Rush(
    about="store-rush",
    what="The empty capacitors",
    when="the supply is switched on, though it bears what lasts",
    with_all="",
    less="use smaller capacitors",
    otherwise="Use smaller capacitors, or put a resistor of some ohms before each rectifier.",
    supply="Use smaller capacitors, or a supply that holds its current.",
)


def find(situation: Situation) -> Iterator[Finding]:
    """Find fuses that empty capacitors may blow, and supplies that give way to them."""
    stores = any(number(p, k, "capacitance") > 0 for p, k in situation.of("rectifier"))
    touchy = tripping(situation) if stores else []
    if not stores or not (touchy or any(True for _ in situation.of("fuse"))):
        return
    found = fills_of(situation.plan, situation.kinds, situation.positions)
    for fuse in found.fuses:
        if fuse.verdict != HOLDS and bears_now(situation, fuse.fuse):
            yield _fuse(situation, fuse)
    for supply in found.supplies:
        now = situation.figures.supplies.get(supply.supply)
        if supply.supply in touchy and supply.limited and now is not None and not now.limited:
            yield supply_finding(situation, _FILLING, supply.supply, supply.peak_a)


def _fuse(situation: Situation, fuse: FuseFill) -> Finding:
    def holds(slow_a: float) -> bool:
        return short_verdict(slow_a, "slow", fuse.heat_a2s) == HOLDS

    blows = fuse.verdict == BLOWS
    return fuse_finding(situation, _FILLING, fuse.fuse, fuse.peak_a, blows=blows, holds=holds)
