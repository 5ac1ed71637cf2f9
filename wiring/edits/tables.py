"""New plans from old ones: only what really differs gets a new record, everything else is shared."""

import math
from collections.abc import Iterable, Mapping
from types import MappingProxyType
from typing import TypeVar

from wiring.catalogue.kind import Kind
from wiring.edits.edit import EditRefused
from wiring.plan.changes import other_records
from wiring.plan.names import TerminalRef
from wiring.plan.part import Part
from wiring.plan.plan import Plan
from wiring.plan.record_faults import colour_fault, end_faults, kind_faults, part_faults, wire_faults
from wiring.plan.wire import Wire
from wiring.quantities.not_understood import NotUnderstood
from wiring.standards.colours import colour
from wiring.standards.wire_size import read_size

T = TypeVar("T", Part, Wire)
R = TypeVar("R")


def known_kinds(kinds: Mapping[str, Kind] | None) -> Mapping[str, Kind]:
    """Return the given kinds, or the built-in ones when none are given."""
    if kinds is not None:
        return kinds
    from wiring.catalogue.shelf import builtin_kinds

    return builtin_kinds()


def still_in(table: Mapping[str, R], name: str, word: str) -> R:
    """Return a record of one of the plan's tables, called by that word; EditRefused when it is gone."""
    record = table.get(name)
    if record is None:
        raise EditRefused(f"The plan has no {word} {name} any more; select it again.")
    return record


def part_of(plan: Plan, part_id: str) -> Part:
    """Return a part of the plan; EditRefused when it is gone."""
    return still_in(plan.parts, part_id, "part")


def wire_of(plan: Plan, wire_id: str) -> Wire:
    """Return a wire of the plan; EditRefused when it is gone."""
    return still_in(plan.wires, wire_id, "wire")


def rounded_mm(value: float) -> float:
    """Return a coordinate to a thousandth of a millimetre, so that files stay free of rounding noise."""
    return round(value, 3) + 0.0 if math.isfinite(value) else value


def tidy_size(text: str) -> str:
    """Return a wire size as it is written on sheets; EditRefused when it is none."""
    try:
        return read_size(text).label
    except NotUnderstood as why:
        raise EditRefused(str(why)) from None


def tidy_colour(letters: str) -> str:
    """Return the letters of a wire colour as IEC 60757 writes them; EditRefused when they are none."""
    fault = colour_fault(letters)
    if fault:
        raise EditRefused(fault[0].upper() + fault[1:])
    return colour(letters).letters


def frozen(table: Mapping[str, R]) -> Mapping[str, R]:
    """Return a mapping nobody can write to."""
    return table if isinstance(table, MappingProxyType) else MappingProxyType(dict(table))


def merged(table: Mapping[str, T], records: Iterable[T]) -> Mapping[str, T]:
    """Return the table with these records put in; the same table when none of them differs."""
    news = {r.id: r for r in records if table.get(r.id) != r}
    return MappingProxyType(dict(table) | news) if news else table


def without(table: Mapping[str, R], gone: Iterable[str]) -> Mapping[str, R]:
    """Return the table without those ids; the same table when it has none of them."""
    dropped = table.keys() & set(gone)
    return MappingProxyType({k: v for k, v in table.items() if k not in dropped}) if dropped else table


def with_records(
    plan: Plan,
    parts: Iterable[Part] = (),
    wires: Iterable[Wire] = (),
    kinds: Mapping[str, Kind] | None = None,
    next_number: int | None = None,
) -> Plan:
    """Return the plan with these parts and wires put in; the same plan when nothing differs.

    Every record that differs is checked, also against its kind when `kinds` are given; EditRefused names
    the first fault.
    """
    new_parts, new_wires = merged(plan.parts, parts), merged(plan.wires, wires)
    if new_parts is plan.parts and new_wires is plan.wires:
        return plan
    new = plan.with_changes(
        parts=new_parts,
        wires=new_wires,
        next_number=plan.next_number if next_number is None else next_number,
    )
    _refuse_faults(plan, new, kinds or {})
    return new


def _refuse_faults(old: Plan, new: Plan, kinds: Mapping[str, Kind]) -> None:
    parts = [new.parts[i] for i in other_records(old.parts, new.parts)]
    wires = [new.wires[i] for i in other_records(old.wires, new.wires)]
    for part in parts:
        refuse_if(part_faults(part, new.scenes, new.panels))
        if part.kind in kinds:
            refuse_if(kind_faults(part, kinds[part.kind]))
    for wire in wires:
        refuse_if(wire_faults(wire, new))
        refuse_if(end_faults(wire, new, kinds))
    # Counting all names takes a while on a large plan, and a move changes none.
    if any(p.id not in old.parts or old.parts[p.id].designation != p.designation for p in parts) and len(
        {p.designation for p in new.parts.values()}
    ) < len(new.parts):
        raise EditRefused("Another part has that designation already; choose a free one.")
    if any(w.id not in old.wires or old.wires[w.id].label != w.label for w in wires) and len(
        {w.label for w in new.wires.values()}
    ) < len(new.wires):
        raise EditRefused("Another wire has that label already; choose a free one.")


def refuse_if(faults: Iterable[str]) -> None:
    """Refuse the edit with the first of these sentences, if there is one."""
    for fault in faults:
        raise EditRefused(fault)


def ref_words(plan: Plan, ref: TerminalRef) -> str:
    """Return ``-X1:3``, or the bare ids when the plan has no such part."""
    part = plan.parts.get(ref.part)
    return f"-{part.designation if part else ref.part}:{ref.terminal}"


def counted(count: int, word: str) -> str:
    """Return the end of a label: "part" for one, "3 parts" for three."""
    return word if count == 1 else f"{count} {word}s"
