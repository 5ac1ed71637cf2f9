"""Supplies whose feeds are tied together though they should not be."""

from collections.abc import Iterator, Sequence
from itertools import combinations
from typing import NamedTuple

from wiring.catalogue.kind import Kind
from wiring.findings.asked import Asked, asked
from wiring.findings.battery_charged import is_charged
from wiring.findings.finding import Finding, Rank
from wiring.findings.situation import Situation
from wiring.findings.words import part_name, volts
from wiring.plan.part import Part
from wiring.studies.joints import STIFF, ends
from wiring.studies.keeping import kept
from wiring.studies.nets import Net
from wiring.studies.roles import SOURCE_ENDS, SOURCES

ALIKE = 0.05  # of the volts: supplies this close count as equal


class _Source(NamedTuple):
    part: Part
    kind: Kind
    plus: int  # what its ends hang together with
    minus: int


def tied_pairs(situation: Situation) -> frozenset[frozenset[str]]:
    """Return the pairs of supplies that are tied at both ends."""
    sources = _sources(situation)
    return frozenset(
        frozenset((one.part.id, other.part.id))
        for one, other in combinations(sources, 2)
        if len(_ties(one, other)) >= 2
    )


def find(situation: Situation) -> Iterator[Finding]:
    """Find pairs of supplies tied at both ends, or AC and DC tied at one."""
    sources = _sources(situation)
    for one, other in combinations(sources, 2):
        ties = _ties(one, other)
        if len(ties) >= 2:
            said = _tied(situation, one, other, ties)
            charged = any(is_charged(situation, source.part.id) for source in (one, other))
            if said.rank > Rank.NOTE or not charged:  # what is charged is told of as such
                yield said
        elif ties and _alternates(one) is not _alternates(other):
            yield _finding(
                situation,
                one,
                other,
                "ac-meets-dc",
                Rank.WEAK,
                "share a wire, and one gives AC, the other DC.",
                "It works while nothing else joins them, but one slip puts AC on parts made for DC.",
                "Keep AC and DC apart, each with its own return wire.",
            )


def _sources(situation: Situation) -> Sequence[_Source]:
    return kept(_grouped, asked(situation, SOURCES), situation.joints.net(STIFF))


def _grouped(supplies: Asked, net: Net) -> Sequence[_Source]:
    return [
        _Source(part, kind, *(net.group_of(ref) for ref in ends(part.id, SOURCE_ENDS[kind.behaviour])))
        for part, kind in zip(supplies.parts, supplies.kinds, strict=True)
    ]


def _alternates(source: _Source) -> bool:
    return source.kind.behaviour == "supply_ac"


def _ties(one: _Source, other: _Source) -> list[str]:
    """Return which ends meet: "++", "+-", "-+", "--"."""
    return [
        mine + its
        for mine, near in zip("+-", one[2:], strict=True)
        for its, far in zip("+-", other[2:], strict=True)
        if near == far >= 0
    ]


def _tied(situation: Situation, one: _Source, other: _Source, ties: list[str]) -> Finding:
    if _alternates(one) is not _alternates(other):
        return _finding(
            situation,
            one,
            other,
            "ac-on-dc",
            Rank.DANGER,
            "are tied together at both ends, and one gives AC, the other DC.",
            "Each short-circuits the other half of the time.",
            "Take their wires apart; each needs its own circuit.",
        )
    if _alternates(one):
        return _finding(
            situation,
            one,
            other,
            "transformers-tied",
            Rank.DANGER,
            "are two AC supplies tied together at both ends.",
            "One drives the other backward: its mains plug can be live when it is pulled out.",
            "Give each its own circuit (NEM 609 forbids joining transformer outputs).",
        )
    if "+-" in ties or "-+" in ties:
        return _finding(
            situation,
            one,
            other,
            "supplies-opposed",
            Rank.DANGER,
            "are tied plus to minus in a ring.",
            "They drive each other into a short.",
            "Swap the wires of one of them, or keep the two apart.",
        )
    plan = situation.plan
    given = [_nominal_v(situation, source) for source in (one, other)]
    if abs(given[0] - given[1]) > ALIKE * max(given):
        return _finding(
            situation,
            one,
            other,
            "mixed-volts",
            Rank.DANGER,
            f"are tied together, one of {volts(plan, given[0])} and one of {volts(plan, given[1])}.",
            "The higher one drives current backward through the lower one, and parts get the wrong volts.",
            "Keep their plus wires apart; only the minus may be shared.",
        )
    return _finding(
        situation,
        one,
        other,
        "supplies-parallel",
        Rank.NOTE,
        "feed the same circuit side by side.",
        "They seldom share the load evenly, and a short gets the current of both.",
        "Split the circuit so that each feeds its own part of it.",
    )


def _nominal_v(situation: Situation, source: _Source) -> float:
    figure = situation.figures.supplies.get(source.part.id)
    return figure.nominal_v if figure is not None else 0.0


def _finding(
    situation: Situation,
    one: _Source,
    other: _Source,
    rule: str,
    rank: Rank,
    what: str,
    why: str,
    mend: str,
) -> Finding:
    names = f"{part_name(situation.plan, one.part.id)} and {part_name(situation.plan, other.part.id)}"
    return Finding(rule, rank, f"{names} {what}", why, mend, (one.part.id, other.part.id))
