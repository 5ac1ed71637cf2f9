"""Supplies and batteries that are asked for more than they can give."""

from collections.abc import Iterator
from itertools import chain
from typing import NamedTuple

from wiring.circuit.figures import SupplyFigure
from wiring.findings.act import Act
from wiring.findings.finding import Finding, Rank
from wiring.findings.larger_supply import larger_supply
from wiring.findings.leds_across import burning
from wiring.findings.mixed_voltages import tied_pairs
from wiring.findings.situation import Situation
from wiring.findings.words import amps, do, part_name, part_names, percent, volts
from wiring.plan.names import PartId, WireId
from wiring.studies.asked_current import asked_a
from wiring.studies.roles import SOURCES

# Common practice, no source: a supply that runs warm all evening should have a fifth in hand.
NEARLY_FULL = 0.8
OVER = 1.001  # of the rating: a supply in its limit gives its rating to within a rounding


def find(situation: Situation) -> Iterator[Finding]:
    """Find supplies in their limit, over their rating, or nearly full."""
    shorted, shut_off = _named_in(situation, "shorted"), _named_in(situation, "over limit")
    against = _named_in(situation, "loop")
    for part, _kind in situation.of(*SOURCES):
        figure = situation.figures.supplies.get(part.id)
        if figure is None or part.id in shorted or (figure.limited and part.id in against):
            continue
        if part.id in shut_off:
            yield _shut_off(situation, part.id, figure)
        elif figure.limited:
            yield _in_limit(situation, part.id, figure)
        elif figure.current_a > OVER * figure.rated_a:
            yield _overload(situation, part.id, figure)
        elif figure.current_a > NEARLY_FULL * figure.rated_a:
            yield _nearly_full(situation, part.id, figure)


def _shut_off(situation: Situation, supply: PartId, figure: SupplyFigure) -> Finding:
    name, rated = part_name(situation.plan, supply), amps(situation.plan, figure.rated_a)
    return Finding(
        "supply-shut-off",
        Rank.DANGER,
        f"{name} has shut itself off: it is asked for more than its {rated}.",
        "Nothing on it works until the load is less.",
        *_mend(situation, supply),
    )


def _in_limit(situation: Situation, supply: PartId, figure: SupplyFigure) -> Finding:
    plan = situation.plan
    name, rated = part_name(plan, supply), amps(plan, figure.rated_a)
    return Finding(
        "supply-in-limit",
        Rank.DANGER,
        f"{name} has reached its limit of {rated} and gives only {volts(plan, figure.volts_v)}.",
        "Everything on it runs weak, and the supply gets hot or shuts off.",
        *_mend(situation, supply),
    )


def _overload(situation: Situation, supply: PartId, figure: SupplyFigure) -> Finding:
    plan = situation.plan
    given, rated = amps(plan, figure.current_a), amps(plan, figure.rated_a)
    return Finding(
        "supply-overload",
        Rank.DANGER,
        f"{part_name(plan, supply)} is asked for {given} but is made for {rated}.",
        "An overloaded supply gets hot, sags and may fail.",
        *_mend(situation, supply, figure.current_a),
    )


def _nearly_full(situation: Situation, supply: PartId, figure: SupplyFigure) -> Finding:
    plan, share = situation.plan, percent(figure.current_a / figure.rated_a)
    given, rated = amps(plan, figure.current_a), amps(plan, figure.rated_a)
    return Finding(
        "supply-nearly-full",
        Rank.NOTE,
        f"{part_name(plan, supply)} gives {given}, which is {share} of its {rated}.",
        "There is little left for what you may add, and it runs warm.",
        resistors_first(situation, supply)
        or "Leave it so if nothing is to be added; else plan a larger supply.",
        (supply,),
    )


class _Mend(NamedTuple):
    """The end of a finding about a supply."""

    mend: str
    parts: tuple[PartId, ...]
    wires: tuple[WireId, ...] = ()
    act: Act | None = None


def _mend(situation: Situation, supply: PartId, wanted_a: float | None = None) -> _Mend:
    """Return what mends a supply; `wanted_a` is what it gives, None where it is to be found out."""
    first = resistors_first(situation, supply)
    if first is not None:
        return _Mend(first, (supply,))
    tied = sorted({*chain.from_iterable(p for p in tied_pairs(situation) if supply in p)} - {supply})
    if tied:  # it works against them: more amperes would only push harder
        names = part_names(situation.plan, tied)
        return _Mend(f"Part it from {names} first: they are tied together at both ends.", (supply, *tied))
    if wanted_a is None:
        wanted_a = asked_a(situation.plan, situation.kinds, situation.positions, supply)
    if wanted_a is None:
        return _Mend("Use a larger supply, or move some of the parts to a second one.", (supply,))
    rating_a, act = larger_supply(situation, supply, wanted_a / NEARLY_FULL)
    least = amps(situation.plan, rating_a)
    mend = f"Use a supply for at least {least}, or move some of the parts to a second one."
    return _Mend(mend, (supply,), act=act)


def resistors_first(situation: Situation, supply: PartId, larger: str = "a larger supply") -> str | None:
    """Return the mend of a supply that bare LEDs draw upon; None where there are none."""
    bare = burning(situation, supply)
    if not bare:
        return None
    return (
        f"Put the resistor to {part_names(situation.plan, bare)} first; {larger} would only burn "
        f"{do(len(bare), 'it', 'them')} sooner."
    )


def _named_in(situation: Situation, code: str) -> frozenset[str]:
    return frozenset(
        p for problem in situation.figures.problems if problem.code == code for p in problem.parts
    )
