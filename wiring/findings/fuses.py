"""Fuses that are missing, too large for the wire, too small for the load, or that could never blow."""

from collections.abc import Iterator
from math import isfinite

from wiring.catalogue.kind import Kind
from wiring.findings.act import Act
from wiring.findings.finding import Finding, Rank
from wiring.findings.offers import fuse_behind, set_one
from wiring.findings.situation import Situation
from wiring.findings.words import amps, part_name, wire_names
from wiring.plan.part import Part
from wiring.standards.fuses import opens_within_s
from wiring.studies.fault_current import fault_current_a
from wiring.studies.joints import STIFF, ends
from wiring.studies.protection import HEADROOM, guarded_by, rating_for, unguarded
from wiring.studies.roles import FUSES, SOURCE_ENDS, SOURCES
from wiring.studies.settings import number, text
from wiring.studies.wire_limits import warm_a

# Times a wire's limit: heat goes with the square, so beyond this the wire runs several times too hot.
MELTS = 2.0


def find(situation: Situation) -> Iterator[Finding]:
    """Find what is wrong about fuses, supply by supply and then fuse by fuse."""
    for part, kind in situation.of(*SOURCES):
        yield from _missing(situation, part, kind)
    for part, kind in situation.of(*FUSES):
        yield from _too_large(situation, part, kind)
        yield from _in_use(situation, part, kind)
        yield from _never_blows(situation, part, kind)


def _missing(situation: Situation, part: Part, kind: Kind) -> Iterator[Finding]:
    plan = situation.plan
    bare = unguarded(plan, situation.kinds, situation.joints, part)
    fault_a = fault_current_a(part, kind)
    thin = [w for w in plan.wires if w in bare.wires and warm_a(plan.wires[w].size) < fault_a]
    if not thin:
        return
    thinnest_a = min(warm_a(plan.wires[w].size) for w in thin)
    hot = fault_a > MELTS * thinnest_a
    figure = situation.figures.supplies.get(part.id)
    rating = rating_for(figure.current_a if figure else 0.0, thinnest_a)
    push = amps(plan, fault_a) if isfinite(fault_a) else "far more"
    yield Finding(
        "fuse-missing",
        Rank.DANGER if hot else Rank.NOTE,
        f"No fuse guards {wire_names(plan, thin)}: {part_name(plan, part.id)} can push {push} into a short, "
        f"the thinnest of them carries {amps(plan, thinnest_a)}.",
        f"A short would {'melt the insulation' if hot else 'make the wire hot'}, and nothing would stop it.",
        f"Put a {amps(plan, rating)} fuse close to {part_name(plan, part.id)}."
        if rating
        else f"Use thicker wire, and a fuse close to {part_name(plan, part.id)}.",
        (part.id,),
        tuple(thin),
        fuse_behind(situation, part.id, SOURCE_ENDS[kind.behaviour][0], rating),
    )


def _too_large(situation: Situation, part: Part, kind: Kind) -> Iterator[Finding]:
    plan = situation.plan
    guarded = guarded_by(plan, situation.kinds, situation.joints, part.id)
    rating = _rating_a(part, kind)
    if guarded.thinnest is None:
        return
    most_a = warm_a(plan.wires[guarded.thinnest].size)
    if rating <= most_a or _most_pushed_a(situation, part) <= most_a:
        return
    normal = situation.figures.parts.get(part.id)
    better = rating_for(abs(normal.current_a) if normal else 0.0, most_a)
    size = plan.wires[guarded.thinnest].size
    yield Finding(
        "fuse-too-large",
        Rank.DANGER if rating > MELTS * most_a else Rank.WEAK,
        f"{part_name(plan, part.id)} is {amps(plan, rating)}, but "
        f"{wire_names(plan, [guarded.thinnest])} behind it "
        f"({size}) carries no more than {amps(plan, most_a)}.",
        f"The wire would {'burn' if rating > MELTS * most_a else 'get hot'} before the fuse blows.",
        f"Use a {amps(plan, better)} fuse, or thicker wire."
        if better
        else f"Use thicker wire for {wire_names(plan, [guarded.thinnest])}.",
        (part.id,),
        (guarded.thinnest,),
        _rate(situation, part, kind, better),
    )


def _in_use(situation: Situation, part: Part, kind: Kind) -> Iterator[Finding]:
    plan = situation.plan
    figure = situation.figures.parts.get(part.id)
    rating = _rating_a(part, kind)
    if figure is None or abs(figure.current_a) * HEADROOM <= 1.001 * rating:
        return
    current = abs(figure.current_a)
    blows = current > rating
    guarded = guarded_by(plan, situation.kinds, situation.joints, part.id)
    wire_a = warm_a(plan.wires[guarded.thinnest].size) if guarded.thinnest else float("inf")
    better = rating_for(current, wire_a)
    yield Finding(
        "fuse-blows" if blows else "fuse-tight",
        Rank.DANGER if blows else Rank.WEAK,
        f"{part_name(plan, part.id)} is {amps(plan, rating)} and carries {amps(plan, current)} in use.",
        "It will blow during a session." if blows else "It runs hot and may blow for no reason you can see.",
        f"Use a {amps(plan, better)} fuse, or split the load."
        if better
        else "Split the load between two fuses; the wire behind this one is too thin for a larger one.",
        (part.id,),
        act=_rate(situation, part, kind, better),
    )


def _never_blows(situation: Situation, part: Part, kind: Kind) -> Iterator[Finding]:
    plan = situation.plan
    most_a = _most_pushed_a(situation, part)
    rating = _rating_a(part, kind)
    if most_a <= 0 or _opens(part, kind, most_a):
        return
    yield Finding(
        "fuse-never-blows",
        Rank.NOTE,
        f"{part_name(plan, part.id)} is {amps(plan, rating)}, "
        f"and its supply can push only {amps(plan, most_a)}.",
        "A fuse needs about twice its rating to open; here the supply's own limit acts first.",
        "Use a smaller fuse if the load allows it, else rely on the supply's limit.",
        (part.id,),
    )


def _rate(situation: Situation, part: Part, kind: Kind, rating_a: float | None) -> Act | None:
    """Offer a rating; not to a resettable fuse, which is sold in other ones."""
    if rating_a is None or kind.behaviour != "fuse":
        return None
    return set_one(situation, part.id, amps(situation.plan, rating_a), rating_a=rating_a)


def _opens(part: Part, kind: Kind, current_a: float) -> bool:
    if kind.behaviour == "resettable_fuse":
        return current_a >= number(part, kind, "trip_a")
    speed = text(part, kind, "speed")
    # A UL fuse opens at twice its rating, an IEC one at 2.1 times: the difference is not worth a word.
    speed = speed if speed == "slow" else "fast"
    return isfinite(opens_within_s(_rating_a(part, kind), 1.05 * current_a, speed))


def _rating_a(part: Part, kind: Kind) -> float:
    return number(part, kind, "rating_a" if kind.behaviour == "fuse" else "hold_a")


def _most_pushed_a(situation: Situation, fuse: Part) -> float:
    """Return what all supplies that reach the fuse can push through it together; 0 when none does."""
    own = ends(fuse.id, ("1", "2"))
    # Asked from the supplies, for they are few and every fuse asks the same.
    return sum(
        fault_current_a(part, kind)
        for part, kind in situation.of(*SOURCES)
        if not situation.joints.reach(ends(part.id, SOURCE_ENDS[kind.behaviour]), STIFF).terminals.isdisjoint(
            own
        )
    )
