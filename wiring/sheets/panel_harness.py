"""The harness of each panel, way by way: the wire from the panel, the wire that goes on to the layout."""

from collections.abc import Mapping, Sequence

from wiring.catalogue.kind import Kind
from wiring.plan.designations import part_label
from wiring.plan.harness import Way, harness_of
from wiring.plan.panel import Panel
from wiring.plan.plan import Plan
from wiring.plan.wire import Wire
from wiring.sheets.blocks import Block, heading, paragraph
from wiring.sheets.strip_names import end_label
from wiring.sheets.table import Cell, Column, table

_COLUMNS = (
    Column("", 6, "centre"),
    Column("Way", 12, "right", "bold"),
    Column("From", 28, weight="semibold"),
    Column("Wire", 18),
    Column("Colour", 24),
    Column("Size", 22),
    Column("On to the layout", 28),
    Column("Goes to", 34),
)


def harness_ways(
    plan: Plan, kinds: Mapping[str, Kind], panels: Sequence[Panel], width: float
) -> tuple[Block, ...]:
    """Return a table of ways for each panel whose wires come out as a harness; nothing without any."""
    blocks: list[Block] = []
    for panel in panels:
        harness = harness_of(plan, kinds, panel)
        if harness is None or not harness.inner:
            continue
        names = ", ".join(f"{part_label(plan, p.id)} ({kinds[p.kind].title})" for p in harness.plugs)
        blocks.append(heading(f"{panel.name}: harness", width, level=2))
        blocks += paragraph(
            f"{len(harness.inner)} wires come out as one bundle to {names}. Number the ways on both halves "
            "before the first wire goes in; looked at from the wires' side the socket is mirrored.",
            width,
            leads=True,
        )
        several = len(harness.plugs) > 1
        rows = [
            _row(plan, way, several=several)
            for way in harness.ways
            if way.inner is not None or way.outer is not None
        ]
        blocks += table(_COLUMNS, rows, width)
        free = sum(way.inner is None and way.outer is None for way in harness.ways)
        if free:
            blocks += paragraph(f"{free} {'way is' if free == 1 else 'ways are'} free for later.", width)
    return tuple(blocks)


def _row(plan: Plan, way: Way, *, several: bool) -> tuple[Cell | str, ...]:
    inner, outer, shown = way.inner, way.outer, way.inner or way.outer
    number = f"{part_label(plan, way.plug.id)}:{way.number}" if several else way.number
    return (
        Cell(tick=True),
        number,
        _far(plan, inner, way),
        inner.label if inner else "",
        Cell(shown.colour, swatch=shown.colour) if shown else "",
        shown.size if shown else "",
        outer.label if outer else "",
        _far(plan, outer, way),
    )


def _far(plan: Plan, wire: Wire | None, way: Way) -> str:
    if wire is None:
        return ""
    return end_label(plan, wire.end if wire.start.part == way.plug.id else wire.start)
