"""What a part or a wire of a drawing is and reads now, in one line."""

from typing import TYPE_CHECKING

from wiring.plan.designations import part_label, terminal_label
from wiring.quantities.wording import worded

if TYPE_CHECKING:
    from wiring.findings.situation import Situation


def told(situation: "Situation", one: str) -> str:
    """Return ``-E4 quay lamp 4: 3.2 V, 10.6 mA``; "" for what the plan does not have."""
    plan, figures = situation.plan, situation.figures
    if one in plan.parts:
        part = plan.parts[one]
        kind = situation.kinds.get(part.kind)
        words = f"{part_label(plan, one)} {part.label or (kind.title if kind else '')}".rstrip()
        supply, figure = figures.supplies.get(one), figures.parts.get(one)
        if kind is None or kind.behaviour in ("bus", "separate", "pairs"):
            return words
        if supply is not None:
            return f"{words}: {worded(supply.volts_v, 'voltage')}, {worded(supply.current_a, 'current')}"
        if figure is not None:
            reading = f"{worded(figure.volts_v, 'voltage')}, {worded(figure.current_a, 'current')}"
            return f"{words}: {reading}, {figure.state}" if figure.state else f"{words}: {reading}"
        return words
    if one in plan.wires:
        wire = plan.wires[one]
        ends = f"{terminal_label(plan, wire.start)} – {terminal_label(plan, wire.end)}"
        words = f"{wire.label} {wire.colour}, {ends}"
        flow = figures.wires.get(one)
        return words if flow is None else f"{words}: {worded(abs(flow.current_a), 'current')}"
    return ""
