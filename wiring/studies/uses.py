"""Whose use pattern counts for what hangs on a battery: a scene's loads are on in its sessions."""

from collections.abc import Iterable, Mapping
from typing import NamedTuple

from wiring.catalogue.kind import Kind
from wiring.plan.names import PartId
from wiring.plan.part import Part
from wiring.plan.plan import Plan
from wiring.plan.scene import UsePattern
from wiring.studies.cells.timeline import Pattern
from wiring.studies.load_lines import PUT_OUT

HOURS_PER_MONTH = 365.25 / 12 * 24
MOST_USES = 6  # patterns laid over each other; the rest, the ones with fewest loads, count as the first


class Use(NamedTuple):
    """One pattern, and the loads of the battery that follow it."""

    pattern: UsePattern
    loads: frozenset[PartId]


def use_of(plan: Plan, part: Part) -> UsePattern:
    """Return how a part is used: as its scene is, else as the plan says."""
    scene = plan.scenes.get(part.scene)
    return scene.use if scene is not None else plan.use


def uses_of(
    plan: Plan, kinds: Mapping[str, Kind], battery: PartId, parts: Iterable[PartId]
) -> tuple[Use, ...]:
    """Return the patterns of what hangs on a battery; the first is the one whose sessions are counted.

    That is the battery's own scene's where it has loads, else the one with the most loads that is not always
    on. Loads in no scene follow the battery. Motors and relays draw whenever anything is on.
    """
    own = use_of(plan, plan.parts[battery])
    groups: dict[UsePattern, set[PartId]] = {}
    for part_id in parts:
        part = plan.parts[part_id]
        if kinds[part.kind].behaviour in PUT_OUT:
            groups.setdefault(use_of(plan, part) if part.scene in plan.scenes else own, set()).add(part_id)
    worked = {use: loads for use, loads in groups.items() if sessions_of(use) > 0}
    if not worked:
        return (Use(own, frozenset().union(*groups.values()) if groups else frozenset()),)
    order = sorted(worked, key=lambda u: (timing(u).always, u != own, -len(worked[u])))
    first, *others = order[:MOST_USES]
    loads = set(worked[first]).union(*(worked[u] for u in order[MOST_USES:]))
    return (Use(first, frozenset(loads)), *(Use(u, frozenset(worked[u])) for u in others))


def sessions_of(use: UsePattern) -> float:
    """Return sessions a month that really take place."""
    lasting = use.hours_per_session > 0 and len(set(use.months_off)) < 12
    return use.sessions_per_month if lasting else 0.0


def timing(use: UsePattern) -> Pattern:
    """Return a use pattern in hours; sessions that would overlap run into one another."""
    period_h = HOURS_PER_MONTH / use.sessions_per_month if use.sessions_per_month > 0 else HOURS_PER_MONTH
    return Pattern(min(use.hours_per_session, period_h), period_h, frozenset(use.months_off))
