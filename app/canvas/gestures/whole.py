"""What is meant by a part that is joined with others: the whole, or, once that is selected, it alone."""

from collections.abc import Iterable

from wiring.edits.copies import wires_between
from wiring.plan.groups import members, things_of
from wiring.plan.names import PartId
from wiring.plan.plan import Plan


def whole_of(plan: Plan, part: PartId) -> frozenset[str]:
    """Return the parts of the thing a part belongs to and the wires between them; itself where it is none."""
    return _with_wires(plan, members(plan, part)) or frozenset((part,))


def meant(plan: Plan, selected: frozenset[str], part: PartId) -> frozenset[str]:
    """Return what a click on a part takes: the whole, or it alone when nothing but that thing is selected."""
    whole = whole_of(plan, part)
    return frozenset((part,)) if _is_inside(plan, selected, whole) else whole


def added(plan: Plan, selected: frozenset[str], part: PartId) -> frozenset[str]:
    """Return the selection with the whole put in or, when it is there, taken out; within a thing one part."""
    whole = whole_of(plan, part)
    parts = frozenset(i for i in whole if i in plan.parts)
    if parts <= selected:
        return selected - whole
    return selected ^ {part} if _is_inside(plan, selected, whole) else selected | whole


def with_wholes(plan: Plan, caught: frozenset[str], *, touching: bool) -> frozenset[str]:
    """Return what a band takes: a thing as any other, when all of it or, `touching`, some of it is caught."""
    for thing in things_of(plan, caught):
        if touching or caught.issuperset(thing):
            caught |= _with_wires(plan, thing)
        else:
            caught -= _with_wires(plan, thing)
    return caught


def wholes_of(plan: Plan, ids: Iterable[str]) -> frozenset[str]:
    """Return those parts and wires with all that is joined with them."""
    return with_wholes(plan, frozenset(ids), touching=True)


def _is_inside(plan: Plan, selected: frozenset[str], whole: frozenset[str]) -> bool:
    return selected <= whole and any(i in plan.parts for i in selected)


def _with_wires(plan: Plan, parts: Iterable[PartId]) -> frozenset[str]:
    ids = frozenset(parts)
    return ids | {w.id for w in wires_between(plan, ids)} if ids else ids
