"""Selected wires that can be held by a bend or an end: not those within a thing that is selected whole."""

from wiring.plan.groups import things_of
from wiring.plan.names import WireId
from wiring.plan.plan import Plan


def loose_wires(plan: Plan, selected: frozenset[str]) -> list[WireId]:
    """Return those wires; within a whole thing a press means the thing, grips would lie over its parts."""
    wires = [plan.wires[i] for i in selected if i in plan.wires]
    if not wires:
        return []
    whole = {
        i: number
        for number, thing in enumerate(things_of(plan, selected))
        if selected.issuperset(thing)
        for i in thing
    }
    return [w.id for w in wires if whole.get(w.start.part, -1) != whole.get(w.end.part, -2)]
