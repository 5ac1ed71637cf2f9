"""Parts made for DC that hang straight on AC."""

from collections.abc import Iterator

from wiring.findings.asked import Asked, asked
from wiring.findings.finding import Finding, Rank
from wiring.findings.leds_across import DRAWING, refs_of
from wiring.findings.situation import Situation
from wiring.findings.words import do, part_names
from wiring.plan.names import PartId
from wiring.studies.joints import LASTING, Link, ends
from wiring.studies.keeping import kept
from wiring.studies.led_chains import led_chains
from wiring.studies.nets import Net
from wiring.studies.roles import ONE_WAY, SOURCE_ENDS, THROUGH

ON_AC, FOR_DC = ("supply_ac",), (*ONE_WAY, "stall_motor")
PAST_RESISTORS = DRAWING - {"resistor"}


def find(situation: Situation) -> Iterator[Finding]:
    """Find DC parts that reach both legs of an AC supply past no diode, one finding for all of them."""
    supplies = asked(situation, ON_AC)
    if not supplies.ids:
        return
    net = situation.joints.net(LASTING | Link.RESISTOR)
    parts = kept(_on_ac, supplies, asked(situation, FOR_DC), asked(situation, PAST_RESISTORS), net)
    if parts:
        yield Finding(
            "dc-part-on-ac",
            Rank.DANGER,
            f"{part_names(situation.plan, parts)} {do(len(parts), 'is', 'are')} made for DC and "
            f"{do(len(parts), 'hangs', 'hang')} straight on AC.",
            "AC drives it backward half of the time: LEDs flicker and may die, motors only hum.",
            "Put a rectifier between the AC supply and the DC parts, or use a DC supply.",
            parts,
        )


def _on_ac(supplies: Asked, some: Asked, drawing: Asked, net: Net) -> tuple[PartId, ...]:
    legs = {
        frozenset(net.group_of(ref) for ref in ends(supply, SOURCE_ENDS[kind.behaviour]))
        for supply, kind in zip(supplies.ids, supplies.kinds, strict=True)
    }
    sides = {pair for pair in legs if len(pair) == 2 and -1 not in pair}
    if not sides:
        return ()
    rows = list(zip(some.ids, some.kinds, strict=True))
    pairs = {part: ends(part, THROUGH[kind.behaviour][0]) for part, kind in rows}
    found = {part for part, pair in pairs.items() if frozenset(map(net.group_of, pair)) in sides}
    leds = [(part, *pairs[part]) for part, kind in rows if kind.behaviour == "led"]
    for chain in led_chains(leds, refs_of(drawing), net) if leds else ():
        if frozenset((chain.one, chain.other)) in sides:
            found |= {*chain.leds}
    return tuple(part for part in some.ids if part in found)
