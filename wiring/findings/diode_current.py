"""Diodes and rectifiers that carry more than they are made for.

What is printed on a rectifier diode is the forward current it bears on average over a cycle, I F(AV), behind
half a wave into a resistive load; on a bridge it is the average of what comes out of it, of which each diode
carries half. So makers' sheets of 1 to 10 A diodes and bridges have it ("maximum average forward rectified
current; single phase, half wave, 60 Hz, resistive or inductive load; for capacitive load derate current by
20 %"), and so NEETS, module 7, explains it. RMS would warn of a lone diode at two thirds of what it bears,
and let a bridge carry a quarter too much.
"""

from collections.abc import Iterator

from wiring.circuit.many_readings import mean_out_a
from wiring.findings.finding import Finding, Rank
from wiring.findings.offers import set_one
from wiring.findings.situation import Situation
from wiring.findings.words import amps, part_name
from wiring.standards.current_ratings import next_rating_up
from wiring.studies.settings import number

OUT = {"diode": "K", "rectifier": "+"}
SMOOTHED = (
    0.8  # of its rating with a capacitor behind it, which it fills in short strong pulses: those sheets
)


def find(situation: Situation) -> Iterator[Finding]:
    """Find diodes and rectifiers over their rated average current."""
    plan = situation.plan
    for part, kind in situation.of(*OUT):
        given_a = abs(mean_out_a(situation.figures, part.id, OUT[kind.behaviour]))
        smoothed = number(part, kind, "capacitance") > 0
        derated = SMOOTHED if smoothed else 1.0
        rated_a = derated * number(part, kind, "max_a")
        if rated_a <= 0 or given_a <= rated_a:
            continue
        better_a = next_rating_up(1.5 * given_a / derated)
        on_average = " on average" if part.id in situation.figures.alternating else ""
        carries = "gives" if kind.behaviour == "rectifier" else "carries"
        yield Finding(
            "diode-current",
            Rank.DANGER,
            f"{part_name(plan, part.id)} {carries} {amps(plan, given_a)}{on_average} "
            f"and is made for {amps(plan, rated_a)}{' with its capacitor' if smoothed else ''}.",
            "It gets too hot and fails, often as a short.",
            f"Use one for at least {amps(plan, better_a)}, or split the load.",
            (part.id,),
            act=set_one(situation, part.id, amps(plan, better_a), max_a=better_a),
        )
