"""Set copies of parts, and of the wires between them, beside the originals."""

from collections.abc import Iterable

from wiring.edits.copies import wires_between, with_copies
from wiring.edits.edit import Edit
from wiring.edits.tables import counted, part_of
from wiring.plan.plan import Plan


def duplicate(ids: Iterable[str], dx_mm: float = 20.0, dy_mm: float = 20.0) -> Edit:
    """Copy those parts and the wires between them; wires to other parts are not copied."""
    wanted = tuple(dict.fromkeys(ids))

    def apply(plan: Plan) -> Plan:
        chosen = {part_of(plan, i).id for i in wanted if i not in plan.wires}
        # In plan order, so that copies are numbered as the originals are, however they were picked.
        parts = [p for p in plan.parts.values() if p.id in chosen]
        return with_copies(plan, parts, wires_between(plan, chosen), dx_mm, dy_mm)

    return Edit(f"Duplicate {counted(len(wanted), 'part')}", apply)
