"""Take parts and wires away; a wire goes with the part it ends on."""

from collections.abc import Iterable

from wiring.edits.edit import Edit
from wiring.edits.tables import without
from wiring.plan.plan import Plan


def remove(ids: Iterable[str]) -> Edit:
    """Take those parts and wires away, and every wire that ends on one of those parts."""
    wanted = frozenset(ids)

    def apply(plan: Plan) -> Plan:
        hanging = {w.id for w in plan.wires.values() if wanted & {w.start.part, w.end.part}}
        parts, wires = without(plan.parts, wanted), without(plan.wires, wanted | hanging)
        if parts is plan.parts and wires is plan.wires:
            return plan
        return plan.with_changes(parts=parts, wires=wires)

    return Edit("Remove" if len(wanted) == 1 else f"Remove {len(wanted)} items", apply)
