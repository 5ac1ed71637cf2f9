"""The whole set of sheets that is printed and taken under the layout."""

from collections.abc import Collection, Sequence
from datetime import date
from typing import NamedTuple

from wiring.findings.situation import Situation
from wiring.pictures.many_records import collector_paused
from wiring.pictures.pdf import Page
from wiring.sheets.bench_list import bench_rows
from wiring.sheets.change_marks import Marks, marked
from wiring.sheets.change_sheet import ANCHOR, TITLE, change_blocks
from wiring.sheets.cover import Entry, cover_blocks
from wiring.sheets.documents import chosen, is_whole
from wiring.sheets.label_sheets import label_section
from wiring.sheets.page import framed
from wiring.sheets.paper import Sheet, sheet
from wiring.sheets.printed_set import (
    COVER,
    LABELS,
    PrintedSet,
    printed_parts,
    printed_sheets,
    printed_wires,
)
from wiring.sheets.references import referred
from wiring.sheets.scene_sheets import of_scene
from wiring.sheets.section import Leaf, Section, body_size, text_section
from wiring.sheets.set_changes import SetChanges, set_changes
from wiring.sheets.set_sections import set_sections
from wiring.sheets.tiling import Tiling
from wiring.sheets.title_block import TitleFields


class MadeSet(NamedTuple):
    """The sheets, what they were made of, and what changed since the last set that was printed."""

    pages: tuple[Page, ...]
    situation: Situation
    sections: tuple[Section, ...]  # of the whole set, before references and marks
    changes: SetChanges | None
    whole: bool  # nothing left out but tiles, so that printing it counts
    day: date

    def printed(self) -> PrintedSet:
        """Return what to remember once this set is printed."""
        plan, kinds = self.situation.plan, self.situation.kinds
        revision = 1
        if self.changes is not None:
            since = self.changes.since
            revision = since.revision + (self.changes.letter != since.letter)
        return PrintedSet(
            self.day.isoformat(),
            revision,
            printed_wires(plan, kinds),
            printed_parts(plan, kinds),
            printed_sheets(self.sections),
        )


def sheet_set(
    situation: Situation,
    paper: str = "A4",
    today: date | None = None,
    *,
    only: Collection[str] | None = None,
    scene: str | None = None,
) -> tuple[Page, ...]:
    """Return the sheets, numbered and bookmarked, on "A4", "Letter" or "A3"; `today` is the date of issue.

    `only` chooses among DOCUMENTS, `scene` the scene or panel of that name and the wires that end there.
    ValueError with a plain sentence for a paper there is no sheet for, and for an unknown document or scene.
    """
    return made_set(situation, paper, today, only=only, scene=scene).pages


def made_set(
    situation: Situation,
    paper: str = "A4",
    today: date | None = None,
    *,
    only: Collection[str] | None = None,
    scene: str | None = None,
    tiling: Tiling | None = None,
    since: PrintedSet | None = None,
    changed_only: bool = False,
) -> MadeSet:
    """Return the sheets as `sheet_set` does, and what stands behind them.

    `tiling` adds the plan in tiles. With the last printed set, `since`, what changed is marked, and with
    `changed_only` just the sheets that changed are given, after one that says what did; none if none did.
    """
    upright = sheet(paper)
    wanted = chosen(only)
    day = today or date.today()
    with collector_paused():
        shown = situation if scene is None else of_scene(situation, scene)
        rows = [r for r in bench_rows(situation.plan, situation.kinds) if r.wire in shown.plan.wires]
        sections = set_sections(situation, shown, scene, paper, wanted, rows, tiling)
        if COVER in wanted or not sections:
            sections = (_cover(shown, upright, sections), *sections)
        changes = None
        if since is not None:
            changes = set_changes(shown.plan, shown.kinds, sections, since)
        pages = _pages(shown, upright, sections, day, changes, changed_only=changed_only)
    return MadeSet(pages, situation, sections, changes, is_whole(only, scene), day)


def _cover(situation: Situation, upright: Sheet, sections: Sequence[Section]) -> Section:
    """Return the cover, laid out again until its own number of pages agrees with the numbers it lists."""
    pages = 1
    while True:
        entries, number = [Entry("Summary", COVER, 1)], pages + 1
        for section in sections:
            entries += [Entry(s.title, s.anchor, number + s.leaf) for s in section.starts]
            number += len(section.leaves)
        blocks = cover_blocks(situation, body_size(upright)[0], entries)
        cover = text_section("Summary", COVER, upright, blocks)
        if len(cover.leaves) <= pages:
            return cover
        pages = len(cover.leaves)


def _pages(
    situation: Situation,
    upright: Sheet,
    sections: Sequence[Section],
    today: date,
    changes: SetChanges | None,
    *,
    changed_only: bool,
) -> tuple[Page, ...]:
    letter = changes.letter if changes is not None else ""
    if changes is not None and changes.ids and letter != changes.since.letter:
        sections = marked(sections, Marks(letter, changes.ids))
    count = sum(len(s.leaves) for s in sections)
    pages: list[Page] = []
    number = 0
    wanted = {s.number for s in changes.sheets} if changes is not None and changed_only else None
    for section in referred(sections):
        titles = {
            i: "; ".join(s.title for s in section.starts if s.leaf == i) for i in range(len(section.leaves))
        }
        for i, leaf in enumerate(section.leaves):
            number += 1
            if wanted is None or number in wanted or (wanted and section.anchor == COVER):
                bookmark = titles[i] if wanted is None else titles[i] or leaf.bookmark or leaf.kind
                leaf = leaf if wanted is None else leaf._replace(bookmark="")
                pages.append(_page(situation, leaf, bookmark, today, number, count, letter))
    if changes is None or not changed_only or letter == changes.since.letter:
        return tuple(pages)
    told = text_section(TITLE, ANCHOR, upright, change_blocks(changes, body_size(upright)[0])).leaves
    if any(section.anchor == LABELS for section in sections):
        anew = tuple(r for r in bench_rows(situation.plan, situation.kinds) if r.wire in changes.ids)
        told += tuple(leaf for s in label_section(situation.plan, anew, upright.name) for leaf in s.leaves)
    first = [
        _page(
            situation, leaf, TITLE if not i else "", today, f"{letter}{i + 1}", f"{letter}{len(told)}", letter
        )
        for i, leaf in enumerate(told)
    ]
    return (*first, *pages)


def _page(
    situation: Situation,
    leaf: Leaf,
    bookmark: str,
    today: date,
    number: int | str,
    count: int | str,
    letter: str,
) -> Page:
    plan = situation.plan
    fields = TitleFields(
        plan.title,
        leaf.kind,
        plan.author,
        today.isoformat(),
        number,
        count,
        leaf.scale,
        leaf.side,
        letter,
    )
    return Page(framed(leaf.sheet, fields, leaf.items), bookmark, under=leaf.bookmark, label=str(number))
