"""The sheet before a set of changed sheets: what changed, which sheets to put in and which to take out."""

from collections.abc import Sequence
from itertools import groupby

from wiring.sheets.blocks import Block, heading, paragraph
from wiring.sheets.set_changes import Change, SetChanges
from wiring.sheets.table import Cell, Column, table

TITLE, ANCHOR = "Changes", "changes"


def change_blocks(changes: SetChanges, width: float) -> tuple[Block, ...]:
    """Return what changed as blocks for the sheets."""
    since = changes.since
    blocks: list[Block] = [heading(f"Changes since set {since.letter} of {since.day}", width, anchor=ANCHOR)]
    blocks += paragraph(
        f"This is set {changes.letter}: only the sheets that changed. Lines with a triangle and the letter "
        f"{changes.letter} are new or not as they were. Wires made already may have to be made again.",
        width,
    )
    blocks += _records("Wires", changes.wires, width)
    blocks += _records("Parts", changes.parts, width)
    blocks += _sheets(changes, width)
    return tuple(blocks)


def _records(title: str, changes: Sequence[Change], width: float) -> tuple[Block, ...]:
    if not changes:
        return ()
    columns = (
        Column("", 6, "centre"),
        Column(title[:-1], 17, weight="semibold"),
        Column("Now", 88),
        Column("Was", 61),
    )
    rows = [(Cell(tick=True), c.name, c.now, c.was) for c in changes]
    return heading(f"{title}: {len(changes)}", width, level=2), *table(columns, rows, width)


def _sheets(changes: SetChanges, width: float) -> tuple[Block, ...]:
    blocks: list[Block] = [heading("Sheets", width, level=2)]
    columns = (
        Column("", 6, "centre"),
        Column("Sheet", 14, "right", "semibold"),
        Column("What", 82),
        Column("Old sheet", 70),
    )
    rows = [
        (
            Cell(tick=True),
            str(s.number),
            s.title,
            f"replaces sheet {s.instead_of}" if s.instead_of else "is added",
        )
        for s in changes.sheets
    ]
    rows += [(Cell(tick=True), "–", s.title, f"take out sheet {s.number}") for s in changes.removed]
    blocks += table(columns, rows, width)
    if changes.renumbered:
        says = "; ".join(_runs(changes.renumbered))
        stay = f"These stay as they are but have another number: {says}. "
        blocks += paragraph(f"{stay}Sheets that stay may refer to old numbers.", width)
    return tuple(blocks)


def _runs(renumbered: Sequence[tuple[int, int]]) -> list[str]:
    """Return ``14 to 20 are now 15 to 21`` for sheets that moved together."""
    said = []
    ordered = sorted(renumbered)
    for _, group in groupby(enumerate(ordered), key=lambda e: (e[1][0] - e[0], e[1][1] - e[1][0])):
        run = [pair for _, pair in group]
        (a, b), (c, d) = run[0], run[-1]
        said.append(f"{a} is now {b}" if a == c else f"{a} to {c} are now {b} to {d}")
    return said
