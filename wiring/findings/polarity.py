"""Parts that are the wrong way round."""

from collections.abc import Iterator

from wiring.findings.finding import Finding, Rank
from wiring.findings.leds_across import straight_across
from wiring.findings.offers import swap
from wiring.findings.situation import Situation
from wiring.findings.words import do, part_names
from wiring.studies.roles import ONE_WAY


def find(situation: Situation) -> Iterator[Finding]:
    """Find LEDs and electronic parts whose plus is on minus, one finding for LEDs and one for the rest."""
    plan = situation.plan
    told = {p for problem in situation.figures.problems if problem.code == "backward" for p in problem.parts}
    if not told:
        return
    backward: dict[bool, list[str]] = {True: [], False: []}
    for part, kind in situation.of(*ONE_WAY):
        if part.id in told and part.id not in situation.figures.alternating:
            backward[kind.behaviour == "led"].append(part.id)
    if leds := tuple(backward[True]):
        yield Finding(
            "led-backward",
            Rank.DANGER,
            f"{part_names(plan, leds)} {do(len(leds), 'is', 'are')} the wrong way round and "
            f"stay{do(len(leds), 's', '')} dark.",
            "Most LEDs are damaged by more than about 5 V in reverse.",
            f"Swap {do(len(leds), 'its two wires', 'the two wires of each')}: A goes to plus, K to minus.",
            leds,
            act=None if _bare(situation, leds) else swap(situation, leds, "A", "K"),
        )
    if rest := tuple(backward[False]):
        yield Finding(
            "wrong-polarity",
            Rank.DANGER,
            f"{part_names(plan, rest)} {do(len(rest), 'has', 'have')} plus and minus swapped.",
            "Electronic parts do not work the wrong way round and may be destroyed.",
            f"Swap {do(len(rest), 'its two wires', 'the two wires of each')}.",
            rest,
            act=swap(situation, rest, "+", "-"),
        )


def _bare(situation: Situation, leds: tuple[str, ...]) -> bool:
    """Whether one of them has no resistor yet: turned round it would burn out."""
    return any(part.id in leds for part, _ in straight_across(situation))
