"""Resistors that get hotter than they are made for."""

from collections.abc import Iterator

from wiring.findings.asked import asked, figures_of, settings_of
from wiring.findings.finding import Finding, Rank
from wiring.findings.offers import set_one
from wiring.findings.situation import Situation
from wiring.findings.words import part_name, watts
from wiring.studies.resistor_choice import DERATE, RATINGS_W

RESISTORS = ("resistor",)


def find(situation: Situation) -> Iterator[Finding]:
    """Find resistors over their rated power."""
    plan = situation.plan
    some = asked(situation, RESISTORS)
    rated, power = settings_of(some, "rated_power"), figures_of(situation, some).power
    for row, part, _ in some.rows((rated > 0) & (power > rated)):
        rated_w, power_w = float(rated[row]), float(power[row])
        larger = next((rating for rating in RATINGS_W if power_w <= DERATE * rating), None)
        yield Finding(
            "resistor-power",
            Rank.DANGER,
            f"{part_name(plan, part.id)} turns {watts(plan, power_w)} into heat and is "
            f"made for {watts(plan, rated_w)}.",
            "It gets hot enough to scorch what it touches, and burns out.",
            f"Use one rated {watts(plan, larger)}, and give it air."
            if larger
            else "Use a supply with fewer volts, so that less must be lost in a resistor.",
            (part.id,),
            act=set_one(situation, part.id, watts(plan, larger), rated_power=larger) if larger else None,
        )
