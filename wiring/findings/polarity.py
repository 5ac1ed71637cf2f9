"""Parts that are the wrong way round."""

from collections import Counter
from collections.abc import Iterator

from wiring.findings.finding import Finding, Rank
from wiring.findings.leds_across import straight_across
from wiring.findings.offers import swap
from wiring.findings.situation import Situation
from wiring.findings.words import do, part_name, part_names
from wiring.plan.names import PartId
from wiring.studies.joints import STIFF, ends
from wiring.studies.roles import ONE_WAY, SOURCES, THROUGH

SEVERAL = 3  # so many on one supply the wrong way round, and none the right way: it is the supply's plug


def find(situation: Situation) -> Iterator[Finding]:
    """Find LEDs and electronic parts whose plus is on minus, one finding for LEDs and one for the rest."""
    plan = situation.plan
    turned = _told(situation, "turned")
    if turned:
        yield _as_they_stand(situation, turned)
    told = _told(situation, "backward")
    if not told:
        return
    for supply, parts in _all_backward(situation, set(told)).items():
        told = tuple(part for part in told if part not in parts)
        yield _supply_backward(situation, supply, parts)
    backward: dict[bool, list[str]] = {True: [], False: []}
    for part, kind in situation.of(*ONE_WAY):
        if part.id in told:
            backward[kind.behaviour == "led"].append(part.id)
    if leds := tuple(backward[True]):
        yield Finding(
            "led-backward",
            Rank.DANGER,
            f"{part_names(plan, leds)} {do(len(leds), 'is', 'are')} the wrong way round and "
            f"stay{do(len(leds), 's', '')} dark.",
            "Most LEDs are damaged by more than about 5 V in reverse.",
            f"Swap {do(len(leds), 'its two wires', 'the two wires of each')}: A goes to plus, K to minus"
            f"{_as_a_pair(situation, leds)}.",
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


def _told(situation: Situation, code: str) -> tuple[PartId, ...]:
    """Return the parts that a problem of that code names, in plan order; on AC none is wrong."""
    named = {p for problem in situation.figures.problems if problem.code == code for p in problem.parts}
    return (
        tuple(p for p in situation.plan.parts if p in named - situation.figures.alternating) if named else ()
    )


def _all_backward(situation: Situation, told: set[PartId]) -> dict[PartId, tuple[PartId, ...]]:
    """Return the supplies behind which every part that has a plus is the wrong way round, if several are."""
    kinds, found = situation.kinds, dict[PartId, tuple[PartId, ...]]()
    for circuit in situation.figures.circuits:
        behaviour = {i: kinds[situation.plan.parts[i].kind].behaviour for i in circuit}
        sources = [i for i in circuit if behaviour[i] in SOURCES]
        parts = tuple(i for i in circuit if behaviour[i] in ONE_WAY)
        if len(sources) == 1 and len(parts) >= SEVERAL and told.issuperset(parts):
            found[sources[0]] = parts
    return found


def _supply_backward(situation: Situation, supply: PartId, parts: tuple[PartId, ...]) -> Finding:
    plan = situation.plan
    name = f"-{plan.parts[supply].designation}"
    return Finding(
        "supply-backward",
        Rank.DANGER,
        f"All parts with a plus on {part_name(plan, supply)} are the wrong way round: "
        f"{part_names(plan, parts)}.",
        "They stay dark, and LEDs and electronic parts are damaged by more than about 5 V in reverse.",
        f"Swap the two wires of {name}, and measure which way round its plug is wired.",
        (supply, *parts),
        act=None if _bare(situation, parts) else swap(situation, (supply,), "+", "-"),
    )


def _as_they_stand(situation: Situation, parts: tuple[PartId, ...]) -> Finding:
    """Return what is said of parts that a switch has turned plus and minus round for."""
    many = len(parts)
    return Finding(
        "turned-round",
        Rank.WEAK,
        f"The switches have turned plus and minus round for {part_names(situation.plan, parts)}, which "
        f"{do(many, 'stays', 'stay')} dark.",
        "Most LEDs and electronic parts are damaged by more than about 5 V in reverse.",
        f"Feed {do(many, 'it', 'them')} from ahead of the switch that turns them round; an indicator wants a "
        "second LED beside it, the other way round.",
        parts,
    )


def _as_a_pair(situation: Situation, leds: tuple[PartId, ...]) -> str:
    """Return what to do where a pair may be meant: as many stand beside them the right way round."""
    net, ends_of = situation.joints.net(STIFF), THROUGH["led"][0]
    rows = [(part.id, *map(net.group_of, ends(part.id, ends_of))) for part, _ in situation.of("led")]
    forward = Counter((a, k) for part, a, k in rows if part not in leds)
    wrong = Counter((k, a) for part, a, k in rows if part in leds)
    if all(forward[way] == count for way, count in wrong.items()):
        return "; to light in turn, a pair wants a switch that turns plus and minus round"
    return ""


def _bare(situation: Situation, leds: tuple[str, ...]) -> bool:
    """Whether one of them has no resistor yet: turned round it would burn out."""
    return any(part.id in leds for part, _ in straight_across(situation))
