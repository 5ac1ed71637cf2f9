"""Parts made for DC that hang straight on AC."""

from collections.abc import Iterator

from wiring.findings.finding import Finding, Rank
from wiring.findings.situation import Situation
from wiring.findings.words import do, part_names
from wiring.plan.names import TerminalRef
from wiring.studies.joints import LASTING, Link, ends
from wiring.studies.roles import ONE_WAY, SOURCE_ENDS, THROUGH

_Sides = list[tuple[frozenset[TerminalRef], frozenset[TerminalRef]]]


def find(situation: Situation) -> Iterator[Finding]:
    """Find DC parts that reach both legs of an AC supply past no diode, one finding for all of them."""
    sides: _Sides = []
    for source, kind in situation.of("supply_ac"):
        one, other = ends(source.id, SOURCE_ENDS[kind.behaviour])
        reach = situation.joints.reach
        through = LASTING | Link.RESISTOR
        sides.append((reach((one,), through).terminals, reach((other,), through).terminals))
    if not sides:
        return
    parts = tuple(
        part.id
        for part, kind in situation.of(*ONE_WAY, "stall_motor")
        if _between(sides, *ends(part.id, THROUGH[kind.behaviour][0]))
    )
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


def _between(sides: _Sides, a: TerminalRef, b: TerminalRef) -> bool:
    return any(
        ((a in one and b in other) or (b in one and a in other)) and not (a in one and a in other)
        for one, other in sides
    )
