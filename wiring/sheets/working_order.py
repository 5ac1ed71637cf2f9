"""How far each terminal lies from its source, so that wires are made from the source outwards."""

from collections import deque
from collections.abc import Iterator, Mapping

from wiring.catalogue.kind import Kind
from wiring.plan.names import TerminalRef
from wiring.plan.plan import Plan

SOURCES = ("supply_regulated", "supply_unregulated", "supply_ac", "battery")
# Parts the way to a lamp leads through; what takes current ends it, even if wires chain on from it.
_THROUGH = ("bus", "fuse", "resettable_fuse", "switch", "resistor", "diode", "rectifier")
FAR = 10**6


def steps_from_source(plan: Plan, kinds: Mapping[str, Kind]) -> dict[TerminalRef, int]:
    """Return how many wires lie between each terminal and the nearest source; none without a way there."""
    wired: dict[TerminalRef, list[TerminalRef]] = {}
    for wire in plan.wires.values():
        wired.setdefault(wire.start, []).append(wire.end)
        wired.setdefault(wire.end, []).append(wire.start)
    steps: dict[TerminalRef, int] = {}
    queue: deque[TerminalRef] = deque()
    for part in plan.parts.values():
        kind = kinds.get(part.kind)
        if kind is not None and kind.behaviour in SOURCES:
            for terminal in kind.terminals:
                steps[TerminalRef(part.id, terminal.name)] = 0
    queue.extend(steps)
    while queue:
        here = queue.popleft()
        for other in _inside(plan, kinds, here):
            if other not in steps:
                steps[other] = steps[here]
                queue.appendleft(other)  # no wire further: looked at before anything one wire on
        for other in wired.get(here, ()):
            if other not in steps:
                steps[other] = steps[here] + 1
                queue.append(other)
    return steps


def _inside(plan: Plan, kinds: Mapping[str, Kind], ref: TerminalRef) -> Iterator[TerminalRef]:
    """Walk the terminals that lie behind a terminal within its own part."""
    part = plan.parts.get(ref.part)
    kind = kinds.get(part.kind) if part is not None else None
    if kind is None:
        return
    names = [t.name for t in kind.terminals if t.name != ref.terminal]
    if kind.behaviour in _THROUGH:
        yield from (TerminalRef(ref.part, name) for name in names)
    elif kind.behaviour == "pairs":
        yield from (TerminalRef(ref.part, name) for name in names if name[:-1] == ref.terminal[:-1])
