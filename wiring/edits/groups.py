"""Join parts as one thing that is taken in hand as a whole, and take it apart again."""

from collections.abc import Iterable

import msgspec

from wiring.edits.edit import Edit, EditRefused
from wiring.edits.tables import part_of, with_records
from wiring.plan.groups import thing_of, things_of
from wiring.plan.names import PartId, WireId
from wiring.plan.plan import Plan


def join(ids: Iterable[str]) -> Edit:
    """Make one thing of those parts and of every thing they belong to; wires are passed over."""
    wanted = tuple(dict.fromkeys(ids))

    def apply(plan: Plan) -> Plan:
        parts = _parts(plan, wanted)
        whole = dict.fromkeys([*parts, *(i for thing in things_of(plan, parts) for i in thing)])
        if len(whole) < 2:
            raise EditRefused("One thing is made of two or more parts; select those that belong together.")
        if thing_of(plan, whole):
            raise EditRefused("These parts are one thing already; select what is to be joined with it too.")
        group = f"g{plan.next_number}"
        joined = [msgspec.structs.replace(plan.parts[i], group=group) for i in whole]
        return with_records(plan, joined, next_number=plan.next_number + 1)

    return Edit("Join as one thing", apply)


def take_apart(ids: Iterable[str]) -> Edit:
    """Let every part stand for itself of the things that those parts belong to; places and wires stay."""
    wanted = tuple(dict.fromkeys(ids))

    def apply(plan: Plan) -> Plan:
        things = things_of(plan, _parts(plan, wanted))
        if not things:
            raise EditRefused(
                "None of what is selected is joined with other parts; there is nothing to take apart."
            )
        loose = [msgspec.structs.replace(plan.parts[i], group="") for thing in things for i in thing]
        return with_records(plan, loose)

    return Edit("Take apart", apply)


def taken_in(plan: Plan, part_id: PartId, wire_ids: Iterable[WireId]) -> Plan:
    """Return the plan with a part put into the thing that holds both ends of those wires, if one does."""
    wires = [plan.wires[i] for i in wire_ids if i in plan.wires]
    holding = {plan.parts[ref.part].group for w in wires for ref in (w.start, w.end)}
    group = holding.pop() if len(holding) == 1 else ""
    return with_records(plan, [msgspec.structs.replace(plan.parts[part_id], group=group)]) if group else plan


def _parts(plan: Plan, wanted: Iterable[str]) -> tuple[str, ...]:
    return tuple(part_of(plan, i).id for i in wanted if i not in plan.wires)
