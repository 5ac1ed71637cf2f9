"""What changed in a plan and its sheets since the last printed set, in words."""

from collections.abc import Callable, Mapping, Sequence
from typing import NamedTuple, TypeVar

from wiring.catalogue.kind import Kind
from wiring.plan.plan import Plan
from wiring.sheets.parts_list import part_rows, sort_words
from wiring.sheets.printed_set import (
    PrintedPart,
    PrintedSet,
    PrintedSheet,
    PrintedWire,
    printed_parts,
    printed_sheets,
    printed_wires,
    revision_letter,
)
from wiring.sheets.section import Section

NEW, GONE = "new", "gone"
MOVED_MM = 1.0  # a part that stands off by less than this stands where it did
Record = TypeVar("Record", PrintedWire, PrintedPart)


class Change(NamedTuple):
    """One wire or part that is not as it was printed."""

    id: str
    name: str
    now: str  # "gone" for what is no longer there
    was: str  # what of it was otherwise; "new" for what was not there


class SheetChange(NamedTuple):
    """A sheet to print, and the number of the old one it takes the place of; 0 for none."""

    number: int
    title: str
    instead_of: int


class SetChanges(NamedTuple):
    """Everything that changed since a set was printed."""

    since: PrintedSet
    wires: tuple[Change, ...]
    parts: tuple[Change, ...]
    sheets: tuple[SheetChange, ...]
    removed: tuple[PrintedSheet, ...]  # old sheets nothing takes the place of
    renumbered: tuple[tuple[int, int], ...]  # old and new number of sheets that stay as they are
    sorts: frozenset[str] = frozenset()  # rows of the parts list that name other parts than they did

    @property
    def letter(self) -> str:
        """The letter of the set being made: the next one when something changed."""
        changed = bool(self.sheets or self.removed or self.wires or self.parts)
        return revision_letter(self.since.revision + changed)

    @property
    def ids(self) -> frozenset[str]:
        """The wires and parts to be marked, and the rows of the parts list."""
        return self.sorts | {c.id for c in (*self.wires, *self.parts) if c.now != GONE}


def set_changes(
    plan: Plan, kinds: Mapping[str, Kind], sections: Sequence[Section], since: PrintedSet
) -> SetChanges:
    """Return what changed; sheets are the same when their digests are, whatever their numbers."""
    now = printed_sheets(sections)
    then = {s.digest: s.number for s in since.sheets}
    stay = {s.digest for s in now}
    left = [s for s in since.sheets if s.digest not in stay]
    sheets = []
    for sheet in now:
        if sheet.digest in then:
            continue
        old = next((s for s in left if s.title == sheet.title), None)
        if old is not None:
            left.remove(old)
        sheets.append(SheetChange(sheet.number, sheet.title, old.number if old is not None else 0))
    renumbered = tuple(
        (then[s.digest], s.number) for s in now if s.digest in then and then[s.digest] != s.number
    )
    parts = printed_parts(plan, kinds)
    sorts = {sort_words(row) for row in part_rows(plan, kinds)}
    return SetChanges(
        since,
        _changes(printed_wires(plan, kinds), since.wires, _wire_words, _wire_was),
        _changes(parts, since.parts, _part_words, _part_was),
        tuple(sheets),
        tuple(left),
        renumbered,
        frozenset(s for s in sorts if _named(parts, s) != _named(since.parts, s)),
    )


def _named(parts: Mapping[str, PrintedPart], sort: str) -> set[str]:
    """Return the names of the parts of one sort: what a part is ends in it, after the part's own label."""
    return {p.name for p in parts.values() if p.what == sort or p.what.endswith(f", {sort}")}


def _changes(
    now: Mapping[str, Record],
    then: Mapping[str, Record],
    words: Callable[[Record], tuple[str, str]],
    was: Callable[[Record, Record], str],
) -> tuple[Change, ...]:
    """Return what differs, in the order it is printed in; what is gone comes last."""
    found: list[Change] = []
    for key, record in now.items():
        old = then.get(key)
        said = was(old, record) if old is not None else NEW
        if said:
            found.append(Change(key, *words(record), said))
    for key, record in then.items():
        if key not in now:
            name, what = words(record)
            found.append(Change(key, name, GONE, what))
    return tuple(found)


def _wire_words(wire: PrintedWire) -> tuple[str, str]:
    return wire.label, f"{wire.size} {wire.colour}, from {wire.start} to {wire.end}, {wire.cut}"


def _wire_was(old: PrintedWire, new: PrintedWire) -> str:
    said = [a for a, b in ((old.size, new.size), (old.colour, new.colour)) if a != b]
    if {old.start, old.end} != {new.start, new.end}:
        said.append(f"from {old.start} to {old.end}")
    if old.cut != new.cut:
        said.append(old.cut)
    if old.label != new.label:
        said.insert(0, old.label)
    return ", ".join(said)


def _part_words(part: PrintedPart) -> tuple[str, str]:
    return part.name, f"{part.what}; {part.place}"


def _part_was(old: PrintedPart, new: PrintedPart) -> str:
    said = [a for a, b in ((old.name, new.name), (old.what, new.what), (old.place, new.place)) if a != b]
    far = max(abs(a - b) for a, b in zip(old.at, new.at, strict=True))
    if far > MOVED_MM and old.place == new.place:
        said.append(f"{far:.0f} mm from here")
    return "; ".join(said)
