"""Supplies and batteries that are asked for more than they can give."""

from collections.abc import Iterator
from math import isfinite

from wiring.findings.finding import Finding, Rank
from wiring.findings.leds_across import burning
from wiring.findings.situation import Situation
from wiring.findings.words import amps, do, part_name, part_names, percent, volts
from wiring.plan.names import PartId
from wiring.studies.asked_current import asked_a
from wiring.studies.roles import SOURCES

# Common practice, no source: a supply that runs warm all evening should have a fifth in hand.
NEARLY_FULL = 0.8
OVER = 1.001  # of the rating: a supply in its limit gives its rating to within a rounding


def find(situation: Situation) -> Iterator[Finding]:
    """Find supplies in their limit, over their rating, or nearly full."""
    plan = situation.plan
    shorted, shut_off = _named_in(situation, "shorted"), _named_in(situation, "over limit")
    against = _named_in(situation, "loop")
    for part, _kind in situation.of(*SOURCES):
        figure = situation.figures.supplies.get(part.id)
        if figure is None or part.id in shorted or (figure.limited and part.id in against):
            continue
        nearly = isfinite(figure.rated_a) and figure.current_a > NEARLY_FULL * figure.rated_a
        if not (nearly or figure.limited or part.id in shut_off):
            continue
        name = part_name(plan, part.id)
        given, rated = amps(plan, figure.current_a), amps(plan, figure.rated_a)
        if part.id in shut_off:
            yield Finding(
                "supply-shut-off",
                Rank.DANGER,
                f"{name} has shut itself off: it is asked for more than its {rated}.",
                "Nothing on it works until the load is less.",
                _mend(situation, part.id),
                (part.id,),
            )
        elif figure.limited:
            yield Finding(
                "supply-in-limit",
                Rank.DANGER,
                f"{name} has reached its limit of {rated} and gives only {volts(plan, figure.volts_v)}.",
                "Everything on it runs weak, and the supply gets hot or shuts off.",
                _mend(situation, part.id),
                (part.id,),
            )
        elif isfinite(figure.rated_a) and figure.current_a > OVER * figure.rated_a:
            yield Finding(
                "supply-overload",
                Rank.DANGER,
                f"{name} is asked for {given} but is made for {rated}.",
                "An overloaded supply gets hot, sags and may fail.",
                resistors_first(situation, part.id) or _larger(situation, figure.current_a),
                (part.id,),
            )
        else:
            yield Finding(
                "supply-nearly-full",
                Rank.NOTE,
                f"{name} gives {given}, which is {percent(figure.current_a / figure.rated_a)} of "
                f"its {rated}.",
                "There is little left for what you may add, and it runs warm.",
                resistors_first(situation, part.id)
                or "Leave it so if nothing is to be added; else plan a larger supply.",
                (part.id,),
            )


def _mend(situation: Situation, supply: PartId) -> str:
    first = resistors_first(situation, supply)
    if first is not None:
        return first
    wanted_a = asked_a(situation.plan, situation.kinds, situation.positions, supply)
    if wanted_a is None:
        return "Use a larger supply, or move some of the parts to a second one."
    return _larger(situation, wanted_a)


def resistors_first(situation: Situation, supply: PartId) -> str | None:
    """Return the mend of a supply that bare LEDs draw upon; None where there are none."""
    bare = burning(situation, supply)
    if not bare:
        return None
    return (
        f"Put the resistor to {part_names(situation.plan, bare)} first; a larger supply would only burn "
        f"{do(len(bare), 'it', 'them')} sooner."
    )


def _larger(situation: Situation, wanted_a: float) -> str:
    return (
        f"Use a supply for at least {amps(situation.plan, wanted_a / NEARLY_FULL)}, "
        "or move some of the parts to a second one."
    )


def _named_in(situation: Situation, code: str) -> frozenset[str]:
    return frozenset(
        p for problem in situation.figures.problems if problem.code == code for p in problem.parts
    )
