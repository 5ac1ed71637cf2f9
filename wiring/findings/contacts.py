"""Switches and relays that carry more current than their contacts are made for."""

from collections.abc import Iterator

from wiring.findings.finding import Finding, Rank
from wiring.findings.offers import set_one
from wiring.findings.situation import Situation
from wiring.findings.words import amps, part_name
from wiring.plan.names import TerminalRef
from wiring.standards.current_ratings import next_rating_up
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
            better_a = next_rating_up(1.25 * most)
            yield Finding(
                "contact-current",
                Rank.DANGER if most > 2 * rated_a else Rank.WEAK,
                f"{part_name(plan, part.id)} carries {amps(plan, most)}; its contacts are made "
                f"for {amps(plan, rated_a)}.",
                "Its contacts burn or weld together.",
                f"Use a switch for at least {amps(plan, better_a)}, or let a relay carry the load.",
                (part.id,),
                act=set_one(situation, part.id, amps(plan, better_a), rated_a=better_a),
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
