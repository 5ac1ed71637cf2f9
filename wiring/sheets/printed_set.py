"""What the last printed set held: each wire and part in words, and a digest of each sheet."""

from collections.abc import Mapping, Sequence

import msgspec

from wiring.catalogue.kind import Kind
from wiring.plan.designations import part_label
from wiring.plan.plan import Plan
from wiring.sheets.bench_list import bench_rows
from wiring.sheets.lengths import length_words
from wiring.sheets.places import place_name
from wiring.sheets.section import Section
from wiring.sheets.sheet_digest import digest
from wiring.sheets.strip_names import end_label
from wiring.sheets.value_words import value_words

# The cover repeats what other sheets say, and tiles come only when asked for; of the labels those of changed
# wires are printed anew.
COVER, LABELS = "cover", "labels"
UNCOUNTED = (COVER, LABELS, "tiles above", "tiles below")
_LETTERS = "ABCDEFGHJKLMNPQRSTUVWXYZ"  # I and O are left out, as in the zones of a sheet


class PrintedWire(msgspec.Struct, frozen=True):
    """A wire as it was printed."""

    label: str
    start: str
    end: str
    size: str
    colour: str
    cut: str


class PrintedPart(msgspec.Struct, frozen=True):
    """A part as it was printed; where it stands is in whole millimetres."""

    name: str
    what: str
    place: str
    at: tuple[int, int]


class PrintedSheet(msgspec.Struct, frozen=True):
    """One sheet: what it bore, by its digest."""

    number: int
    title: str
    digest: str


class PrintedSet(msgspec.Struct, frozen=True, omit_defaults=True):
    """A whole set, remembered when it went to the printer."""

    day: str  # 2026-03-14
    revision: int = 1  # 1 is A
    wires: Mapping[str, PrintedWire] = {}
    parts: Mapping[str, PrintedPart] = {}
    sheets: tuple[PrintedSheet, ...] = ()

    @property
    def letter(self) -> str:
        """The letter of the set, as it stands in title blocks and change marks."""
        return revision_letter(self.revision)


def revision_letter(revision: int) -> str:
    """Return A, B ... Z, AA, AB for 1, 2 ...: letters without I and O."""
    said = ""
    while revision > 0:
        revision, rest = divmod(revision - 1, len(_LETTERS))
        said = _LETTERS[rest] + said
    return said


def printed_wires(plan: Plan, kinds: Mapping[str, Kind]) -> dict[str, PrintedWire]:
    """Return every wire as the bench list has it."""
    return {
        r.wire: PrintedWire(
            r.label,
            end_label(plan, r.start),
            end_label(plan, r.end),
            f"{r.size} solid" if r.solid else r.size,
            r.colour,
            length_words(r.length_m, plan.habits.units),
        )
        for r in bench_rows(plan, kinds)
    }


def printed_parts(plan: Plan, kinds: Mapping[str, Kind]) -> dict[str, PrintedPart]:
    """Return every part as the parts list and the plan have it."""
    found: dict[str, PrintedPart] = {}
    for part in plan.parts.values():
        kind = kinds.get(part.kind)
        said = [part.label, kind.title if kind is not None else part.kind]
        said.append(value_words(kind, part, plan.habits.units) if kind is not None else "")
        what = ", ".join(s for s in said if s)
        at = (round(part.x_mm), round(part.y_mm))
        found[part.id] = PrintedPart(part_label(plan, part.id), what, place_name(plan, part), at)
    return found


def printed_sheets(sections: Sequence[Section]) -> tuple[PrintedSheet, ...]:
    """Return the sheets of a set with their digests, but those that are not counted; numbers count all."""
    found: list[PrintedSheet] = []
    number = 0
    for section in sections:
        for leaf in section.leaves:
            number += 1
            if section.anchor not in UNCOUNTED:
                found.append(PrintedSheet(number, leaf.kind, digest(leaf)))
    return tuple(found)
