"""The first sheet: the job in figures, how long batteries last, findings, and what the set holds."""

from collections.abc import Sequence
from itertools import zip_longest
from typing import NamedTuple

from wiring.drawings.plan_sketch import plan_sketch
from wiring.findings.finding import Finding, Rank
from wiring.findings.situation import Situation
from wiring.plan.designations import part_label
from wiring.quantities.wording import worded
from wiring.sheets.bench_list import bench_rows
from wiring.sheets.blocks import Block, heading, paragraph
from wiring.sheets.lengths import length_words
from wiring.sheets.table import Cell, Column, table


class Entry(NamedTuple):
    """One line of the table of contents."""

    title: str
    anchor: str
    sheet: int


_SKETCH_MM = 56.0
RANK_WORDS = {Rank.DANGER: "Danger", Rank.WEAK: "Weak", Rank.NOTE: "Note"}


def cover_blocks(situation: Situation, width: float, contents: Sequence[Entry]) -> tuple[Block, ...]:
    """Return the cover as blocks."""
    plan = situation.plan
    blocks: list[Block] = [heading(plan.title, width, anchor="cover")]
    blocks += paragraph(_in_figures(situation), width)
    blocks += _sketch(situation, width)
    blocks += _supplies(situation, width)
    blocks += _batteries(situation, width)
    blocks += _findings(situation.findings, width)
    blocks.append(heading("This set", width, level=2))
    blocks += _contents(contents, width)
    return tuple(blocks)


def _contents(contents: Sequence[Entry], width: float) -> tuple[Block, ...]:
    """Return the table of contents in two columns, read down the left one first."""
    columns = (Column("Sheet", 12, "right"), Column("What", 72)) * 2
    half = -(-len(contents) // 2)
    rows = []
    for left, right in zip_longest(contents[:half], contents[half:]):
        cells = [Cell(str(left.sheet), target=left.anchor), Cell(left.title, target=left.anchor)]
        if right is not None:
            cells += [Cell(str(right.sheet), target=right.anchor), Cell(right.title, target=right.anchor)]
        rows.append((*cells, *[Cell()] * (4 - len(cells))))
    return table(columns, rows, width)


def _sketch(situation: Situation, width: float) -> tuple[Block, ...]:
    """Return the board with its scenes and panels, without wiring."""
    picture = plan_sketch(situation.plan, situation.kinds, width, _SKETCH_MM)
    return (Block(picture.height_mm + 2.0, picture.items),) if picture is not None else ()


def _in_figures(situation: Situation) -> str:
    plan = situation.plan
    rows = bench_rows(plan, situation.kinds)
    total = length_words(sum(r.length_m for r in rows), plan.habits.units)
    lights = sum(
        1
        for p in plan.parts.values()
        if p.kind in situation.kinds and situation.kinds[p.kind].purpose == "light"
    )
    said = [
        _counted(len(plan.parts), "part"),
        f"{_counted(lights, 'light')} among them",
        f"{_counted(len(rows), 'wire')} of {total} in all",
        _counted(len(plan.scenes), "scene"),
        _counted(len(plan.panels), "panel"),
    ]
    return ", ".join(s for s in said if not s.startswith("0 ")) + "."


def _supplies(situation: Situation, width: float) -> tuple[Block, ...]:
    figures, plan = situation.figures, situation.plan
    if not figures.supplies:
        return ()
    columns = (
        Column("Supply", 18, weight="semibold"),
        Column("Which is", 52),
        Column("Volts", 20, "right"),
        Column("Gives", 22, "right"),
        Column("May give", 22, "right"),
        Column("Load", 16, "right", "semibold"),
        Column("Power", 20, "right"),
    )
    rows = []
    for part_id, figure in figures.supplies.items():
        part = plan.parts[part_id]
        share = abs(figure.current_a) / figure.rated_a if 0 < figure.rated_a < 1e6 else None
        rows.append(
            (
                part_label(plan, part_id),
                part.label or situation.kinds[part.kind].title,
                worded(figure.volts_v, "voltage") + (" AC" if part_id in figures.alternating else ""),
                worded(figure.current_a, "current"),
                worded(figure.rated_a, "current") if share is not None else "not known",
                f"{share * 100:.0f} %" if share is not None else "–",
                worded(figure.power_w, "power"),
            )
        )
    says = "With every switch as it stands in a session."
    return (
        heading("Supplies", width, level=2),
        *paragraph(says, width, after_mm=1.0),
        *table(columns, rows, width),
    )


def _batteries(situation: Situation, width: float) -> tuple[Block, ...]:
    if not situation.outlooks:
        return ()
    plan = situation.plan
    columns = (
        Column("Battery", 18, weight="semibold"),
        Column("Hours lit", 30, "right"),
        Column("Outlook", 60),
        Column("Why it ends", 62),
    )
    rows = []
    for part_id, outlook in situation.outlooks.items():
        if part_id not in plan.parts:
            continue
        hours = outlook.hours
        span = f"{_hours(hours.typical)} ({_hours(hours.low)} to {_hours(hours.high)})"
        rows.append((part_label(plan, part_id), span, outlook.words, outlook.end_reason))
    if not rows:
        return ()
    return heading("Batteries", width, level=2), *table(columns, rows, width)


def _findings(findings: Sequence[Finding], width: float) -> tuple[Block, ...]:
    if not findings:
        says = "None. Every check of this program passes for the positions above."
        return heading("Findings", width, level=2), *paragraph(says, width)
    columns = (Column("Rank", 20), Column("What is wrong or weak", 76), Column("What mends it", 76))
    rows = [
        (Cell(RANK_WORDS[f.rank], rank=f.rank), Cell(_sentence(f.what)), Cell(_sentence(f.mend)))
        for f in sorted(findings, key=lambda f: -f.rank)
    ]
    return heading("Findings", width, level=2), *table(columns, rows, width)


def _sentence(text: str) -> str:
    return text if not text or text.endswith((".", "!", "?")) else f"{text}."


def _hours(value: float) -> str:
    return worded(value, "duration")


def _counted(count: int, name: str) -> str:
    return f"{count} {name}" if count == 1 else f"{count} {name}s"
