"""Wire labels to cut out: one for each end of each wire, printed twice to be folded round it as a flag."""

from wiring.pictures.metrics import fitted
from wiring.pictures.picture import Anchor, Item, Path, Pen, Words
from wiring.pictures.transform import moved
from wiring.plan.names import TerminalRef
from wiring.plan.plan import Plan
from wiring.sheets.bench_list import BenchRow
from wiring.sheets.paper import sheet
from wiring.sheets.section import Leaf, Section, body_size
from wiring.sheets.strip_names import end_label

_COLUMNS = 3
_ROW_MM = 10.2
_HEAD_MM = 12.0
_CUT = Pen("quiet", 0.15)
_FOLD = Pen("quiet", 0.15, (0.8, 0.8))


def label_section(plan: Plan, rows: tuple[BenchRow, ...], paper: str) -> tuple[Section, ...]:
    """Return the sheets of labels in the order of the bench list; nothing for a plan without wires."""
    ends = [(r, here, there) for r in rows for here, there in ((r.start, r.end), (r.end, r.start))]
    if not ends:
        return ()
    page = sheet(paper)
    width, height = body_size(page)
    left, top, _, _ = page.body
    per_column = int((height - _HEAD_MM) / _ROW_MM)
    per_page = per_column * _COLUMNS
    cell = width / _COLUMNS
    leaves = []
    for start in range(0, len(ends), per_page):
        items: list[Item] = [
            Words("Wire labels", (left, top + 4.6), 4.6, weight="semibold"),
            Words(
                "Cut along the lines, fold at the dashes round the wire, and stick the halves together.",
                (left, top + 9.6),
                3.0,
                "quiet",
            ),
        ]
        if start == 0:
            items.append(Anchor("labels", (left, top)))
        for i, (row, here, there) in enumerate(ends[start : start + per_page]):
            column, line = divmod(i, per_column)
            at = (left + column * cell, top + _HEAD_MM + line * _ROW_MM)
            items += moved(_flag(plan, row, here, there, cell), at)
        leaves.append(Leaf(page, tuple(items), "Wire labels"))
    return (Section("Wire labels", "labels", tuple(leaves)),)


def _flag(plan: Plan, row: BenchRow, here: TerminalRef, there: TerminalRef, width: float) -> tuple[Item, ...]:
    half, high = width / 2, _ROW_MM
    room = half - 2.4
    first = fitted(f"{row.label} {row.colour}", room, 3.1, "bold")
    second = fitted(end_label(plan, here), room, 2.7, "semibold")
    third = fitted(f"to {end_label(plan, there)}", room, 2.5)
    items: list[Item] = [
        Path(((0.0, 0.0), (width, 0.0), (width, high), (0.0, high)), _CUT, closed=True),
        Path(((half, 0.0), (half, high)), _FOLD),
    ]
    for x in (1.2, half + 1.2):
        items.append(Words(first, (x, 3.4), 3.1, weight="bold"))
        items.append(Words(second, (x, 6.5), 2.7, weight="semibold"))
        items.append(Words(third, (x, 9.2), 2.5))
    return tuple(items)
