"""Lay wires that stand already anew: square, clear of bodies, terminals and other wires."""

from collections.abc import Iterable, Mapping

import msgspec

from wiring.catalogue.kind import Kind
from wiring.edits.edit import Edit
from wiring.edits.laying import Laying
from wiring.edits.tables import counted, known_kinds, rounded_mm, wire_of, with_records, without
from wiring.plan.plan import Plan


def lay_anew(ids: Iterable[str], *, kinds: Mapping[str, Kind] | None = None) -> Edit:
    """Give those wires new bends off any wireway; lengths the user has measured stay."""
    wanted = tuple(dict.fromkeys(ids))

    def apply(plan: Plan) -> Plan:
        wires = [wire_of(plan, i) for i in wanted]
        ends = dict.fromkeys(ref.part for w in wires for ref in (w.start, w.end))
        rest = plan.with_changes(wires=without(plan.wires, wanted))
        laying = Laying(rest, known_kinds(kinds), ends)
        laid = []
        for wire in wires:
            bends = laying.way(laying.at(wire.start), laying.at(wire.end))
            corners = tuple((rounded_mm(x), rounded_mm(y)) for x, y in bends)
            laid.append(msgspec.structs.replace(wire, bends=corners, along=()))
        return with_records(plan, wires=laid)

    return Edit(f"Lay {counted(len(wanted), 'wire')} anew", apply)
