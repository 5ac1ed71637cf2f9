"""The whole set of sheets that is printed and taken under the layout."""

from collections.abc import Callable, Collection, Mapping, Sequence
from datetime import date

from wiring.findings.situation import Situation
from wiring.pictures.many_records import collector_paused
from wiring.pictures.pdf import Page
from wiring.sheets.bench_list import BenchRow, bench_blocks, bench_rows
from wiring.sheets.blocks import Block
from wiring.sheets.cover import Entry, cover_blocks
from wiring.sheets.cut_list import cut_blocks
from wiring.sheets.drawing_sheets import drawing_sections
from wiring.sheets.harness_list import harness_blocks
from wiring.sheets.label_sheets import label_section
from wiring.sheets.meter_sheet import meter_blocks
from wiring.sheets.page import framed
from wiring.sheets.panel_sheets import panel_sections
from wiring.sheets.paper import Sheet, sheet
from wiring.sheets.parts_list import part_blocks
from wiring.sheets.plan_sheets import plan_sections, rear_leaves
from wiring.sheets.references import referred
from wiring.sheets.resistor_list import resistor_blocks
from wiring.sheets.safety import safety_blocks
from wiring.sheets.scene_sheets import of_scene
from wiring.sheets.section import Section, body_size, text_section
from wiring.sheets.strip_charts import strip_blocks
from wiring.sheets.title_block import TitleFields

DOCUMENTS: Mapping[str, str] = {
    "cover": "Summary",
    "safety": "Safety notes",
    "plan": "Plan from above, from below and by area",
    "circuits": "Circuit drawings",
    "bench": "Bench list",
    "cut": "Cut list, with harnesses",
    "strips": "Terminal charts",
    "parts": "Parts list, with resistors",
    "meter": "Meter checks",
    "panels": "Panels",
    "labels": "Wire labels",
}

_TIGHTEST = 0.92  # of running text, so that two lines do not get a sheet of their own


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
    upright = sheet(paper)
    chosen = _chosen(only)
    with collector_paused():
        shown = situation if scene is None else of_scene(situation, scene)
        rows = [r for r in bench_rows(situation.plan, situation.kinds) if r.wire in shown.plan.wires]
        sections = _sections(situation, shown, scene, paper, upright, chosen, rows)
        if "cover" in chosen or not sections:
            sections = (_cover(shown, upright, sections), *sections)
        return _pages(shown, sections, today or date.today())


def _chosen(only: Collection[str] | None) -> Collection[str]:
    for name in only or ():
        if name not in DOCUMENTS:
            raise ValueError(f"There is no document “{name}” in the set; choose from {', '.join(DOCUMENTS)}.")
    return only or DOCUMENTS


def _sections(
    whole: Situation,
    shown: Situation,
    scene: str | None,
    paper: str,
    upright: Sheet,
    chosen: Collection[str],
    rows: Sequence[BenchRow],
) -> tuple[Section, ...]:
    """Return what is chosen: drawings of the whole layout, lists of what is shown."""
    plan, kinds = shown.plan, shown.kinds
    width = body_size(upright)[0]

    def text(title: str, anchor: str, *blocks: Sequence[Block]) -> tuple[Section, ...]:
        joined = [block for some in blocks for block in some]
        tightest = _TIGHTEST if anchor == "safety" else 1.0
        return (text_section(title, anchor, upright, joined, tightest=tightest),) if joined else ()

    # short lists that are read together share their sheets
    makers: Mapping[str, Callable[[], tuple[Section, ...]]] = {
        "safety": lambda: text("Safety notes", "safety", safety_blocks(plan, kinds, width)),
        "plan": lambda: plan_sections(whole, paper, scene),
        "circuits": lambda: drawing_sections(whole, paper, None if scene is None else plan.wires),
        "bench": lambda: text("Bench list", "bench", bench_blocks(plan, kinds, width, rows) if rows else ()),
        "cut": lambda: text(
            "Cut list",
            "cut",
            cut_blocks(plan, kinds, width, rows) if rows else (),
            harness_blocks(plan, kinds, width),
        ),
        "strips": lambda: text(
            "Terminal charts", "strips", strip_blocks(whole.plan, kinds, width, plan.parts)
        ),
        "parts": lambda: text(
            "Parts list",
            "parts",
            part_blocks(plan, kinds, width) if plan.parts else (),
            resistor_blocks(plan, kinds, width),
        ),
        "meter": lambda: text(
            "Meter checks", "meter", meter_blocks(whole, width, scene) if plan.parts else ()
        ),
        "panels": lambda: panel_sections(whole.plan, kinds, paper, scene, rear_leaves(whole, paper, scene)),
        "labels": lambda: label_section(plan, tuple(rows), paper),
    }
    return tuple(section for name, make in makers.items() if name in chosen for section in make())


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
