"""Space parts out evenly between the two outermost."""

from collections.abc import Iterable, Mapping
from typing import Literal

from wiring.catalogue.kind import Kind
from wiring.edits.edit import Edit, EditRefused
from wiring.edits.shift_each import with_shifts
from wiring.edits.tables import counted, part_of
from wiring.plan.groups import bodies
from wiring.plan.names import PartId
from wiring.plan.places import Point
from wiring.plan.plan import Plan


def distribute(
    ids: Iterable[str], way: Literal["across", "down"], *, kinds: Mapping[str, Kind] | None = None
) -> Edit:
    """Give the centres of those parts equal distances across or down; the outermost two stay.

    What is one thing is shifted as a whole, by the middle of it, unless nothing else is spaced out.
    """
    wanted = tuple(dict.fromkeys(ids))

    def apply(plan: Plan) -> Plan:
        parts = [part_of(plan, i) for i in wanted if i not in plan.wires]
        things = bodies(plan, [p.id for p in parts])
        if len(things) < 3:
            raise EditRefused("Select at least three parts to space them evenly.")
        across = way == "across"
        own = {p.id: p.x_mm if across else p.y_mm for p in parts}
        places = {t: (min(own[i] for i in t) + max(own[i] for i in t)) / 2 for t in things}
        order = sorted(places, key=lambda thing: (places[thing], thing))
        first, last = places[order[0]], places[order[-1]]
        shifts: dict[PartId, Point] = {}
        for index, thing in enumerate(order):
            by = first + (last - first) * index / (len(order) - 1) - places[thing]
            shifts |= dict.fromkeys(thing, (by, 0.0) if across else (0.0, by))
        return with_shifts(plan, shifts, kinds)

    return Edit(f"Space {counted(len(wanted), 'part')} evenly", apply)
