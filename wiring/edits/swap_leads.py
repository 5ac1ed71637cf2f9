"""Swap what is wired to two terminals of a part that is the wrong way round."""

import math
from collections.abc import Iterable, Mapping

import msgspec

from wiring.catalogue.kind import Kind
from wiring.edits.edit import Edit, EditRefused
from wiring.edits.lay_anew import lay_anew
from wiring.edits.tables import known_kinds, part_of, rounded_mm, with_records
from wiring.plan.names import PartId, TerminalRef
from wiring.plan.part import Part
from wiring.plan.places import terminal_at
from wiring.plan.plan import Plan
from wiring.plan.wire import Wire

SAME_MM = 0.05


def swap_leads(
    ids: Iterable[PartId], one: str, other: str, *, kinds: Mapping[str, Kind] | None = None
) -> Edit:
    """Let the wires of terminal `one` of each part land on `other`, and those of `other` on `one`.

    A part that looks the same from behind is turned round, so that every wire stays where it lies; else its
    wires are laid anew, but for those in a wireway. What was built has to be wired again.
    """
    wanted = tuple(dict.fromkeys(ids))

    def apply(plan: Plan) -> Plan:
        known = known_kinds(kinds)
        for part_id in wanted:
            plan = _swapped(plan, part_of(plan, part_id), (one, other), known)
        return plan

    return Edit("Swap leads", apply)


def _swapped(plan: Plan, part: Part, names: tuple[str, str], kinds: Mapping[str, Kind]) -> Plan:
    a, b = (TerminalRef(part.id, name) for name in names)
    to = {a: b, b: a}
    wires = [w for w in plan.wires.values() if w.start in to or w.end in to]
    if not wires:
        raise EditRefused(f"-{part.designation} has no wires to swap any more.")
    changed = [_led(wire, to) for wire in wires]
    turned = msgspec.structs.replace(part, turn_deg=rounded_mm((part.turn_deg + 180.0) % 360.0))
    if _looks_alike(plan, part, turned, names, kinds):
        return with_records(plan, [turned], changed, kinds)
    new = with_records(plan, wires=changed, kinds=kinds)
    return lay_anew([w.id for w in wires if not w.along], kinds=kinds).apply(new)


def _led(wire: Wire, to: Mapping[TerminalRef, TerminalRef]) -> Wire:
    start, end = to.get(wire.start, wire.start), to.get(wire.end, wire.end)
    return msgspec.structs.replace(wire, start=start, end=end, built=False)


def _looks_alike(
    plan: Plan, part: Part, turned: Part, names: tuple[str, str], kinds: Mapping[str, Kind]
) -> bool:
    """Whether the two terminals change places when the part is turned round, and no other one has a wire.

    What sits on a panel is not turned: its mark and its legend are where they should be.
    """
    kind = kinds.get(part.kind)
    known = {t.name for t in kind.terminals} if kind is not None else set()
    if kind is None or part.panel or not known.issuperset(names):
        return False
    used = {r.terminal for w in plan.wires.values() for r in (w.start, w.end) if r.part == part.id}
    ends = zip(names, reversed(names), strict=True)
    return used <= set(names) and all(
        math.dist(terminal_at(part, kind, x), terminal_at(turned, kind, y)) < SAME_MM for x, y in ends
    )
