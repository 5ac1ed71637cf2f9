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


class _Tie(NamedTuple):
    """What is said of two supplies that are tied; `what` takes the volts of both."""

    rule: str
    rank: Rank
    what: str
    why: str
    mend: str


AC_MEETS_DC = _Tie(
    "ac-meets-dc",
    Rank.WEAK,
    "share a wire, and one gives AC, the other DC.",
    "It works while nothing else joins them, but one slip puts AC on parts made for DC.",
    "Keep AC and DC apart, each with its own return wire.",
)
AC_ON_DC = _Tie(
    "ac-on-dc",
    Rank.DANGER,
    "are tied together at both ends, and one gives AC, the other DC.",
    "Each short-circuits the other half of the time.",
    "Take their wires apart; each needs its own circuit.",
)
TRANSFORMERS = _Tie(
    "transformers-tied",
    Rank.DANGER,
    "are two AC supplies tied together at both ends.",
    "One drives the other backward: its mains plug can be live when it is pulled out.",
    "Give each its own circuit (NEM 609 forbids joining transformer outputs).",
)
OPPOSED = _Tie(
    "supplies-opposed",
    Rank.DANGER,
    "are tied plus to minus in a ring.",
    "They drive each other into a short.",
    "Swap the wires of one of them, or keep the two apart.",
)
MIXED = _Tie(
    "mixed-volts",
    Rank.DANGER,
    "are tied together, one of {} and one of {}.",
    "The higher one drives current backward through the lower one, and parts get the wrong volts.",
    "Keep their plus wires apart; only the minus may be shared.",
)
PARALLEL = _Tie(
    "supplies-parallel",
    Rank.NOTE,
    "feed the same circuit side by side.",
    "They seldom share the load evenly, and a short gets the current of both.",
    "Split the circuit so that each feeds its own part of it.",
)


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
    for one, other in combinations(_sources(situation), 2):
        ties = _ties(one, other)
        if not ties:
            continue
        tie, given = _tie(one, other, ties), [_nominal_v(situation, source) for source in (one, other)]
        if tie is PARALLEL and abs(given[0] - given[1]) > ALIKE * max(given):
            tie = MIXED
        both = one.part.id, other.part.id
        if tie is None or (tie is PARALLEL and any(is_charged(situation, part) for part in both)):
            continue  # what is charged is told of as such
        names = " and ".join(part_name(situation.plan, part) for part in both)
        what = tie.what.format(*(volts(situation.plan, volts_v) for volts_v in given))
        yield Finding(tie.rule, tie.rank, f"{names} {what}", tie.why, tie.mend, both)


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


def _tie(one: _Source, other: _Source, ties: Sequence[str]) -> _Tie | None:
    """Return what to say of two supplies whose ends meet, volts aside; None where that does no harm."""
    mixed = _alternates(one) is not _alternates(other)
    if len(ties) < 2:
        return AC_MEETS_DC if mixed else None
    if mixed:
        return AC_ON_DC
    if _alternates(one):
        return TRANSFORMERS
    return OPPOSED if "+-" in ties or "-+" in ties else PARALLEL


def _nominal_v(situation: Situation, source: _Source) -> float:
    figure = situation.figures.supplies.get(source.part.id)
    return figure.nominal_v if figure is not None else 0.0
