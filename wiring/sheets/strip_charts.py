"""What goes on each terminal of each terminal strip, distribution block and plug."""

from collections.abc import Container, Mapping, Sequence

from wiring.catalogue.kind import Kind
from wiring.plan.designations import part_label
from wiring.plan.names import PartId, TerminalRef
from wiring.plan.part import Part
from wiring.plan.plan import Plan
from wiring.plan.wire import Wire
from wiring.sheets.blocks import Block, heading, paragraph
from wiring.sheets.places import place_name
from wiring.sheets.strip_names import chart_name, end_label, has_chart
from wiring.sheets.table import Cell, Column, Row, table

WIRE_COLUMNS = (
    Column("", 6, "centre"),
    Column("Terminal", 16, weight="semibold", again=True),
    Column("Wire", 18),
    Column("Size", 22),
    Column("Colour", 24),
    Column("Goes to", 30),
    Column("Which is", 56),
)


def strip_blocks(
    plan: Plan, kinds: Mapping[str, Kind], width: float, only: Container[PartId] | None = None
) -> tuple[Block, ...]:
    """Return the charts of a plan's strips, blocks and plugs, or of some, as blocks; nothing without any."""
    charted = [p for p in charted_parts(plan, kinds) if only is None or p.id in only]
    if not charted:
        return ()
    at = wires_by_terminal(plan)
    blocks: list[Block] = [heading("Terminal charts", width, anchor="strips")]
    blocks += paragraph(
        "Write these numbers on the strips before the first wire goes in. Terminals that take more than one "
        "wire need a ferrule or a jumper made for it.",
        width,
        leads=True,
    )
    for part in charted:
        kind = kinds[part.kind]
        says = f": {part.label}" if part.label else ""
        title = f"{part_label(plan, part.id)}{says} ({kind.title}, {place_name(plan, part)})"
        blocks.append(heading(title, width, anchor=chart_name(plan, kinds, part.id), level=2))
        blocks += table(WIRE_COLUMNS, strip_rows(plan, kinds, part.id, at), width)
    return tuple(blocks)


def charted_parts(plan: Plan, kinds: Mapping[str, Kind]) -> list[Part]:
    """Return the strips, blocks and plugs, by designation."""
    charted = (p for p in plan.parts.values() if has_chart(plan, kinds, p.id))
    return sorted(charted, key=lambda p: _number(p.designation))


def wires_by_terminal(plan: Plan) -> dict[TerminalRef, list[Wire]]:
    """Return the wires that end on each terminal, in plan order."""
    at: dict[TerminalRef, list[Wire]] = {}
    for wire in plan.wires.values():
        for ref in dict.fromkeys((wire.start, wire.end)):
            at.setdefault(ref, []).append(wire)
    return at


def strip_rows(
    plan: Plan,
    kinds: Mapping[str, Kind],
    part_id: PartId,
    at: Mapping[TerminalRef, Sequence[Wire]] | None = None,
) -> list[Row]:
    """Return the rows of one chart: every terminal, with each wire that ends on it; free ones say so.

    Whoever draws many charts hands the wires of all terminals over.
    """
    at = wires_by_terminal(plan) if at is None else at
    kind = kinds[plan.parts[part_id].kind]
    rows: list[Row] = []
    for terminal in kind.terminals:
        ref = TerminalRef(part_id, terminal.name)
        wires = at.get(ref, ())
        if not wires:
            rows.append(("", terminal.name, Cell("free", weight="italic"), "", "", "", ""))
        for i, wire in enumerate(wires):
            other = wire.end if wire.start == ref else wire.start
            far = plan.parts.get(other.part)
            rows.append(
                (
                    Cell(tick=True, about=wire.id),
                    terminal.name if i == 0 else "",
                    wire.label,
                    f"{wire.size} solid" if wire.solid else wire.size,
                    Cell(wire.colour, swatch=wire.colour),
                    Cell(end_label(plan, other), target=chart_name(plan, kinds, other.part)),
                    (far.label or _title(kinds, far.kind)) if far is not None else "",
                )
            )
    return rows


def _title(kinds: Mapping[str, Kind], key: str) -> str:
    return kinds[key].title if key in kinds else key


def _number(designation: str) -> tuple[str, int, str]:
    digits = "".join(c for c in designation if c in "0123456789")[:9]
    return designation.rstrip("0123456789"), int(digits or 0), designation
