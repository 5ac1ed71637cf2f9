"""How the sheets name the ends of wires, and which parts have a terminal chart of their own."""

from collections.abc import Mapping

from wiring.catalogue.kind import Kind
from wiring.plan.designations import terminal_label
from wiring.plan.names import PartId, TerminalRef
from wiring.plan.plan import Plan

CHARTED = ("separate", "bus", "pairs")


def end_label(plan: Plan, ref: TerminalRef) -> str:
    """Return ``-X1:3``; a terminal of a part that is gone is said to be so."""
    return terminal_label(plan, ref) if ref.part in plan.parts else f"missing part:{ref.terminal}"


def has_chart(plan: Plan, kinds: Mapping[str, Kind], part_id: PartId) -> bool:
    """Return whether a part is a strip, block or plug, whose terminals get a chart."""
    part = plan.parts.get(part_id)
    return part is not None and part.kind in kinds and kinds[part.kind].behaviour in CHARTED


def chart_name(plan: Plan, kinds: Mapping[str, Kind], part_id: PartId) -> str:
    """Return the name links lead to for a part's terminal chart; "" when it has none."""
    return f"strip {part_id}" if has_chart(plan, kinds, part_id) else ""
