"""Keep the position a switch or motor stands in while a session runs."""

from collections.abc import Mapping

import msgspec

from wiring.catalogue.kind import Kind
from wiring.edits.edit import Edit
from wiring.edits.tables import known_kinds, part_of, with_records
from wiring.plan.names import PartId
from wiring.plan.plan import Plan


def keep_position(part: PartId, position: str, *, kinds: Mapping[str, Kind] | None = None) -> Edit:
    """Keep a part's position in use; "" goes back to the usual one of its kind."""

    def apply(plan: Plan) -> Plan:
        kept = msgspec.structs.replace(part_of(plan, part), position=position)
        return with_records(plan, [kept], kinds=known_kinds(kinds))

    return Edit("Keep position", apply)
