"""Several wires at once: the terminals of one part to those of another, one to one."""

import math
from collections.abc import Mapping
from itertools import count

from wiring.catalogue.kind import Kind
from wiring.edits.edit import Edit, EditRefused
from wiring.edits.laying import Laying
from wiring.edits.tables import known_kinds, part_of
from wiring.plan.names import PartId, TerminalRef
from wiring.plan.plan import Plan

# One colour a wire, so that both ends of a harness can be told apart; common practice, no source.
HARNESS = ("RD", "BK", "GN", "YE", "BU", "WH", "OG", "BN", "VT", "GY", "PK", "TQ")


def connect_each(first: PartId, second: PartId, *, kinds: Mapping[str, Kind] | None = None) -> Edit:
    """Join the free terminals of two parts pair by pair, in whichever order crosses least.

    A part with more free terminals than the other keeps the rest free. A plug's ways count once each: those
    on the side that faces the other part.
    """

    def apply(plan: Plan) -> Plan:
        if part_of(plan, first) is part_of(plan, second):
            raise EditRefused("Select two parts to wire them one to one.")
        laying = Laying(plan, known_kinds(kinds), (first, second))
        rows = [_free(laying, first, second), _free(laying, second, first)]
        number = min(len(rows[0]), len(rows[1]))
        if number == 0:
            bare = next(i for i, row in zip((first, second), rows, strict=True) if not row)
            raise EditRefused(f"-{plan.parts[bare].designation} has no free terminal left.")
        starts, ends = rows[0][:number], rows[1][:number]
        turned = rows[1][::-1][:number]
        if _length(laying, starts, turned) < _length(laying, starts, ends):
            ends = turned
        for index, start, end in zip(count(), starts, ends, strict=False):
            laying.wire(start, end, HARNESS[index % len(HARNESS)])
        return laying.done()

    return Edit("Wire one to one", apply)


def _free(laying: Laying, part_id: PartId, other: PartId) -> list[TerminalRef]:
    """Return the terminals of a part that carry no wire, in the order they stand in."""
    part = laying.plan.parts[part_id]
    kind = laying.kinds.get(part.kind)
    if kind is None:
        return []
    refs = [TerminalRef(part_id, t.name) for t in kind.terminals]
    free = [ref for ref in refs if laying.count[ref] == 0]
    if kind.behaviour != "pairs":
        return free
    there = laying.plan.parts[other]
    sides = {side: [r for r in free if r.terminal.endswith(side)] for side in "ab"}
    return min(
        (side for side in sides.values() if side),
        key=lambda side: sum(math.dist(laying.at(r), (there.x_mm, there.y_mm)) for r in side) / len(side),
        default=[],
    )


def _length(laying: Laying, starts: list[TerminalRef], ends: list[TerminalRef]) -> float:
    return sum(math.dist(laying.at(a), laying.at(b)) for a, b in zip(starts, ends, strict=True))
