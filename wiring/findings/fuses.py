"""Fuses that are missing, too large for the wire, too small for the load, or that could never blow."""

from collections.abc import Iterator, Mapping, Sequence
from math import isfinite
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from wiring.catalogue.kind import Kind
from wiring.circuit.linear import Floats
from wiring.findings.act import Act
from wiring.findings.asked import Asked, asked, figures_of
from wiring.findings.finding import Finding, Rank
from wiring.findings.guards import fuse_leads, guarded_wires, source_leads, wire_bears_a
from wiring.findings.offers import fuse_behind, set_one
from wiring.findings.situation import Situation
from wiring.findings.words import amps, part_name, wire_names
from wiring.plan.names import PartId, WireId
from wiring.plan.part import Part
from wiring.plan.wire import Wire
from wiring.standards.fuses import opens_within_s
from wiring.studies.fault_current import fault_current_a
from wiring.studies.joints import STIFF, ends
from wiring.studies.keeping import kept
from wiring.studies.nets import Net
from wiring.studies.protection import (
    HEADROOM,
    Ends,
    Guarded,
    Unguarded,
    all_unguarded,
    carries_a,
    rating_for,
)
from wiring.studies.roles import FUSES, LOADS, SOURCE_ENDS, SOURCES, THROUGH
from wiring.studies.settings import number, text
from wiring.studies.wire_limits import warm_a

# Times a wire's limit: heat goes with the square, so beyond this the wire runs several times too hot.
MELTS = 2.0
TIGHT = 1.001  # of a rating: less above it is rounding


class _Exposed(NamedTuple):
    """Wires of a supply that no fuse guards and a short makes hot."""

    thin: tuple[WireId, ...]
    thinnest_a: float


class _Fuse(NamedTuple):
    part: Part
    kind: Kind
    rating_a: float
    most_a: float  # what all supplies that reach it push through it together; 0 when none does
    now_a: float
    guarded: Guarded


def find(situation: Situation) -> Iterator[Finding]:
    """Find what is wrong about fuses, supply by supply and then fuse by fuse."""
    sources, fuses = asked(situation, SOURCES), asked(situation, FUSES)
    leads, wires = kept(source_leads, sources), situation.plan.wires
    unguarded = all_unguarded(leads, kept(_load_ends, asked(situation, LOADS)), situation.joints)
    exposed = kept(_exposed, sources, unguarded, wires)
    for part, kind in zip(sources.parts, sources.kinds, strict=True):
        if part.id in exposed:
            yield _missing(situation, part, kind, exposed[part.id])
    if not fuses.ids:
        return
    own, guarded = kept(fuse_leads, fuses), guarded_wires(situation)
    pushed = kept(_pushed, sources, leads, own, situation.joints.net(STIFF))
    amps_now, ratings_a = np.abs(figures_of(situation, fuses).amps), kept(_ratings_a, fuses)
    tight = amps_now * HEADROOM > TIGHT * ratings_a
    for row, part, kind in fuses.rows(tight | kept(_standing, fuses, guarded, pushed, wires)):
        now_a, rating_a = float(amps_now[row]), float(ratings_a[row])
        fuse = _Fuse(part, kind, rating_a, pushed[row], now_a, guarded[part.id])
        yield from _too_large(situation, fuse)
        yield from _in_use(situation, fuse)
        yield from _never_blows(situation, fuse)


def _ratings_a(fuses: Asked) -> Floats:
    rows = zip(fuses.parts, fuses.kinds, strict=True)
    return np.array([carries_a(part, kind) for part, kind in rows], dtype=np.float64)


def _standing(
    fuses: Asked, guarded: Mapping[PartId, Guarded], pushed: Sequence[float], wires: Mapping[WireId, Wire]
) -> NDArray[np.bool_]:
    """Return the fuses of which something may be wrong whatever flows."""
    rows = zip(fuses.parts, fuses.kinds, kept(_ratings_a, fuses).tolist(), pushed, strict=True)
    found = [
        _melts_first(wires, guarded[part.id], rating_a, most_a) or _is_idle(part, kind, most_a)
        for part, kind, rating_a, most_a in rows
    ]
    return np.array(found, dtype=np.bool_)


def _melts_first(wires: Mapping[WireId, Wire], guarded: Guarded, rating_a: float, most_a: float) -> bool:
    """Whether a wire behind a fuse gets hot before it blows."""
    if guarded.thinnest is None:
        return False
    warm = warm_a(wires[guarded.thinnest].size)
    return rating_a > warm and most_a > warm


def _is_idle(part: Part, kind: Kind, most_a: float) -> bool:
    """Whether a fuse could never blow."""
    return most_a > 0 and not _opens(part, kind, most_a)


def _load_ends(loads: Asked) -> Sequence[Ends]:
    rows = zip(loads.ids, loads.kinds, strict=True)
    return [Ends(part, *ends(part, pair)) for part, kind in rows for pair in THROUGH[kind.behaviour]]


def _exposed(
    sources: Asked, unguarded: Mapping[PartId, Unguarded], wires: Mapping[WireId, Wire]
) -> Mapping[PartId, _Exposed]:
    found: dict[PartId, _Exposed] = {}
    for part, kind in zip(sources.parts, sources.kinds, strict=True):
        bare, fault_a = unguarded[part.id].wires, fault_current_a(part, kind)
        thin = tuple(w for w in wires if w in bare and warm_a(wires[w].size) < fault_a) if bare else ()
        if thin:
            found[part.id] = _Exposed(thin, min(warm_a(wires[w].size) for w in thin))
    return found


def _pushed(sources: Asked, leads: Sequence[Ends], fuses: Sequence[Ends], net: Net) -> Sequence[float]:
    faults = [fault_current_a(part, kind) for part, kind in zip(sources.parts, sources.kinds, strict=True)]
    reached = [{net.group_of(one), net.group_of(other)} - {-1} for _, one, other in leads]
    own = [{net.group_of(one), net.group_of(other)} for _, one, other in fuses]
    return [
        sum(fault for fault, groups in zip(faults, reached, strict=True) if groups & mine) for mine in own
    ]


def _missing(situation: Situation, part: Part, kind: Kind, exposed: _Exposed) -> Finding:
    plan, fault_a = situation.plan, fault_current_a(part, kind)
    thin, thinnest_a = exposed
    hot = fault_a > MELTS * thinnest_a
    plus, figure = SOURCE_ENDS[kind.behaviour][0], situation.figures.supplies.get(part.id)
    rating = rating_for(abs(figure.current_a) if figure else 0.0, thinnest_a)
    push = amps(plan, fault_a) if isfinite(fault_a) else "far more"
    return Finding(
        "fuse-missing",
        Rank.DANGER if hot else Rank.NOTE,
        f"No fuse guards {wire_names(plan, thin)}: {part_name(plan, part.id)} can push {push} into a short, "
        f"the thinnest of them gets hot above {amps(plan, thinnest_a)}.",
        f"A short would {'melt the insulation' if hot else 'make the wire hot'}, and nothing would stop it.",
        f"Put a fuse of {amps(plan, rating)} close to {part_name(plan, part.id)}."
        if rating
        else f"Use thicker wire, and a fuse close to {part_name(plan, part.id)}.",
        (part.id,),
        thin,
        # What a supply gives that has reached its limit is not what it will give once it is mended.
        None if figure is None or figure.limited else fuse_behind(situation, part.id, plus, rating),
    )


def _too_large(situation: Situation, fuse: _Fuse) -> Iterator[Finding]:
    plan, (part, kind, rating, pushed_a, now_a, guarded) = situation.plan, fuse
    if guarded.thinnest is None or not _melts_first(plan.wires, guarded, rating, pushed_a):
        return
    size = plan.wires[guarded.thinnest].size
    most_a = warm_a(size)
    better = rating_for(now_a, most_a)
    yield Finding(
        "fuse-too-large",
        Rank.DANGER if rating > MELTS * most_a else Rank.WEAK,
        f"{part_name(plan, part.id)} is {amps(plan, rating)}, but "
        f"{wire_names(plan, [guarded.thinnest])} behind it "
        f"({size}) gets hot above {amps(plan, most_a)}.",
        f"The wire would {'burn' if rating > MELTS * most_a else 'get hot'} before the fuse blows.",
        f"Use a fuse of {amps(plan, better)}, or thicker wire."
        if better
        else f"Use thicker wire for {wire_names(plan, [guarded.thinnest])}.",
        (part.id,),
        (guarded.thinnest,),
        _rate(situation, part, kind, better),
    )


def _in_use(situation: Situation, fuse: _Fuse) -> Iterator[Finding]:
    plan, (part, kind, rating, _, current, guarded) = situation.plan, fuse
    if current * HEADROOM <= TIGHT * rating or part.id not in situation.figures.parts:
        return
    blows = current > rating
    better = rating_for(current, wire_bears_a(situation, guarded))
    yield Finding(
        "fuse-blows" if blows else "fuse-tight",
        Rank.DANGER if blows else Rank.WEAK,
        f"{part_name(plan, part.id)} is {amps(plan, rating)} and carries {amps(plan, current)} in use.",
        "It will blow during a session." if blows else "It runs hot and may blow for no reason you can see.",
        f"Use a fuse of {amps(plan, better)}, or split the load."
        if better
        else "Split the load between two fuses; the wire behind this one is too thin for a larger one.",
        (part.id,),
        act=_rate(situation, part, kind, better),
    )


def _never_blows(situation: Situation, fuse: _Fuse) -> Iterator[Finding]:
    plan, (part, kind, rating, most_a, _, _) = situation.plan, fuse
    if not _is_idle(part, kind, most_a):
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
    return isfinite(opens_within_s(carries_a(part, kind), 1.05 * current_a, speed))
