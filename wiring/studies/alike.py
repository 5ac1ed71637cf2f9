"""Tables of a plan by what matters: an edit that changes nothing of it leaves the table the same object.

What is worked out from such a table is good until something in it matters that is otherwise; a lamp that was
moved, or a wire that is thicker, is no reason to look for loose ends again.
"""

from collections.abc import Callable, Mapping
from typing import Any, TypeVar

from wiring.circuit.table_changes import table_change
from wiring.plan.names import PartId, WireId
from wiring.plan.part import Part
from wiring.plan.wire import Wire

T = TypeVar("T")
MOST_CHANGES = 64  # records; with more the table is taken for another one
MOST_RECENT = 3

_Tables = tuple[tuple[Mapping[str, Any], Mapping[str, Any]], ...]
_recent: dict[Callable[[Any], object], _Tables] = {}  # the last of each sort with what stands for it


def parts_but_for_place(parts: Mapping[PartId, Part]) -> Mapping[PartId, Part]:
    """Return parts that are the same but for where they stand, their note and their group."""
    return _as_before(parts, _part)


def wires_but_for_make(wires: Mapping[WireId, Wire]) -> Mapping[WireId, Wire]:
    """Return wires that are the same in label and ends, but for what they are made of and how they run."""
    return _as_before(wires, _wire)


def texts_of_parts(parts: Mapping[PartId, Part]) -> Mapping[PartId, Part]:
    """Return parts that are the same in all that is written on them, and in what they belong to."""
    return _as_before(parts, _part_texts)


def texts_of_wires(wires: Mapping[WireId, Wire]) -> Mapping[WireId, Wire]:
    """Return wires that are the same in all that is written on them, and in the wireways they lie in."""
    return _as_before(wires, _wire_texts)


def forget() -> None:
    """Keep nothing any more, as in a process that has just begun."""
    _recent.clear()


def _part(part: Part) -> object:
    return part.id, part.kind, part.designation, part.label, part.settings, part.position, part.scene


def _wire(wire: Wire) -> object:
    return wire.id, wire.label, wire.start, wire.end


def _part_texts(part: Part) -> object:
    return part.id, part.designation, part.label, part.note, part.scene, part.panel


def _wire_texts(wire: Wire) -> object:
    return wire.id, wire.label, wire.note, wire.along


def _as_before(table: Mapping[str, T], what: Callable[[T], object]) -> Mapping[str, T]:
    recent = _recent.get(what, ())
    for newest, stands in recent:
        if newest is table:
            return stands
    found = next((row for row in recent if _alike(row[0], table, what)), None)
    stands = table if found is None else found[1]
    _recent[what] = ((table, stands), *(row for row in recent if row is not found))[:MOST_RECENT]
    return stands


def _alike(was: Mapping[str, T], now: Mapping[str, T], what: Callable[[T], object]) -> bool:
    if len(was) != len(now):
        return False
    change = table_change(was, now, MOST_CHANGES)
    if change is None or change.gone or change.put_in:
        return False
    return all(what(each.was) == what(each.now) for each in change.replaced)
