"""The whole set of sheets that is printed and taken under the layout."""

from collections.abc import Sequence
from datetime import date

from wiring.findings.situation import Situation
from wiring.pictures.many_records import collector_paused
from wiring.pictures.pdf import Page
from wiring.sheets.bench_list import bench_blocks, bench_rows
from wiring.sheets.cover import Entry, cover_blocks
from wiring.sheets.cut_list import cut_blocks
from wiring.sheets.drawing_sheets import drawing_sections
from wiring.sheets.label_sheets import label_section
from wiring.sheets.meter_sheet import meter_blocks
from wiring.sheets.page import framed
from wiring.sheets.panel_sheets import panel_sections
from wiring.sheets.paper import Sheet, sheet
from wiring.sheets.parts_list import part_blocks
from wiring.sheets.plan_sheets import plan_sections
from wiring.sheets.references import referred
from wiring.sheets.safety import safety_blocks
from wiring.sheets.section import Section, body_size, text_section
from wiring.sheets.strip_charts import strip_blocks
from wiring.sheets.title_block import TitleFields


def sheet_set(situation: Situation, paper: str = "A4", today: date | None = None) -> tuple[Page, ...]:
    """Return all sheets, numbered and bookmarked, on "A4" or "Letter"; `today` is the date of issue.

    ValueError with a plain sentence for a paper there is no sheet for.
    """
    upright = sheet(paper)
    with collector_paused():
        sections = _sections(situation, paper, upright)
        cover = _cover(situation, upright, sections)
        return _pages(situation, (cover, *sections), today or date.today())


def _sections(situation: Situation, paper: str, upright: Sheet) -> tuple[Section, ...]:
    plan, kinds = situation.plan, situation.kinds
    width = body_size(upright)[0]
    lists = (
        ("Bench list", "bench", bench_blocks(plan, kinds, width) if plan.wires else ()),
        ("Cut list", "cut", cut_blocks(plan, kinds, width) if plan.wires else ()),
        ("Terminal charts", "strips", strip_blocks(plan, kinds, width)),
        ("Parts list", "parts", part_blocks(plan, kinds, width) if plan.parts else ()),
        ("Meter checks", "meter", meter_blocks(situation, width) if plan.parts else ()),
    )
    return (
        text_section("Safety notes", "safety", upright, safety_blocks(plan, kinds, width)),
        *plan_sections(situation, paper),
        *drawing_sections(situation, paper),
        *(text_section(title, anchor, upright, blocks) for title, anchor, blocks in lists if blocks),
        *panel_sections(plan, kinds, paper),
        *label_section(plan, bench_rows(plan, kinds), paper),
    )


def _cover(situation: Situation, upright: Sheet, sections: Sequence[Section]) -> Section:
    """Return the cover, laid out again until its own number of pages agrees with the numbers it lists."""
    pages = 1
    while True:
        entries, number = [Entry("Summary", "cover", 1)], pages + 1
        for section in sections:
            entries.append(Entry(section.title, section.anchor, number))
            number += len(section.leaves)
        blocks = cover_blocks(situation, body_size(upright)[0], entries)
        cover = text_section("Summary", "cover", upright, blocks)
        if len(cover.leaves) <= pages:
            return cover
        pages = len(cover.leaves)


def _pages(situation: Situation, sections: Sequence[Section], today: date) -> tuple[Page, ...]:
    plan = situation.plan
    sections = referred(sections)
    count = sum(len(s.leaves) for s in sections)
    pages: list[Page] = []
    for section in sections:
        for i, leaf in enumerate(section.leaves):
            fields = TitleFields(
                plan.title,
                leaf.kind,
                plan.author,
                today.isoformat(),
                len(pages) + 1,
                count,
                leaf.scale,
                leaf.side,
            )
            picture = framed(leaf.sheet, fields, leaf.items)
            pages.append(Page(picture, section.title if i == 0 else ""))
    return tuple(pages)
