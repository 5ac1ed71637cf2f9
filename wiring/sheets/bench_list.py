"""Every wire of a plan in working order: place by place, from the source outwards."""

from collections.abc import Mapping, Sequence
from typing import NamedTuple

from wiring.catalogue.kind import Kind
from wiring.drawings.marks import wire_mark, wire_on_plan
from wiring.plan.lengths import cut_length_m
from wiring.plan.names import TerminalRef, WireId
from wiring.plan.plan import Plan
from wiring.plan.wire import Wire
from wiring.sheets.blocks import Block, heading, paragraph
from wiring.sheets.lengths import length_words, rounded_up_m
from wiring.sheets.places import ELSEWHERE, place_name, place_order
from wiring.sheets.strip_names import chart_name, end_label
from wiring.sheets.table import Cell, Column, column_edges, table
from wiring.sheets.working_order import FAR, steps_from_source


class BenchRow(NamedTuple):
    """One wire to be made: which, from where to where, of what, how long."""

    wire: WireId
    place: str
    label: str
    start: TerminalRef  # the end nearer to its source
    end: TerminalRef
    size: str
    solid: bool
    colour: str
    length_m: float  # to cut, rounded up to a whole centimetre or inch
    note: str


def bench_rows(plan: Plan, kinds: Mapping[str, Kind]) -> tuple[BenchRow, ...]:
    """Return a row for every wire, exactly one each, in working order."""
    steps = steps_from_source(plan, kinds)
    order = place_order(plan)
    rows = [(_row(plan, kinds, wire, steps)) for wire in plan.wires.values()]
    return tuple(
        sorted(
            rows,
            key=lambda r: (
                order.get(r.place, len(order)),
                steps.get(r.start, FAR),
                steps.get(r.end, FAR),
                _natural(r.label),
            ),
        )
    )


def bench_blocks(
    plan: Plan, kinds: Mapping[str, Kind], width: float, rows: Sequence[BenchRow] | None = None
) -> tuple[Block, ...]:
    """Return the list, or the rows of it that are given, as blocks for the sheets."""
    rows = bench_rows(plan, kinds) if rows is None else rows
    columns = (
        Column("", 6, "centre"),
        Column("Wire", 13.5, weight="semibold"),
        Column("From", 18),
        Column("To", 18),
        Column("Size", 18),
        Column("Colour", 21.5),
        Column("Cut", 16.5, "right"),
        Column("Plan", 12),
        Column("Circuit", 13),
        Column("Which is, note", 38),
    )
    blocks: list[Block] = [heading("Bench list", width, anchor="bench")]
    blocks += paragraph(
        f"{len(rows)} wires, place by place and from the source outwards. Cut lengths contain the spare at "
        f"both ends and are rounded up. Tick each wire when both its ends are made and labelled. "
        "“Plan” and “Circuit” say where it is "
        "drawn: sheet / zone.",
        width,
        leads=True,
    )
    cells = {r.wire: _cells(plan, kinds, r) for r in rows}
    edges = column_edges(columns, list(cells.values()), width)
    place = ""
    group: list[BenchRow] = []
    for row in (*rows, None):
        if group and (row is None or row.place != place):
            count = f"{len(group)} wire{'s' if len(group) != 1 else ''}"
            blocks.append(heading(f"{place}: {count}", width, level=2))
            blocks += table(columns, [cells[r.wire] for r in group], width, edges=edges)
            group = []
        if row is not None:
            place = row.place
            group.append(row)
    return tuple(blocks)


def _cells(plan: Plan, kinds: Mapping[str, Kind], row: BenchRow) -> tuple[str | Cell, ...]:
    return (
        Cell(tick=True, ticked=plan.wires[row.wire].built, about=row.wire),
        row.label,
        Cell(end_label(plan, row.start), target=chart_name(plan, kinds, row.start.part)),
        Cell(end_label(plan, row.end), target=chart_name(plan, kinds, row.end.part)),
        f"{row.size} solid" if row.solid else row.size,
        Cell(row.colour, swatch=row.colour),
        length_words(row.length_m, plan.habits.units),
        Cell(see=(wire_on_plan(row.wire, whole=True), wire_on_plan(row.wire, whole=False))),
        Cell(see=(wire_mark(row.wire),)),
        row.note,
    )


def _row(plan: Plan, kinds: Mapping[str, Kind], wire: Wire, steps: Mapping[TerminalRef, int]) -> BenchRow:
    start, end = wire.start, wire.end
    if steps.get(end, FAR) < steps.get(start, FAR):
        start, end = end, start
    far, near = plan.parts.get(end.part), plan.parts.get(start.part)
    place = place_name(plan, far) if far is not None else ELSEWHERE
    if place == ELSEWHERE and near is not None:
        place = place_name(plan, near)
    length = rounded_up_m(cut_length_m(plan, kinds, wire), plan.habits.units)
    note = wire.note or (far.label if far is not None else "")
    return BenchRow(wire.id, place, wire.label, start, end, wire.size, wire.solid, wire.colour, length, note)


def _natural(label: str) -> tuple[str, int, str]:
    head = label.rstrip("0123456789")
    digits = label[len(head) :]
    return head, int(digits) if digits and digits.isascii() and len(digits) < 10 else 0, label
