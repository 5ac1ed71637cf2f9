"""The figures of a part or wire in a few words, as they stand beside it on the plan."""

from app.canvas.sight import Sight
from wiring.findings.finding import Rank
from wiring.quantities.wording import worded

LEAST_DROP_V = 0.0005
FEW = 3  # so many may all tell their figures, even that there is nothing
IDLE_A, CLOSED_V = 1e-4, 0.05  # less current is none; less across a contact that carries some is no news


def reading(sight: Sight, one: str) -> str:
    """Return ``11.8 V · 18.2 mA`` for a part or wire; "" when nothing is known of it."""
    if sight.figures is None:
        return ""
    supply = sight.figures.supplies.get(one)
    if supply is not None:
        return f"{worded(supply.volts_v, 'voltage')} · {worded(supply.current_a, 'current')}"
    part = sight.figures.parts.get(one)
    if part is not None and not _only_joins(sight, one):
        words = f"{worded(part.volts_v, 'voltage')} · {worded(part.current_a, 'current')}"
        return f"{words} · {part.state}" if part.state else words
    wire = sight.figures.wires.get(one)
    if wire is not None:
        current = worded(abs(wire.current_a), "current")
        lost = abs(wire.drop_v)
        return f"{current}, loses {worded(lost, 'voltage')}" if lost >= LEAST_DROP_V else current
    return ""


def short_reading(sight: Sight, one: str, asked: int) -> str:
    """Return the figures of one of so many that are asked for: of many, only what is on, in fewer words."""
    if asked <= FEW or sight.figures is None or one in sight.figures.supplies:
        return reading(sight, one)
    found = sight.figures.parts.get(one) or sight.figures.wires.get(one)
    if found is not None and abs(found.current_a) < IDLE_A and not getattr(found, "state", ""):
        return ""
    part, wire = sight.figures.parts.get(one), sight.figures.wires.get(one)
    if part is not None and not part.state and abs(part.volts_v) < CLOSED_V and not _only_joins(sight, one):
        return worded(part.current_a, "current")
    return worded(abs(wire.current_a), "current") if wire is not None else reading(sight, one)


def _only_joins(sight: Sight, part_id: str) -> bool:
    """Return whether a part is nothing but joints: it has no volts across it that could be told."""
    part = sight.plan.parts.get(part_id)
    kind = sight.kinds.get(part.kind) if part is not None else None
    return kind is not None and kind.behaviour in ("bus", "separate", "pairs")


def is_wrong(sight: Sight, one: str) -> bool:
    """Return whether a part has a finding that makes its figures worth showing unasked."""
    finding = sight.worst.get(one)
    return finding is not None and finding.rank >= Rank.WEAK
