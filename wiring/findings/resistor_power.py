"""Resistors that get hotter than they are made for."""

from collections.abc import Iterator

from wiring.findings.finding import Finding, Rank
from wiring.findings.offers import set_one
from wiring.findings.situation import Situation
from wiring.findings.words import part_name, watts
from wiring.studies.resistor_choice import DERATE, RATINGS_W
from wiring.studies.settings import number


def find(situation: Situation) -> Iterator[Finding]:
    """Find resistors over their rated power."""
    plan = situation.plan
    for part, kind in situation.of("resistor"):
        figure = situation.figures.parts.get(part.id)
        rated_w = number(part, kind, "rated_power")
        if figure is None or rated_w <= 0 or figure.power_w <= rated_w:
            continue
        larger = next((rating for rating in RATINGS_W if figure.power_w <= DERATE * rating), None)
        yield Finding(
            "resistor-power",
            Rank.DANGER,
            f"{part_name(plan, part.id)} turns {watts(plan, figure.power_w)} into heat and is "
            f"made for {watts(plan, rated_w)}.",
            "It gets hot enough to scorch what it touches, and burns out.",
            f"Use one rated {watts(plan, larger)}, and give it air."
            if larger
            else "Use a supply with fewer volts, so that less must be lost in a resistor.",
            (part.id,),
            act=set_one(situation, part.id, watts(plan, larger), rated_power=larger) if larger else None,
        )
