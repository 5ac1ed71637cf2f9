"""What gives way to a rush of a moment: supplies that trip, quick fuses; and the slow fuse that would not."""

from collections.abc import Callable
from math import inf
from typing import NamedTuple

from wiring.findings.act import Act
from wiring.findings.finding import Finding, Rank
from wiring.findings.guards import guarded_wires, wire_bears_a
from wiring.findings.offers import set_to
from wiring.findings.situation import Situation
from wiring.findings.words import amps, part_name
from wiring.plan.names import PartId
from wiring.standards.fuses import RATINGS_A
from wiring.studies.settings import number, text

TRIPS = ("shuts off", "folds back")  # one that only holds its current lets lamps and capacitors wait


def tripping(situation: Situation) -> list[PartId]:
    """Return the regulated supplies that switch off or give less when too much is asked of them."""
    supplies = situation.of("supply_regulated")
    return [part.id for part, kind in supplies if text(part, kind, "on_overload") in TRIPS]


def how_it_trips(situation: Situation, supply: PartId) -> str:
    """Return what such a supply does on overload, as a verb: "shuts off", "folds back"."""
    part = situation.plan.parts[supply]
    return text(part, situation.kinds[part.kind], "on_overload")


def fuse_rating_a(situation: Situation, fuse: PartId) -> float:
    """Return the rating a fuse is set to."""
    part = situation.plan.parts[fuse]
    return number(part, situation.kinds[part.kind], "rating_a")


def bears_now(situation: Situation, fuse: PartId) -> bool:
    """Whether a fuse bears what lasts: if not, its rush is not what is wrong."""
    figure = situation.figures.parts.get(fuse)
    return figure is not None and abs(figure.current_a) <= fuse_rating_a(situation, fuse)


class Rush(NamedTuple):
    """A rush of a moment in words: how a rule speaks of it."""

    about: str  # of the rule: "cold-lamps"
    what: str  # draws it: "The cold lamps"
    when: str  # it is, and what holds afterwards
    with_all: str  # what a supply does not start with
    less: str  # what makes it smaller, as an act
    otherwise: str  # what to do where no slow fuse bears it
    supply: str  # what to do where a supply gives way


def fuse_finding(
    situation: Situation,
    rush: Rush,
    fuse: PartId,
    peak_a: float,
    *,
    blows: bool,
    holds: Callable[[float], bool],
) -> Finding:
    """Return what is said of a fuse that a rush may blow; `holds` tells which slow ratings bear it.

    The mend is a slow fuse of the same rating, else the next larger one that bears it, where the thinnest
    wire behind it bears that too.
    """
    plan, rating_a, name = (
        situation.plan,
        fuse_rating_a(situation, fuse),
        f"-{situation.plan.parts[fuse].designation}",
    )
    bearing = [r for r in (rating_a, *RATINGS_A) if r >= rating_a and holds(r)]
    guarded = guarded_wires(situation)[fuse]
    most_a = max(wire_bears_a(situation, guarded), rating_a)  # one too large for its wire is another rule's
    better_a = next((r for r in bearing if r <= most_a), None)
    act: Act | None = None
    if better_a is None:
        mend = rush.otherwise
        if bearing and guarded.thinnest is not None:
            thinnest = plan.wires[guarded.thinnest]
            mend = (
                f"{rush.otherwise[:-1]}; -{thinnest.label} behind it ({thinnest.size}) bears "
                f"{amps(plan, most_a)}, too little for the slow fuse of {amps(plan, bearing[0])} that holds."
            )
    elif better_a > rating_a:
        larger = amps(plan, better_a)
        wire = f", which the wire behind it bears ({amps(plan, most_a)})" if most_a < inf else ""
        mend = f"Use a slow fuse of {larger}{wire}, or {rush.less}."
        act = set_to(situation, (fuse,), f"Make {name} slow, {larger}", speed="slow", rating_a=better_a)
    else:
        mend = f"Use a slow fuse of {amps(plan, rating_a)}, or {rush.less}."
        act = set_to(situation, (fuse,), f"Make {name} a slow one", speed="slow")
    return Finding(
        f"{rush.about}-fuse",
        Rank.WEAK if blows else Rank.NOTE,
        f"{rush.what} behind {part_name(plan, fuse)} draw {amps(plan, peak_a)} for a moment, "
        f"and it is {amps(plan, rating_a)}.",
        f"It {'blows' if blows else 'may blow'} when {rush.when}.",
        mend,
        (fuse,),
        act=act,
    )


def supply_finding(situation: Situation, rush: Rush, supply: PartId, peak_a: float) -> Finding:
    """Return what is said of a supply that gives way to a rush."""
    plan = situation.plan
    return Finding(
        f"{rush.about}-supply",
        Rank.WEAK,
        f"{rush.what} on {part_name(plan, supply)} draw {amps(plan, peak_a)} for a moment, "
        f"and it gives {amps(plan, situation.figures.supplies[supply].rated_a)}.",
        f"It {how_it_trips(situation, supply)} on overload, so it may never start{rush.with_all}.",
        rush.supply,
        (supply,),
    )
