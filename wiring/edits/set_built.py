"""Say which wires are made and in place, as the ticks of a carry sheet bring it back."""

from collections.abc import Iterable

import msgspec

from wiring.edits.edit import Edit
from wiring.edits.tables import counted, wire_of, with_records
from wiring.plan.plan import Plan


def set_built(ids: Iterable[str], built: bool) -> Edit:
    """Mark those wires as built, or as not built; nothing else about them changes."""
    wanted = tuple(dict.fromkeys(ids))

    def apply(plan: Plan) -> Plan:
        return with_records(
            plan, wires=[msgspec.structs.replace(wire_of(plan, i), built=built) for i in wanted]
        )

    return Edit(f"Mark {counted(len(wanted), 'wire')} as {'built' if built else 'not built'}", apply)
