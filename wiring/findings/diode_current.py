"""Diodes and rectifiers that carry more than they are made for."""

from collections.abc import Iterator

from wiring.findings.finding import Finding, Rank
from wiring.findings.offers import set_one
from wiring.findings.situation import Situation
from wiring.findings.words import amps, part_name
from wiring.standards.current_ratings import next_rating_up
from wiring.studies.settings import number


def find(situation: Situation) -> Iterator[Finding]:
    """Find diodes and rectifiers over their rated current."""
    plan = situation.plan
    for part, kind in situation.of("diode", "rectifier"):
        figure = situation.figures.parts.get(part.id)
        rated_a = number(part, kind, "max_a")
        if figure is None or rated_a <= 0 or abs(figure.current_a) <= rated_a:
            continue
        better_a = next_rating_up(1.5 * abs(figure.current_a))
        yield Finding(
            "diode-current",
            Rank.DANGER,
            f"{part_name(plan, part.id)} carries {amps(plan, abs(figure.current_a))} "
            f"and is made for {amps(plan, rated_a)}.",
            "It gets too hot and fails, often as a short.",
            f"Use one for at least {amps(plan, better_a)}, or split the load.",
            (part.id,),
            act=set_one(situation, part.id, amps(plan, better_a), max_a=better_a),
        )
