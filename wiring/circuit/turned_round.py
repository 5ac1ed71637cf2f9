"""Whether switches can turn plus and minus round at a part: where they can, a reversed LED may be meant."""

from collections import defaultdict
from collections.abc import Callable, Mapping
from functools import cache

from wiring.catalogue.kind import Kind
from wiring.circuit.table_changes import table_change
from wiring.plan.names import PartId, TerminalRef
from wiring.plan.plan import Plan

# Plus and minus of what gives DC.
DIRECT_ENDS: Mapping[str, tuple[str, str]] = {
    "supply_regulated": ("+", "-"),
    "supply_unregulated": ("+", "-"),
    "battery": ("+", "-"),
    "converter": ("O", "-"),
    "rectifier": ("+", "-"),
}
FIRM = frozenset({"fuse", "resettable_fuse", "pairs"})  # they close as long as they are whole
MOST_CHANGES = 64  # of parts and wires; with more it is asked anew
_Ways = Mapping[TerminalRef, set[TerminalRef]]
_last: tuple[Plan, Mapping[str, Kind], Callable[[PartId, str, str], bool]] | None = None  # replaced whole


def turning(plan: Plan, kinds: Mapping[str, Kind]) -> Callable[[PartId, str, str], bool]:
    """Return what tells of a part whether its first terminal can be brought to more volts than its second.

    Every position of every contact counts as one that can be met: of contacts that move together it is
    enough that each leads there. Resistors are passed; loads only where nothing else leads to a supply.
    """
    global _last
    last = _last
    if last is not None and last[1] == kinds and _joined_alike(last[0], plan):
        return last[2]
    found = _turning(plan, kinds)
    _last = plan, kinds, found
    return found


def _turning(plan: Plan, kinds: Mapping[str, Kind]) -> Callable[[PartId, str, str], bool]:
    firm, loose = _ways(plan, kinds)
    level = _levels(plan, kinds, firm)
    looser = _with_loads(plan, kinds, loose)

    @cache
    def can_be_forward(part: PartId, first: str, second: str) -> bool:
        high, low = (
            _reached(TerminalRef(part, name), firm, loose, level, part)
            or _reached(TerminalRef(part, name), firm, looser, level, part)
            for name in (first, second)
        )
        pairs = ((a, b) for a in high for b in low)
        return any(a[0] == b[0] and a[1] > b[1] for a, b in pairs)

    return can_be_forward


def _joined_alike(was: Plan, now: Plan) -> bool:
    """Whether two plans have parts of the same kinds, joined the same; how switches stand does not matter."""
    parts = table_change(was.parts, now.parts, MOST_CHANGES)
    wires = table_change(was.wires, now.wires, MOST_CHANGES) if parts is not None else None
    if parts is None or wires is None or parts.gone or parts.put_in or wires.gone or wires.put_in:
        return False
    return all(each.was.kind == each.now.kind for each in parts.replaced) and all(
        (each.was.start, each.was.end) == (each.now.start, each.now.end) for each in wires.replaced
    )


def _ways(plan: Plan, kinds: Mapping[str, Kind]) -> tuple[_Ways, _Ways]:
    """Return what is joined to each terminal for good, and what over a contact or a resistor."""
    firm: dict[TerminalRef, set[TerminalRef]] = defaultdict(set)
    loose: dict[TerminalRef, set[TerminalRef]] = defaultdict(set)
    for wire in plan.wires.values():
        _join(firm, wire.start, wire.end)
    for part in plan.parts.values():
        kind = kinds.get(part.kind)
        if kind is None:
            continue
        table = firm if kind.behaviour in FIRM else loose
        for position in kind.positions:
            for a, b in position.closes:
                _join(table, TerminalRef(part.id, a), TerminalRef(part.id, b))
        names = [t.name for t in kind.terminals]
        if kind.behaviour in ("bus", "resistor"):
            for name in names[1:]:
                one, other = TerminalRef(part.id, names[0]), TerminalRef(part.id, name)
                _join(firm if kind.behaviour == "bus" else loose, one, other)
        elif kind.behaviour == "pairs":
            for name in names:
                if name.endswith("a") and f"{name[:-1]}b" in names:
                    _join(firm, TerminalRef(part.id, name), TerminalRef(part.id, f"{name[:-1]}b"))
    return firm, loose


def _with_loads(plan: Plan, kinds: Mapping[str, Kind], loose: _Ways) -> _Ways:
    """Return the same with the ends of whatever takes current joined too."""
    joined: dict[TerminalRef, set[TerminalRef]] = defaultdict(set, {k: set(v) for k, v in loose.items()})
    for part in plan.parts.values():
        kind = kinds.get(part.kind)
        if kind is None or kind.behaviour in {*DIRECT_ENDS, "supply_ac", "separate"}:
            continue
        contacts = {name for position in kind.positions for pair in position.closes for name in pair}
        first, *others = [t.name for t in kind.terminals if t.name not in contacts] or [""]
        for name in others:
            _join(joined, TerminalRef(part.id, first), TerminalRef(part.id, name))
    return joined


def _join(table: dict[TerminalRef, set[TerminalRef]], a: TerminalRef, b: TerminalRef) -> None:
    table[a].add(b)
    table[b].add(a)


def _levels(
    plan: Plan, kinds: Mapping[str, Kind], firm: _Ways
) -> Mapping[TerminalRef, tuple[TerminalRef, int]]:
    """Return how high each terminal stands that is joined to a supply for good: above which, in supplies."""
    sources = [
        (TerminalRef(part.id, ends[0]), TerminalRef(part.id, ends[1]))
        for part in plan.parts.values()
        if part.kind in kinds and (ends := DIRECT_ENDS.get(kinds[part.kind].behaviour)) is not None
    ]
    across: dict[TerminalRef, list[tuple[TerminalRef, int]]] = defaultdict(list)
    for plus, minus in sources:
        across[minus].append((plus, 1))
        across[plus].append((minus, -1))
    level: dict[TerminalRef, tuple[TerminalRef, int]] = {}
    for _, low in sources:
        if low in level:
            continue
        level[low] = low, 0
        waiting = [low]
        for here in waiting:  # grows while it is walked
            base, height = level[here]
            for there, rise in (*((ref, 0) for ref in firm.get(here, ())), *across.get(here, ())):
                if there not in level:
                    level[there] = base, height + rise
                    waiting.append(there)
    return level


def _reached(
    start: TerminalRef,
    firm: _Ways,
    loose: _Ways,
    level: Mapping[TerminalRef, tuple[TerminalRef, int]],
    itself: PartId,
) -> set[tuple[TerminalRef, int]]:
    """Return the heights a terminal can be brought to, not past what a supply holds for good."""
    found: set[tuple[TerminalRef, int]] = set()
    reached, waiting = {start}, [start]
    for here in waiting:  # grows while it is walked
        if here in level:
            found.add(level[here])
            continue
        for there in (*firm.get(here, ()), *loose.get(here, ())):
            if there not in reached and not here.part == there.part == itself:
                reached.add(there)
                waiting.append(there)
    return found
