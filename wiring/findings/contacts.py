"""Switches and relays that carry more current than their contacts are made for."""

from collections.abc import Iterator

from wiring.findings.finding import Finding, Rank
from wiring.findings.situation import Situation
from wiring.findings.words import amps, part_name
from wiring.plan.names import TerminalRef
from wiring.studies.joints import Link
from wiring.studies.settings import number


def find(situation: Situation) -> Iterator[Finding]:
    """Find switches whose wires bring more current to a terminal than the contacts are rated for."""
    plan = situation.plan
    for part, kind in situation.of("switch"):
        rated_a = number(part, kind, "rated_a")
        if rated_a <= 0:
            continue
        most = max((_through_a(situation, TerminalRef(part.id, t.name)) for t in kind.terminals), default=0.0)
        if most > 1.001 * rated_a:
            yield Finding(
                "contact-current",
                Rank.DANGER if most > 2 * rated_a else Rank.WEAK,
                f"{part_name(plan, part.id)} carries {amps(plan, most)}; its contacts are made "
                f"for {amps(plan, rated_a)}.",
                "Its contacts burn or weld together.",
                f"Use a switch for at least {amps(plan, 1.25 * most)}, or let a relay carry the load.",
                (part.id,),
            )


def _through_a(situation: Situation, ref: TerminalRef) -> float:
    """Return the current the wires of a terminal bring to it; what they only pass along cancels out."""
    net_a = 0.0
    for to, link, via in situation.joints.edges.get(ref, ()):
        figure = situation.figures.wires.get(via) if link == Link.WIRE else None
        if figure is not None:
            towards = situation.plan.wires[via].end == ref and situation.plan.wires[via].start == to
            net_a += figure.current_a if towards else -figure.current_a
    return abs(net_a)
