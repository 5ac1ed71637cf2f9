"""Groups: parts that share a group id are one thing, such as a lit building with its lamps and its plug."""

from collections import Counter
from collections.abc import Iterable

from wiring.plan.names import PartId
from wiring.plan.part import Part
from wiring.plan.plan import Plan


def shared_groups(parts: Iterable[Part]) -> tuple[str, ...]:
    """Return the group ids that two or more of those parts share, in the order in which they appear."""
    counts = Counter(p.group for p in parts if p.group)
    return tuple(group for group, times in counts.items() if times > 1)


def members(plan: Plan, part_id: PartId) -> tuple[PartId, ...]:
    """Return all parts of the thing a part belongs to, itself too; () when it stands for itself."""
    part = plan.parts.get(part_id)
    if part is None or not part.group:
        return ()
    found = tuple(p.id for p in plan.parts.values() if p.group == part.group)
    return found if len(found) > 1 else ()


def things_of(plan: Plan, ids: Iterable[str]) -> tuple[tuple[PartId, ...], ...]:
    """Return the members of every thing that at least one of those parts belongs to."""
    asked = {plan.parts[i].group for i in ids if i in plan.parts} - {""}
    if not asked:
        return ()
    found: dict[str, list[PartId]] = {}
    for part in plan.parts.values():
        if part.group in asked:
            found.setdefault(part.group, []).append(part.id)
    return tuple(tuple(ids) for ids in found.values() if len(ids) > 1)


def thing_of(plan: Plan, ids: Iterable[str]) -> tuple[PartId, ...]:
    """Return the members of the one thing that those parts are, all of it and no more; () for none."""
    parts = frozenset(i for i in ids if i in plan.parts)
    things = things_of(plan, parts)
    return things[0] if len(things) == 1 and parts == frozenset(things[0]) else ()


def bodies(plan: Plan, ids: Iterable[PartId]) -> tuple[tuple[PartId, ...], ...]:
    """Return those parts, the members of each whole thing together; one thing alone is all its parts."""
    parts = tuple(dict.fromkeys(ids))
    whole = [thing for thing in things_of(plan, parts) if set(thing) <= set(parts)]
    if not whole or set(whole[0]) == set(parts):
        return tuple((one,) for one in parts)
    first = {thing[0]: thing for thing in whole}
    inner = {i for thing in whole for i in thing[1:]}
    return tuple(first.get(i, (i,)) for i in parts if i not in inner)
