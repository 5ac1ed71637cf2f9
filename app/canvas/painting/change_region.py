"""Whether a change of the plan shows only where its parts and wires lie."""

from app.session import PlanChanged


def stays_inside(change: PlanChanged) -> bool:
    """Return whether a change shows only where its parts and wires lie or lay.

    Ties and width of a harness stand elsewhere; they are another thing only when a wire takes another way or
    a part another panel.
    """
    changes, old, new = change.changes, change.old, change.new
    if changes.rest or changes.scenes.any or changes.panels.any:
        return False
    if not (old.panels and old.wireways):
        return True
    parts, wires = changes.parts, changes.wires
    if parts.added or parts.removed or wires.added or wires.removed:
        return False
    return all(old.parts[i].panel == new.parts[i].panel for i in parts.altered) and all(
        (old.wires[i].along, old.wires[i].start, old.wires[i].end)
        == (new.wires[i].along, new.wires[i].start, new.wires[i].end)
        for i in wires.altered
    )
