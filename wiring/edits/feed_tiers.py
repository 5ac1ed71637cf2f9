"""How selected fuses and switches stand to each other in a feed: one after another, or side by side.

Fuses stand side by side, each with its own share of the loads: in a row only the weakest would ever blow.
Switches stand side by side behind them. What a supply reaches already leads on where it is.
"""

import math
from collections import defaultdict
from collections.abc import Callable, Mapping, Sequence
from typing import NamedTuple

from wiring.catalogue.kind import Kind
from wiring.edits.feed_ends import FUSES
from wiring.edits.feed_gates import is_passed
from wiring.edits.poles import Pole, joined
from wiring.plan.names import PartId, TerminalRef
from wiring.plan.part import Part
from wiring.plan.places import Point
from wiring.plan.plan import Plan

Far = Callable[[Point, Point], float]  # how long a wire from place to place would be, in mm


class Stem(NamedTuple):
    """One way out of the root: over a fuse of its own or a switch that is fed; then over switches, if any."""

    gate: Part | None  # None: the root itself
    is_fed: bool  # a supply reaches it already
    switches: tuple[Part, ...] = ()


class Tiers(NamedTuple):
    """The gates before all loads in a row, and the ways out behind them."""

    series: tuple[Part, ...]
    stems: tuple[Stem, ...]


class Slot(NamedTuple):
    """One way out to loads: the gates it leads over and where the last of them stands; the root has none."""

    via: tuple[Part, ...]
    at: Point | None


def tiers(
    plan: Plan,
    kinds: Mapping[str, Kind],
    gates: Sequence[Part],
    known: Mapping[TerminalRef, Pole],
    *,
    in_series: bool = False,
    far: Far = math.dist,
    others: int = 0,
) -> Tiers:
    """Return how the gates stand; with `in_series` new switches are passed one after another.

    `others` is the number of fuses that feed loads of their own already and are fed beside these.
    """
    fed = [g for g in gates if is_passed(g, kinds, known)]
    fresh = [g for g in gates if g not in fed]
    fuses, switches = (
        [g for g in fresh if (kinds[g.kind].behaviour in FUSES) == yes] for yes in (True, False)
    )
    last = _last(plan, kinds, fed, known)
    is_row = in_series or len(switches) < 2
    lone = len(last) == 1 and kinds[last[0].kind].behaviour not in FUSES
    here = len(fuses) + sum(kinds[g.kind].behaviour in FUSES for g in last)
    if (not here or here + others < 2) and len(last) < 2:
        row = [g for g in gates if not (g in switches and not is_row)]
        return Tiers(tuple(row), (Stem(None, True, () if is_row else tuple(switches)),))
    if not last or lone:  # new fuses side by side, behind what is fed; one switch is before all of them
        stems = _behind_nearest([Stem(g, False) for g in fuses], () if is_row else switches, far)
        return Tiers((*fed, *(switches if is_row else ())), stems)
    beginnings = [*(Stem(g, True) for g in last), *(Stem(g, False) for g in fuses)]
    return Tiers(tuple(g for g in fed if g not in last), _behind_nearest(beginnings, switches, far))


def slots(stems: Sequence[Stem]) -> tuple[Slot, ...]:
    """Return the ways out to loads, in the order of the stems."""
    made: list[Slot] = []
    for stem in stems:
        before = (stem.gate,) if stem.gate is not None else ()
        made += [Slot((*before, switch), (switch.x_mm, switch.y_mm)) for switch in stem.switches]
        if not stem.switches:
            made.append(Slot(before, (before[0].x_mm, before[0].y_mm) if before else None))
    return tuple(made)


def _behind_nearest(stems: Sequence[Stem], switches: Sequence[Part], far: Far) -> tuple[Stem, ...]:
    """Put each switch behind the nearest fuse: where there are fuses enough, each behind one of its own."""
    gates = [stem.gate for stem in stems]
    ways = sorted(
        (round(far((g.x_mm, g.y_mm), (s.x_mm, s.y_mm)), 3), j, i)
        for i, g in enumerate(gates)
        for j, s in enumerate(switches)
        if g is not None
    )
    alone = len(switches) <= len(stems)
    behind: dict[int, list[Part]] = defaultdict(list)
    placed: set[int] = set()
    for _, j, i in ways:
        if j not in placed and not (alone and behind[i]):
            behind[i].append(switches[j])
            placed.add(j)
    return tuple(stem._replace(switches=tuple(behind[i])) for i, stem in enumerate(stems))


def _last(
    plan: Plan, kinds: Mapping[str, Kind], fed: Sequence[Part], known: Mapping[TerminalRef, Pole]
) -> list[Part]:
    """Return those of the fed gates in plus that no other of them lies behind."""
    outs = {g.id: way_out(g, kinds, known) for g in fed}
    if len(fed) < 2:
        return [g for g in fed if outs[g.id] is not None]
    reached = {g.id: parts_behind(plan, kinds, outs[g.id]) for g in fed}
    ids = {g.id for g in fed if outs[g.id] is not None}
    return [g for g in fed if g.id in ids and not (ids - {g.id}) & reached[g.id]]


def way_out(gate: Part, kinds: Mapping[str, Kind], known: Mapping[TerminalRef, Pole]) -> TerminalRef | None:
    """Return the terminal of a fed gate that lies farthest from the supply; None for one in the return."""
    refs = [TerminalRef(gate.id, t.name) for t in kinds[gate.kind].terminals]
    plus = [r for r in refs if r in known and known[r].is_plus]
    return max(plus, key=lambda r: known[r].steps, default=None)


def parts_behind(plan: Plan, kinds: Mapping[str, Kind], out: TerminalRef | None) -> set[PartId]:
    """Return the parts reached from a way out over wires, contacts and blocks, not back through its part."""
    if out is None:
        return set()
    table = joined(plan, kinds)
    seen, waiting = {out}, [out]
    for here in waiting:  # grows while it is walked
        for there in table.get(here, ()):
            if there not in seen and there.part != out.part:
                seen.add(there)
                waiting.append(there)
    return {ref.part for ref in seen}
