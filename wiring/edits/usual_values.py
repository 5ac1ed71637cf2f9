"""Put back the usual value of every setting, and the usual position, that a part cannot have."""

from collections.abc import Iterable, Mapping

import msgspec

from wiring.catalogue.kind import Kind
from wiring.edits.edit import Edit, EditRefused
from wiring.edits.tables import frozen, known_kinds, part_of, with_records
from wiring.plan.names import PartId
from wiring.plan.part import Part
from wiring.plan.plan import Plan
from wiring.plan.record_faults import value_fault


def usual_values(ids: Iterable[PartId], *, kinds: Mapping[str, Kind] | None = None) -> Edit:
    """Forget what does not fit the kind of those parts; everything else about them stays."""
    wanted = tuple(dict.fromkeys(ids))

    def apply(plan: Plan) -> Plan:
        known = known_kinds(kinds)
        return with_records(plan, [_usual(part_of(plan, i), known) for i in wanted], kinds=known)

    return Edit("Put usual values back", apply)


def _usual(part: Part, kinds: Mapping[str, Kind]) -> Part:
    kind = kinds.get(part.kind)
    if kind is None:
        raise EditRefused(f"-{part.designation} is of a kind the catalogue does not have any more.")
    settings = {s.name: s for s in kind.settings}
    kept = {
        name: value
        for name, value in part.settings.items()
        if name in settings and not value_fault(value, settings[name])
    }
    position = part.position if any(p.name == part.position for p in kind.positions) else ""
    return msgspec.structs.replace(part, settings=frozen(kept) if kept else {}, position=position)
